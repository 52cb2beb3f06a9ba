"""The `loopwright` command: arguments in, exit codes out (0 fine, 1 errors found, 2 cannot run)."""

from __future__ import annotations

import argparse
import contextlib
import gc
import os
import sys
from collections.abc import Sequence

from loopwright import __version__

READ_TERMS = ("us", "uk", "old", "de", "fr", "es")
LONGEST_S = 3600  # that a size's shape may take

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
    check.add_argument("--terms", choices=READ_TERMS, help="which terms the text uses, or its language (found out when not said)")
    check.add_argument("--json", action="store_true", help="everything as JSON on standard output")
    check.add_argument("--fix", action="store_true", help="put the safe mends into the files first, and show what was changed")
    for add in (_grade, _new, _measure, _draw, _publish, _film, _listen, _compare, _studio):
        add(verbs)
    demo = verbs.add_parser(
        "demo", help="see it done: one worked hat becomes ten sizes",
        description="Takes a hat as it was worked in one size, proposes its reasons, grades it to ten sizes at two gauges, and checks "
        "every size.",
    )
    demo.add_argument("--out", default="demo-out", metavar="DIR", help="folder for the texts (demo-out)")
    completion = verbs.add_parser("completion", help="completion for your shell", description="Prints a completion script.")
    completion.add_argument("shell", choices=("bash", "zsh", "fish"), help="the shell it is for")
    return top


def _grade(verbs: argparse._SubParsersAction[_Parser]) -> None:
    grade = verbs.add_parser(
        "grade", help="one design in every size, at any gauge",
        description="Fills a design's blanks for every size from its Fit sentences, works each size, and writes the pattern out.",
    )
    grade.add_argument("design", metavar="DESIGN", help="a design with a Fit section; - reads standard input")
    grade.add_argument("--size", action="append", metavar="NAME", dest="sizes", help="only this size (may be given several times)")
    grade.add_argument("--gauge", metavar="TEXT", help='another gauge, for example "18 sts and 10 rows = 10 cm"')
    grade.add_argument("--terms", choices=("us", "uk", "old"), help="terms to write the pattern in (its own unless given)")
    languages = ("de", "fr", "es", "nl", "sv", "da", "pt", "it")
    grade.add_argument("--language", choices=languages, help="write the pattern in this language; what has no words in it stays, marked")
    grade.add_argument("--translations", metavar="FILE", help="a table of your own sentences in that language, made if it is not there")
    grade.add_argument("--own-words", action="store_true", help="the design's own words with the numbers put in, nothing else changed")
    grade.add_argument("--json", action="store_true", help="everything as JSON on standard output")


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
    new.add_argument("--terms", choices=READ_TERMS, help="which terms the pattern uses, or its language (found out when not said)")
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
    measure.add_argument("--terms", choices=READ_TERMS, help="which terms the text uses, or its language (found out when not said)")
    measure.add_argument(
        "--shape", nargs="?", const=".", metavar="DIR", help="relax the shape too, written as glTF into DIR (this folder unless named)",
    )
    measure.add_argument("--have", metavar="AMOUNT", help='yarn at hand ("300 m", "2 balls"): which sizes it makes, in which row it ends')
    measure.add_argument("--other-yarn", metavar="LABEL", help='balls of another yarn, for example "50 g = 120 m"')
    measure.add_argument("--budget", type=float, metavar="SECONDS", help="time that one size's shape may take (20)")
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
    draw.add_argument("--terms", choices=READ_TERMS, help="which terms the text uses, or its language (found out when not said)")
    draw.add_argument("--left-handed", action="store_true", help="every drawing mirrored, its text not")
    draw.add_argument("--units", choices=("cm", "in", "both"), default="both", help="of the table beside a schematic (both)")
    draw.add_argument("--width", type=float, metavar="MM", help="of a schematic on paper, 60 to 1000 (170)")
    draw.add_argument("--whole", action="store_true", help="large charts whole, not the repeat with its edges")
    draw.add_argument("--png", action="store_true", help="every SVG as PNG too")
    draw.add_argument("--budget", type=float, metavar="SECONDS", help="time that one size's shape may take (20)")
    draw.add_argument("--json", action="store_true", help="the list of files as JSON on standard output")


