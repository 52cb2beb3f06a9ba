"""`loopwright film`: plan, cards, chapters, captions and cut of a film, into a folder."""

from __future__ import annotations

import json
import sys
from argparse import Namespace
from pathlib import Path

from loopwright.cli.ends import found
from loopwright.cli.terminal import Progress
from loopwright.workshop.files import CannotOpen, CannotSave, open_source
from loopwright.workshop.film.film import Asked, as_json, film
from loopwright.workshop.film.gather import CannotFilm


def run(args: Namespace) -> int:
    """Makes a film's kit; 1 when the design has errors, 2 when it cannot be made, or the video not cut."""
    progress = Progress() if sys.stderr.isatty() else None
    try:
        source = open_source(args.design)
        log = open_source(args.log).text if args.log else None
        video = Path(args.video) if args.video else None
        asked = Asked(args.size, args.terms, args.language or "en", args.left_handed, log, video, args.replace)
        kit = film(source, asked, Path(args.out), progress)
    except (CannotFilm, CannotOpen, CannotSave) as e:
        print(f"loopwright: {e}", file=sys.stderr)
        return 2
    finally:
        if progress is not None:
            progress.done()
    if args.json:
        json.dump(as_json(kit), sys.stdout, ensure_ascii=False)
        sys.stdout.write("\n")
    else:
        files = [f for f in kit.files if f.what != "card"]
        wide = max((len(f.path) for f in files), default=0)
        print("\n".join(f"{f.path:<{wide}}  {f.description}" for f in files))
        print(f"{sum(f.what == 'card' for f in kit.files)} files of cards in {args.out}/cards-16x9 and {args.out}/cards-9x16")
        print("".join(f"note: {note}\n" for note in kit.notes), end="")
    if kit.not_cut:
        print(f"loopwright: {kit.not_cut}", file=sys.stderr)
        return 2
    return found(source, kit.filmed.measured.findings, silent=bool(args.json))
