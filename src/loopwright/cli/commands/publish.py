"""`loopwright publish`: pages, web page, book and text of a design, in every edition, into a folder."""

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
from loopwright.workshop.measure import Wanted
from loopwright.workshop.publish.editions import USUAL, Asked
from loopwright.workshop.publish.gather import Gathered, NothingToPublishError
from loopwright.workshop.publish.publish import FaultyDesignError, as_json, publish
from loopwright.workshop.publish.typefaces import family_of


class _NotThereError(Exception):
    """A size or a language that there is not."""


def run(args: Namespace) -> int:
    """Publishes a design; 1 when it has errors (nothing is written unless --draft), 2 when it cannot be done at all."""
    progress = Progress() if sys.stderr.isatty() else None
    try:
        source = open_source(args.design)
        published = publish(
            source, Wanted(args.sizes, args.gauge), lambda found: _asked(args, found), Path(args.out), draft=args.draft,
            home=Path(args.design).parent if args.design != "-" else Path(), design=Path(args.design) if args.design != "-" else None,
            replace_files=args.replace, progress=progress,
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
        json.dump(as_json(published), sys.stdout, ensure_ascii=False)
        sys.stdout.write("\n")
    else:
        wide = max((len(f.path) for f in published.files), default=0)
        print("\n".join(f"{f.path:<{wide}}  {f.description}" for f in published.files))
        print("".join(f"note: {note}\n" for note in published.notes), end="")
        sys.stdout.flush()
        if published.measured.findings:
            print(render_text.text(source, published.measured.findings, colour=coloured(sys.stderr)), file=sys.stderr)
    return int(any(severity(f) == "error" for f in published.measured.findings))


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
    chosen = tuple(range(len(sizes))) if args.each_size else tuple(known[n] for n in names)
    return Asked(
        papers=tuple(args.paper or ("a4",)), terms=tuple(args.terms or ()), languages=tuple(args.language or ("en",)), sizes=chosen,
        formats=tuple(args.format or (() if args.package else USUAL)), large_print=args.large_print, left_handed=args.left_handed,
        ink_saving=args.ink_saving, words_only=args.words_only, section_per_page=args.section_per_page, package=args.package,
        accent=args.accent or "", typeface=args.typeface or "", family=family_of(Path(args.typeface)) if args.typeface else "",
    )
