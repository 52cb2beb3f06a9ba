"""The `loopwright` command: arguments in, exit codes out (0 fine, 1 errors found, 2 cannot run)."""

from __future__ import annotations

import argparse
import sys
from collections.abc import Sequence

from loopwright import __version__


def parser() -> argparse.ArgumentParser:
    """All verbs and their options."""
    top = argparse.ArgumentParser(
        prog="loopwright",
        description="Reads a crochet pattern as you wrote it, works every stitch, and says where the counts do not add up.",
        epilog="Start with:  loopwright demo     then:  loopwright check my-pattern.txt",
    )
    top.add_argument("--version", action="version", version=f"loopwright {__version__}")
    verbs = top.add_subparsers(dest="verb", metavar="VERB", required=True)
    check = verbs.add_parser(
        "check", help="read and work patterns, list rows, counts and faults",
        description="Reads each file (- for standard input), works it stitch by stitch and lists each row with the count it makes.",
    )
    check.add_argument("files", nargs="+", metavar="FILE", help="a plain text pattern; - reads standard input")
    check.add_argument("--terms", choices=("us", "uk", "old"), help="which terms the text uses (found out when not said)")
    check.add_argument("--json", action="store_true", help="everything as JSON on standard output")
    verbs.add_parser("demo", help="check the demo hat", description="Works the Samphire Beanie and prints its rows and counts.")
    return top


def main(argv: Sequence[str] | None = None) -> int:
    """Runs the command; gives the exit code."""
    args = parser().parse_args(argv)
    try:
        if args.verb == "demo":
            from loopwright.cli.commands.demo import run as run_demo

            return run_demo()
        from loopwright.cli.commands.check import run

        return run(args.files, args.terms, args.json)
    except KeyboardInterrupt:
        print("\nstopped: nothing was written", file=sys.stderr)
        return 130
    except BrokenPipeError:
        sys.stderr.close()
        return 0
