"""What is published from the studio: runs with their progress, pages that were looked at; done in processes of their own."""

from __future__ import annotations

import asyncio
import tempfile
from pathlib import Path
from typing import Any

from loopwright.publishing.document import Edition
from loopwright.publishing.errors import PageError
from loopwright.source import Source
from loopwright.studio.runs import Run, Runs, look_at, packed, sentence, teller
from loopwright.studio.workers import Workers
from loopwright.workshop.compare.as_json import as_json as changes_json
from loopwright.workshop.compare.kept import last_kept
from loopwright.workshop.compare.versions import compare_sources
from loopwright.workshop.files import CannotOpen, CannotSave, open_source
from loopwright.workshop.measure import Wanted
from loopwright.workshop.publish.before import pages
from loopwright.workshop.publish.editions import Asked
from loopwright.workshop.publish.gather import NothingToPublishError
from loopwright.workshop.publish.pictures import Translations
from loopwright.workshop.publish.publish import FaultyDesignError, as_json, publish

PAGES_S = 120.0
COMPARE_S = 60.0
_MOST_LOOKED_AT = 10


class Publishing:
    """Runs and looked-at pages of one studio; the newest are kept."""

    def __init__(self, workers: Workers) -> None:
        """`workers`: who does the work."""
        self.workers = workers
        self.runs = Runs(workers)
        self.looked_at: dict[str, tuple[bytes, ...]] = {}
        self.looking: dict[str, Run] = {}  # by the design's name: how far its pages are

    def begin(self, design: Path, asked: Asked, into: Path | None, *, draft: bool, keep: bool) -> Run:
        """Begins to publish a design; `into`: the folder, None for one file to take away. `keep`: this version is kept beside it."""
        return self.runs.begin(design.name, into, published, str(design), asked, None if into is None else str(into), draft, keep)

    async def look(self, key: str, design: Path, text: str, edition: Edition, translations: Translations) -> tuple[bytes, ...]:
        """The pages of an edition as PNG, kept by `key`; `translations`: of her own words, by language.

        Raises CannotOpen with a word on why there are none, and what workers raise.
        """
        if key not in self.looked_at:
            good, found = await self._pages(design, text, edition, translations)
            if not good:
                raise CannotOpen(found)
            while len(self.looked_at) >= _MOST_LOOKED_AT:
                self.looked_at.pop(next(iter(self.looked_at)))
            self.looked_at[key] = found
        return self.looked_at[key]

    async def _pages(self, design: Path, text: str, edition: Edition, translations: Translations) -> tuple[bool, Any]:
        run = self.looking[design.name] = Run(design.name, design.name)
        with tempfile.TemporaryDirectory(prefix="loopwright-") as held:
            watching = asyncio.create_task(look_at(run, Path(held)))
            try:
                made: tuple[bool, Any] = await self.workers.run(
                    f"pages {design.name}", pages_of, str(design), text, edition, translations, held, time_s=PAGES_S,
                )
            finally:
                watching.cancel()
                if self.looking.get(design.name) is run:
                    del self.looking[design.name]
        return made

    def stop_looking(self, design: str) -> None:
        """Stops the making of pages of a design, if any are made."""
        self.workers.stop(f"pages {design}")


def published(design: str, asked: Asked, into: str | None, draft: bool, keep: bool, held: str) -> dict[str, Any]:
    """In the other process: publishes a file of the folder, into a folder or packed into one file.

    `held`: a folder of this run's own, for files that are packed, and for telling how far it is.
    """
    path = Path(design)
    try:
        folder = Path(into) if into is not None else Path(held) / "files"
        found = as_json(publish(
            open_source(design), Wanted(), lambda _found: asked, folder, home=path.parent, design=path if keep else None, draft=draft,
            progress=teller(held),
        ))  # fmt: skip
        files = [{"name": Path(f["path"]).name, **{k: f[k] for k in ("what", "size", "description")}} for f in found["files"]]
        bundle = None if into is not None else packed(folder, [f["name"] for f in files])
        return {"files": files, "notes": found["notes"], "packed": bundle}
    except FaultyDesignError as e:
        return {"faults": list(e.errors), "why_not": "The design stops somewhere, so nothing was written."}
    except NothingToPublishError:
        return {"why_not": "No row of this design could be worked yet, so there is nothing to publish."}
    except (CannotOpen, CannotSave, PageError) as e:
        return {"why_not": sentence(str(e))}


def pages_of(design: str, text: str, edition: Edition, translations: Translations, held: str) -> tuple[bool, Any]:
    """In the other process: the pages, or why there are none. `held`: a folder for telling how far they are."""
    path = Path(design)
    try:
        return True, pages(Source.of(text, path.name), edition, path.parent, path, teller(held), translations)
    except NothingToPublishError:
        return False, "No row of this design could be worked yet, so there are no pages."
    except (PageError, CannotOpen) as e:
        return False, sentence(str(e))


def compared(design: str, text: str) -> dict[str, Any] | None:
    """In the other process: what changed since the version that was kept last, and the errata; None where none is kept."""
    path = Path(design)
    kept = last_kept(path)
    if kept is None:
        return None
    old, new = open_source(str(kept)), Source.of(text, path.name)
    found = changes_json(compare_sources(Source.of(old.text, kept.name), new), Source.of(old.text, kept.name), new)
    return {**found, "kept": kept.name}
