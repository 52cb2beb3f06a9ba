"""The `loopwright` command: arguments in, exit codes out (0 fine, 1 errors found, 2 cannot run)."""

from __future__ import annotations

import argparse
import contextlib
import os
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
    check.add_argument("--fix", action="store_true", help="put the safe mends into the files first, and show what was changed")
    grade = verbs.add_parser(
        "grade", help="one design in every size, at any gauge",
        description="Fills a design's blanks for every size from its Fit sentences, works each size, and writes the pattern out.",
    )
    grade.add_argument("design", metavar="DESIGN", help="a design with a Fit section; - reads standard input")
    grade.add_argument("--size", action="append", metavar="NAME", dest="sizes", help="only this size (may be given several times)")
    grade.add_argument("--gauge", metavar="TEXT", help='another gauge, for example "18 sts and 10 rows = 10 cm"')
    grade.add_argument("--terms", choices=("us", "uk", "old"), help="terms to write the pattern in (its own unless given)")
    grade.add_argument("--json", action="store_true", help="everything as JSON on standard output")
    verbs.add_parser("demo", help="check the demo hat", description="Works the Samphire Beanie and prints its rows and counts.")
    return top


def main(argv: Sequence[str] | None = None) -> int:
    """Runs the command; gives the exit code. Every failure becomes a message with the way out."""
    args = parser().parse_args(argv)
    try:
        code = _run(args)
        sys.stdout.flush()
    except KeyboardInterrupt:
        print("\nloopwright: stopped; every file is as it was, or whole", file=sys.stderr)
        return 130
    except BrokenPipeError:
        return _hushed(0)
    except OSError as e:
        print(f"loopwright: the output cannot be written ({e.strerror or e}): make room, or send it elsewhere", file=sys.stderr)
        return _hushed(2)
    except Exception as e:  # noqa: BLE001 (the last word to a user, whatever went wrong)
        return _our_fault(e)
    return code


def _run(args: argparse.Namespace) -> int:
    if args.verb == "demo":
        from loopwright.cli.commands.demo import run as run_demo

        return run_demo()
    if args.verb == "grade":
        from loopwright.cli.commands.grade import run as run_grade

        return run_grade(args.design, args.sizes, args.gauge, args.terms, args.json)
    from loopwright.cli.commands.check import run

    return run(args.files, args.terms, args.json, args.fix)


def _hushed(code: int) -> int:
    """Nobody reads standard output any more: what is left in its buffer goes nowhere, so that Python ends quietly."""
    with contextlib.suppress(OSError, ValueError):
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
    return code


def _our_fault(error: Exception) -> int:
    from loopwright.workshop.files import CannotOpen, CannotSave

    if isinstance(error, (CannotOpen, CannotSave)):
        print(f"loopwright: {error}", file=sys.stderr)
        return 2
    import traceback

    traceback.print_exception(error)
    print(f"loopwright {__version__}: a fault in the program, not in your pattern; please report it with the lines above", file=sys.stderr)
    return 2