def _publish(verbs: argparse._SubParsersAction[_Parser]) -> None:
    publish = verbs.add_parser(
        "publish", help="pages, web page, book and text of a design, in every edition",
        description="Makes documents of a design into a folder: PDF, a web page that works offline, EPUB, plain text; all sizes or one, "
        "large print, US or UK terms, other languages, left-handed. Each edition is an option, --package all that is usually handed out.",
        epilog="A file that was not published from here, or was changed since, is never replaced unless you say --replace.",
    )
    publish.add_argument("design", metavar="DESIGN", help="a design or a plain text pattern; - reads standard input")
    publish.add_argument("--out", required=True, metavar="DIR", help="folder for the documents")
    publish.add_argument("--package", action="store_true", help="both papers, large print, each size alone, the other terms, web page, "
                         "EPUB, text, and texts for the shop and the film")
    publish.add_argument("--paper", action="append", choices=("a4", "letter", "phone"), help="paper of the PDF (a4; several times)")
    formats = ("pdf", "html", "epub", "text", "markdown", "data")
    publish.add_argument("--format", action="append", choices=formats, help="only this format (may be given several times)")
    publish.add_argument("--one-size", action="append", metavar="NAME", help="a clean document of this size alone (several times)")
    publish.add_argument("--each-size", action="store_true", help="a clean document of every size")
    publish.add_argument("--size", action="append", metavar="NAME", dest="sizes", help="leave out all sizes but this one (several times)")
    publish.add_argument("--terms", action="append", choices=("us", "uk"), help="English terms (the design's own; several times)")
    publish.add_argument("--language", action="append", metavar="CODE", help="another language: de, fr, es, nl, sv, da, pt, it")
    publish.add_argument("--translations", action="append", metavar="FILE", help="a table of your own words in a language (several times)")
    publish.add_argument("--large-print", action="store_true", help="24 pt, one column, full words, repeats written out")
    publish.add_argument("--left-handed", action="store_true", help="charts mirrored, their text not, and a note")
    publish.add_argument("--ink-saving", action="store_true", help="no shading and no photographs")
    publish.add_argument("--words-only", action="store_true", help="no pictures at all")
    publish.add_argument("--section-per-page", action="store_true", help="every section begins a page")
    publish.add_argument("--gauge", metavar="TEXT", help='another gauge, for example "18 sts and 10 rows = 10 cm"')
    publish.add_argument("--accent", metavar="COLOUR", help="a colour of your own for lines and headings, for example #0A6174")
    publish.add_argument("--typeface", metavar="FILE", help="a typeface of your own for headings, a .ttf or .otf file")
    publish.add_argument("--draft", action="store_true", help="publish a design with errors, marked as a draft on every page")
    publish.add_argument("--replace", action="store_true", help="replace files of these names whoever wrote them")
    publish.add_argument("--json", action="store_true", help="the list of files as JSON on standard output")


def _film(verbs: argparse._SubParsersAction[_Parser]) -> None:
    film = verbs.add_parser(
        "film", help="plan a film: shots, cards, chapters, captions, and the cut",
        description="Plans a film of one size out of the pattern's own rows: shots with what to say and show, a page to stand beside the "
        "camera, cards for the picture. With a log of times: chapters, captions, links; with the video too, the cut (needs ffmpeg).",
        epilog='The log is what the page beside the camera saves, or lines such as "1:12 Rnd 2". The video itself is never changed.',
    )
    film.add_argument("design", metavar="DESIGN", help="a design or a plain text pattern; - reads standard input")
    film.add_argument("--size", metavar="NAME", help="the size on camera (the one the sample was worked in unless given)")
    film.add_argument("--out", required=True, metavar="DIR", help="folder for the plan, the cards and the rest")
    film.add_argument("--log", metavar="FILE", help="when each section, row or shot begins in the film")
    film.add_argument("--video", metavar="FILE", help="the film, for a cut with cards, chapters and captions in it")
    film.add_argument("--left-handed", action="store_true", help="plan and cut for the left hand: the picture mirrored, cards not")
    film.add_argument("--terms", choices=("us", "uk"), help="English terms (the design's own unless given)")
    film.add_argument("--language", metavar="CODE", help="another language: de, fr, es, nl, sv, da, pt, it")
    film.add_argument("--replace", action="store_true", help="replace files of these names whoever wrote them")
    film.add_argument("--json", action="store_true", help="files, shots and pieces as JSON on standard output")


def _listen(verbs: argparse._SubParsersAction[_Parser]) -> None:
    listen = verbs.add_parser(
        "listen", help="a draft of the written pattern out of a lesson's captions",
        description="Takes a lesson's captions (WebVTT, SRT, or lines with a time in front) down as a written pattern, works it, and says "
        "when each row is worked, which words leave a doubt, and what was assumed.",
    )
    listen.add_argument("captions", metavar="CAPTIONS", help="captions of a lesson in English; - reads standard input")
    listen.add_argument("-o", "--out", metavar="FILE", help="write the draft to this file (standard output unless given)")
    listen.add_argument("--terms", choices=("us", "uk"), help="which terms she speaks in (found out when not said)")
    listen.add_argument("--force", action="store_true", help="replace the file if it is there already")
    listen.add_argument("--json", action="store_true", help="everything as JSON on standard output")


def _compare(verbs: argparse._SubParsersAction[_Parser]) -> None:
    compare = verbs.add_parser(
        "compare", help="what changed between two versions, by section, row and size",
        description="Works two versions of a design stitch by stitch and writes the corrections that makers need: what was wrong, in which "
        "row and sizes, and whom it concerns. One file alone is compared with the last version kept of it.",
        epilog="OLD may be FILE@REVISION where git keeps the file. Old versions are kept in a folder “versions” beside the design.",
    )
    compare.add_argument("files", nargs="+", metavar="FILE", help="the old version, then the new one; - reads standard input")
    compare.add_argument("--since", metavar="FOLDER", help="folder with the old version in it, under the same file name")
    compare.add_argument("--keep", action="store_true", help="keep the new version too; with one file alone, keep it and do nothing else")
    compare.add_argument("--terms", choices=READ_TERMS, help="which terms both texts use, or their language (found out when not said)")
    how = compare.add_mutually_exclusive_group()
    how.add_argument("--text", dest="how", action="store_const", const="text", default="text", help="as plain text (unless told otherwise)")
    how.add_argument("--markdown", dest="how", action="store_const", const="markdown", help="as Markdown")
    how.add_argument("--json", dest="how", action="store_const", const="json", help="everything as JSON on standard output")


