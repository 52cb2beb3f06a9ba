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
    _measure(verbs)
    _draw(verbs)
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


def _measure(verbs: argparse._SubParsersAction[_Parser]) -> None:
    measure = verbs.add_parser(
        "measure", help="how big, does it lie flat, how much yarn, how long",
        description="Measures a design or a plain pattern in every size: dimensions with their range, how its rounds lie, yarn, time; "
        "with --shape also the shape that the fabric takes.",
    )
    measure.add_argument("pattern", nargs="?", metavar="FILE", help="a design or a plain text pattern; - reads standard input")
    measure.add_argument("--size", action="append", metavar="NAME", dest="sizes", help="only this size (may be given several times)")
    measure.add_argument("--gauge", metavar="TEXT", help='another gauge, for example "18 sts and 10 rows = 10 cm"')
    measure.add_argument("--terms", choices=("us", "uk", "old"), help="which terms the text uses (found out when not said)")
    measure.add_argument(
        "--shape", nargs="?", const=".", metavar="DIR", help="relax the shape too, written as glTF into DIR (this folder unless named)",
    )
    measure.add_argument("--have", metavar="AMOUNT", help='yarn at hand ("300 m", "2 balls"): which sizes it makes, in which row it ends')
    measure.add_argument("--other-yarn", metavar="LABEL", help='balls of another yarn, for example "50 g = 120 m"')
    measure.add_argument("--budget", type=float, metavar="SECONDS", help="time that one size's shape may take (60)")
    measure.add_argument("--json", action="store_true", help="everything as JSON on standard output")


def _draw(verbs: argparse._SubParsersAction[_Parser]) -> None:
    draw = verbs.add_parser(
        "draw", help="charts, schematics and pictures of the fabric",
        description="Draws a design or a plain pattern into a folder: symbol charts and schematics as SVG, the fabric as it looks, and its "
        "shape as glTF. Each file is listed with what it shows.",
    )
    draw.add_argument("pattern", metavar="FILE", help="a design or a plain text pattern; - reads standard input")
    draw.add_argument("--out", required=True, metavar="DIR", help="folder for the drawings")
    kinds = ("chart", "schematic", "fabric", "rounds", "shape")
    draw.add_argument("--what", action="append", choices=kinds, help="only this kind (may be given several times)")
    draw.add_argument("--size", action="append", metavar="NAME", dest="sizes", help="only this size (may be given several times)")
    draw.add_argument("--gauge", metavar="TEXT", help='another gauge, for example "18 sts and 10 rows = 10 cm"')
    draw.add_argument("--terms", choices=("us", "uk", "old"), help="which terms the text uses (found out when not said)")
    draw.add_argument("--left-handed", action="store_true", help="charts mirrored, their text not")
    draw.add_argument("--whole", action="store_true", help="large charts whole, not the repeat with its edges")
    draw.add_argument("--png", action="store_true", help="every SVG as PNG too")
    draw.add_argument("--budget", type=float, metavar="SECONDS", help="time that one size's shape may take (60)")
    draw.add_argument("--json", action="store_true", help="the list of files as JSON on standard output")


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
    if args.verb == "measure":
        return _run_measure(args)
    if args.verb == "draw":
        from loopwright.cli.commands.draw import run as run_draw
        from loopwright.workshop.draw import KINDS, Sheet
        from loopwright.workshop.measure import Wanted

        sheet = Sheet(tuple(args.what or KINDS), args.left_handed, args.png, args.whole)
        wanted = Wanted(args.sizes, args.gauge, args.terms, shape=True, budget_s=args.budget)
        return run_draw(args.pattern, wanted, sheet, args.out, as_data=args.json)
    if args.verb == "grade":
        from loopwright.cli.commands.grade import run as run_grade

        return run_grade(args.design, args.sizes, args.gauge, args.terms, args.own_words, args.json)
    from loopwright.cli.commands.check import run

    return run(args.files, args.terms, args.json, args.fix)


def _run_measure(args: argparse.Namespace) -> int:
    from loopwright.cli.commands.measure import run
    from loopwright.workshop.measure import Wanted

    pattern, shape = args.pattern, args.shape
    if pattern is None and shape not in (None, "."):
        pattern, shape = shape, "."  # "measure --shape hat.txt"
    if pattern is None:
        print("loopwright: measure what? Name a design or a pattern, or - for standard input", file=sys.stderr)
        return 2
    if args.budget is not None and not 0 < args.budget <= 3600:
        print("loopwright: --budget is a time in seconds, above 0 and at most 3600", file=sys.stderr)
        return 2
    wanted = Wanted(args.sizes, args.gauge, args.terms, shape is not None, args.budget)
    return run(pattern, wanted, shape, have=args.have, other_yarn=args.other_yarn, as_data=args.json)


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
