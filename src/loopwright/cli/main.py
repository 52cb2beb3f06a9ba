"""The `loopwright` command: arguments in, exit codes out (0 fine, 1 errors found, 2 cannot run)."""

from __future__ import annotations

import argparse
import contextlib
import os
import sys
from collections.abc import Sequence

from loopwright import __version__

TYPE_CHECKING = False  # typing itself is not worth its time at start-up
if TYPE_CHECKING:
    from typing import Any


class _Help(argparse.HelpFormatter):
    """Help as wide as the terminal; asked of the system itself, as argparse loads a module for archives to ask it."""

    def __init__(self, prog: str, **given: Any) -> None:
        given["width"] = given.get("width") or _width()
        super().__init__(prog, **given)


class _Parser(argparse.ArgumentParser):
    """A parser whose help, and that of its verbs, is laid out by _Help."""

    def __init__(self, **given: Any) -> None:
        super().__init__(**{"formatter_class": _Help, **given})


def _width() -> int:
    told = os.environ.get("COLUMNS", "")
    if told.isdecimal() and int(told) > 0:
        return int(told) - 2
    try:
        return os.get_terminal_size(sys.__stdout__.fileno() if sys.__stdout__ else 1).columns - 2
    except (OSError, ValueError):
        return 78


def parser() -> argparse.ArgumentParser:
    """All verbs and their options."""
    top = _Parser(
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
    grade.add_argument("--own-words", action="store_true", help="the design's own words with the numbers put in, nothing else changed")
    grade.add_argument("--json", action="store_true", help="everything as JSON on standard output")
    _new(verbs)
    demo = verbs.add_parser(
        "demo", help="see it done: one worked hat becomes ten sizes",
        description="Takes a hat as it was worked in one size, proposes its reasons, grades it to ten sizes at two gauges, and checks "
        "every size.",
    )
    demo.add_argument("--out", default="demo-out", metavar="DIR", help="folder for the texts (demo-out)")
    completion = verbs.add_parser("completion", help="completion for your shell", description="Prints a completion script.")
    completion.add_argument("shell", choices=("bash", "zsh", "fish"), help="the shell it is for")
    return top


def _new(verbs: argparse._SubParsersAction[_Parser]) -> None:
    new = verbs.add_parser(
        "new", help="a design to begin from, or one made out of a plain pattern",
        description="Writes a starting point (none named: lists them). With --from, makes a design out of a one-size pattern: why its "
        "numbers are what they are becomes a Fit sentence for each, with the evidence.",
    )
    new.add_argument("starting_point", nargs="?", metavar="STARTING-POINT", help="a design that comes with the program")
    new.add_argument("--from", dest="pattern", metavar="PATTERN", help="a plain pattern in one size; - reads standard input")
    new.add_argument("--worked-in", metavar="SIZE", help="the size it was worked in, for example child (from its Size line unless given)")
    new.add_argument("--sizes", metavar="A,B,…", help="sizes of the design (those usual for such an item unless given)")
    new.add_argument("--gauge", metavar="TEXT", help='its gauge, for example "18 sts and 10 rows = 10 cm" (from its Gauge line if not)')
    new.add_argument("--terms", choices=("us", "uk", "old"), help="which terms the pattern uses (found out when not said)")
    new.add_argument("-o", "--out", metavar="FILE", help="write to this file (standard output unless given)")
    new.add_argument("--force", action="store_true", help="replace the file if it is there already")
    new.add_argument("--json", action="store_true", help="everything as JSON on standard output")


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

        return run_demo(args.out)
    if args.verb == "new":
        return _run_new(args)
    if args.verb == "completion":
        from loopwright.cli.completion import script

        print(script(parser(), args.shell), end="")
        return 0
    if args.verb == "grade":
        from loopwright.cli.commands.grade import run as run_grade

        return run_grade(args.design, args.sizes, args.gauge, args.terms, args.own_words, args.json)
    from loopwright.cli.commands.check import run

    return run(args.files, args.terms, args.json, args.fix)


def _run_new(args: argparse.Namespace) -> int:
    from loopwright.cli.commands.new import run, run_from
    from loopwright.workshop.propose import Wanted

    if args.pattern is None:
        return run(args.starting_point, args.out, force=args.force, as_data=args.json)
    if args.starting_point is not None:
        print("loopwright: name a starting point or a pattern after --from, not both", file=sys.stderr)
        return 2
    sizes = tuple(s.strip() for s in args.sizes.split(",") if s.strip()) if args.sizes else None
    return run_from(args.pattern, Wanted(args.worked_in, sizes, args.gauge, args.terms), args.out, force=args.force, as_data=args.json)


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