def _studio(verbs: argparse._SubParsersAction[_Parser]) -> None:
    studio = verbs.add_parser(
        "studio", help="the workroom in your browser: write, see what is true of it, size it, publish it",
        description="Starts the studio on this machine and opens it in the browser. Nothing leaves the machine; there is no account.",
    )
    studio.add_argument("folder", nargs="?", default=".", metavar="FOLDER", help="the folder that your designs are in (this one)")
    studio.add_argument("--port", type=int, default=0, metavar="N", help="port of this machine (a free one)")
    studio.add_argument("--no-browser", action="store_true", help="only print the address")
    studio.add_argument("--demo", action="store_true", help="put the designs that come with the program there, where they are not yet")
    studio.add_argument("--read-only", action="store_true", help="for looking and counting: nothing can be written")


def main(argv: Sequence[str] | None = None) -> int:
    """Runs the command; gives the exit code. Every failure becomes a message with the way out."""
    args = parser().parse_args(argv)
    gc.set_threshold(50_000)  # a command makes much that lasts until it ends, and little rubbish in circles
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
        return _run_draw(args)
    if args.verb == "studio":
        from loopwright.cli.commands.studio import run as run_studio

        return run_studio(args.folder, args.port, browser=not args.no_browser, read_only=args.read_only, demo=args.demo)
    if args.verb in ("publish", "film"):
        return _run_whole(args)
    if args.verb == "listen":
        from loopwright.cli.commands.listen import run as run_listen

        return run_listen(args.captions, args.out, args.terms, force=args.force, as_data=args.json)
    if args.verb == "compare":
        from loopwright.cli.commands.compare import Asked
        from loopwright.cli.commands.compare import run as run_compare

        return run_compare(Asked(tuple(args.files), args.since, args.terms, args.how, args.keep))
    if args.verb == "grade":
        from loopwright.cli.commands.grade import run as run_grade

        told = args.language or "en", args.translations
        return run_grade(args.design, args.sizes, args.gauge, args.terms, args.own_words, args.json, *told)
    from loopwright.cli.commands.check import run

    return run(args.files, args.terms, args.json, args.fix)


def _run_whole(args: argparse.Namespace) -> int:
    """A verb whose command takes its arguments as they are."""
    from importlib import import_module

    return int(import_module(f"loopwright.cli.commands.{args.verb}").run(args))


def _run_draw(args: argparse.Namespace) -> int:
    from loopwright.cli.commands.draw import run
    from loopwright.drawing.schematic import NARROWEST_MM, WIDEST_MM
    from loopwright.workshop.draw import KINDS, Sheet
    from loopwright.workshop.measure import Wanted

    if not _is_budget(args.budget):
        return 2
    if args.width is not None and not NARROWEST_MM <= args.width <= WIDEST_MM:
        print(f"loopwright: --width is of a schematic in millimetres, {NARROWEST_MM:g} to {WIDEST_MM:g}", file=sys.stderr)
        return 2
    sheet = Sheet(tuple(args.what or KINDS), args.left_handed, args.png, args.whole, units=args.units)
    wanted = Wanted(args.sizes, args.gauge, args.terms, shape=True, budget_s=args.budget)
    return run(args.pattern, wanted, sheet if args.width is None else sheet.as_wide_as(args.width), args.out, as_data=args.json)


def _is_budget(seconds: float | None) -> bool:
    """Whether a time can be kept to; says what it may be where it cannot."""
    if seconds is None or 0 < seconds <= LONGEST_S:
        return True
    print(f"loopwright: --budget is a time in seconds, above 0 and at most {LONGEST_S}", file=sys.stderr)
    return False


def _run_measure(args: argparse.Namespace) -> int:
    from loopwright.cli.commands.measure import run
    from loopwright.workshop.measure import Wanted

    pattern, shape = args.pattern, args.shape
    if pattern is None and shape not in (None, "."):
        pattern, shape = shape, "."  # "measure --shape hat.txt"
    if pattern is None:
        print("loopwright: measure what? Name a design or a pattern, or - for standard input", file=sys.stderr)
        return 2
    if not _is_budget(args.budget):
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
    from loopwright.cli.ends import refusal

    said = refusal(error)
    if said is not None:
        print(f"loopwright: {said}", file=sys.stderr)
        return 2
    import traceback

    traceback.print_exception(error)
    print(f"loopwright {__version__}: a fault in the program, not in your pattern; please report it with the lines above", file=sys.stderr)
    return 2
