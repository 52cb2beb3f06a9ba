"""What `loopwright publish` does once all is loaded, and what it says of it."""

from __future__ import annotations

import json
import sys
from argparse import Namespace
from pathlib import Path

from loopwright.cli.terminal import Progress, coloured
from loopwright.findings import Finding, render_text
from loopwright.findings.registry import hints, message, severity
from loopwright.grading import GaugeError
from loopwright.publishing.errors import PageError
from loopwright.publishing.phrases import languages
from loopwright.source import Span
from loopwright.workshop.files import CannotOpen, CannotSave, open_source
from loopwright.workshop.languages import translations_in
from loopwright.workshop.measure import Wanted
from loopwright.workshop.publish.beside import Beside
from loopwright.workshop.publish.editions import USUAL, Asked
from loopwright.workshop.publish.gather import Gathered, NothingToPublishError
from loopwright.workshop.publish.publish import FaultyDesignError, as_json, publish
from loopwright.workshop.publish.typefaces import family_of


class _NotThereError(Exception):
    """A size or a language that there is not."""


def published(args: Namespace, beside: Beside) -> int:
    """Publishes a design, its cover drawn beside this process; the exit code."""
    progress = Progress() if sys.stderr.isatty() else None
    try:
        source = open_source(args.design)
        made = publish(
            source, Wanted(args.sizes, args.gauge), lambda found: _asked(args, found), Path(args.out), draft=args.draft,
            home=Path(args.design).parent if args.design != "-" else Path(), design=Path(args.design) if args.design != "-" else None,
            replace_files=args.replace, progress=progress, beside=beside,
        )
    except FaultyDesignError as e:
        print("\n".join(e.errors), file=sys.stderr)
        print("loopwright: nothing was published, as the design has errors: mend them, leave the sizes out that have them (--size), "
              "or publish a draft that says so on every page (--draft)", file=sys.stderr)
        return 1
    except (CannotOpen, CannotSave, PageError, _NotThereError) as e:
        print(f"loopwright: {e}", file=sys.stderr)
        return 2
    except NothingToPublishError:
        print(f"loopwright: {args.design} holds no row that could be worked: look at it with loopwright check", file=sys.stderr)
        return 2
    except GaugeError as e:
        found = Finding(e.code, Span(0, 0), e.facts)
        print(f"loopwright: --gauge: {message(found)}; {'; '.join(hints(found))}", file=sys.stderr)
        return 2
    finally:
        if progress is not None:
            progress.done()
    if args.json:
        json.dump(as_json(made), sys.stdout, ensure_ascii=False)
        sys.stdout.write("\n")
    else:
        wide = max((len(f.path) for f in made.files), default=0)
        print("\n".join(f"{f.path:<{wide}}  {f.description}" for f in made.files))
        print("".join(f"note: {note}\n" for note in made.notes), end="")
        sys.stdout.flush()
        if made.measured.findings:
            print(render_text.text(source, made.measured.findings, colour=coloured(sys.stderr)), file=sys.stderr)
    return int(any(severity(f) == "error" for f in made.measured.findings))


def _asked(args: Namespace, found: Gathered) -> Asked:
    sizes = found.pattern.sizes
    names = [n.strip().lower() for n in args.one_size or ()]
    known = {s.lower(): i for i, s in enumerate(sizes)}
    for name in names:
        if name not in known:
            raise _NotThereError(f"there is no size {name!r}: the design has {', '.join(sizes)}")
    for code in args.language or ():
        if code not in languages():
            raise _NotThereError(f"there are no words in {code!r}: the languages are {', '.join(languages())}")
    translations = {}
    for name in args.translations or ():
        code, told = translations_in(Path(name))
        if code not in (args.language or ()):
            raise _NotThereError(f"{name} is a table for {code!r}, and no such edition is asked for: add --language {code}")
        translations[code] = told
    chosen = tuple(range(len(sizes))) if args.each_size else tuple(known[n] for n in names)
    return Asked(
        papers=tuple(args.paper or ("a4",)), terms=tuple(args.terms or ()), languages=tuple(args.language or ("en",)), sizes=chosen,
        formats=tuple(args.format or (() if args.package else USUAL)), large_print=args.large_print, left_handed=args.left_handed,
        ink_saving=args.ink_saving, words_only=args.words_only, section_per_page=args.section_per_page, package=args.package,
        accent=args.accent or "", typeface=args.typeface or "", family=family_of(Path(args.typeface)) if args.typeface else "",
        translations=translations,
    )
