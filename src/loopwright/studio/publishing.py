"""What is published from the studio: runs with their progress, pages that were looked at; done in processes of their own."""

from __future__ import annotations

import asyncio
import io
import json
import secrets
import tempfile
import zipfile
from contextlib import suppress
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

from loopwright.publishing.document import Edition
from loopwright.publishing.errors import PageError
from loopwright.source import Source
from loopwright.studio.workers import OutdatedError, WorkerError, Workers
from loopwright.workshop.compare.as_json import as_json as changes_json
from loopwright.workshop.compare.kept import last_kept
from loopwright.workshop.compare.versions import compare_sources
from loopwright.workshop.files import CannotOpen, CannotSave, open_source
from loopwright.workshop.measure import Wanted
from loopwright.workshop.publish.before import pages
from loopwright.workshop.publish.editions import Asked
from loopwright.workshop.publish.gather import NothingToPublishError
from loopwright.workshop.publish.publish import FaultyDesignError, as_json, publish

PUBLISH_S = 600.0
PAGES_S = 120.0
COMPARE_S = 60.0
_LOOK_S = 0.2
_MOST_RUNS = 6
_MOST_LOOKED_AT = 10
_TOLD = "told.json"


@dataclass(slots=True)
class Run:
    """One publishing: what is being made and which share of all is done; in the end files and notes, or why not."""

    id: str
    design: str
    what: str = "working the design"
    share: float = 0.0
    done: bool = False
    why_not: str = ""
    faults: list[str] = field(default_factory=list)
    files: list[dict[str, Any]] = field(default_factory=list)
    notes: list[str] = field(default_factory=list)
    into: str = ""
    packed: bytes | None = None
    task: asyncio.Task[None] | None = None

    def as_wire(self) -> dict[str, Any]:
        """What the page shows of it."""
        return {
            "id": self.id, "what": self.what, "share": round(self.share, 3), "done": self.done, "why_not": self.why_not,
            "faults": self.faults, "files": self.files, "notes": self.notes, "into": self.into, "packed": self.packed is not None,
        }


class Publishing:
    """Runs and looked-at pages of one studio; the newest are kept."""

    def __init__(self, workers: Workers) -> None:
        """`workers`: who does the work."""
        self.workers = workers
        self.runs: dict[str, Run] = {}
        self.looked_at: dict[str, tuple[bytes, ...]] = {}

    def begin(self, design: Path, asked: Asked, into: Path | None, *, draft: bool, keep: bool) -> Run:
        """Begins to publish a design; `into`: the folder, None for one file to take away. `keep`: this version is kept beside it."""
        run = Run(secrets.token_urlsafe(9), design.name, into=into.name if into is not None else "")
        while len(self.runs) >= _MOST_RUNS:
            self.stop(next(iter(self.runs)))
        self.runs[run.id] = run
        run.task = asyncio.create_task(self._run(run, (str(design), asked, None if into is None else str(into), draft, keep)))
        return run

    async def _run(self, run: Run, given: tuple[Any, ...]) -> None:
        with tempfile.TemporaryDirectory(prefix="loopwright-") as held:
            looking = asyncio.create_task(_look_at(run, Path(held)))
            try:
                await self._done(run, (*given, held))
            finally:
                looking.cancel()
        run.done, run.share = True, 1.0

    async def _done(self, run: Run, given: tuple[Any, ...]) -> None:
        try:
            found = await self.workers.run(f"publish {run.id}", published, *given, time_s=PUBLISH_S)
            run.faults, run.why_not = found.get("faults", []), found.get("why_not", "")
            run.files, run.notes, run.packed = found.get("files", []), found.get("notes", []), found.get("packed")
        except OutdatedError:
            run.why_not = "It was stopped; nothing was written."
        except WorkerError as e:
            run.why_not = f"This publishing failed ({e or type(e).__name__}). The pattern is safe and saved; nothing was written."

    def stop(self, number: str) -> None:
        """Stops a run, or forgets one that is done."""
        run = self.runs.pop(number, None)
        if run is not None and not run.done:
            self.workers.stop(f"publish {run.id}")

    async def look(self, key: str, design: Path, text: str, edition: Edition) -> tuple[bytes, ...]:
        """The pages of an edition as PNG, kept by `key`. Raises CannotOpen with a word on why there are none, and what workers raise."""
        if key not in self.looked_at:
            good, found = await self.workers.run(f"pages {design.name}", pages_of, str(design), text, edition, time_s=PAGES_S)
            if not good:
                raise CannotOpen(found)
            while len(self.looked_at) >= _MOST_LOOKED_AT:
                self.looked_at.pop(next(iter(self.looked_at)))
            self.looked_at[key] = found
        return self.looked_at[key]

    def close(self) -> None:
        """Stops all that still runs."""
        for number in list(self.runs):
            self.stop(number)


async def _look_at(run: Run, held: Path) -> None:
    """Reads, again and again, what the other process says of how far it is."""
    while True:
        with suppress(OSError, ValueError, TypeError):
            run.what, run.share = json.loads(await asyncio.to_thread((held / _TOLD).read_text, "utf-8"))
        await asyncio.sleep(_LOOK_S)


def published(design: str, asked: Asked, into: str | None, draft: bool, keep: bool, held: str) -> dict[str, Any]:
    """In the other process: publishes a file of the folder, into a folder or packed into one file.

    `held`: a folder of this run's own, for files that are packed, and for telling how far it is.
    """
    path, told = Path(design), Path(held) / _TOLD

    def tell(what: str, share: float) -> None:
        with suppress(OSError):
            told.with_suffix(".new").write_text(json.dumps([what, share]), encoding="utf-8")
            told.with_suffix(".new").replace(told)

    try:
        folder = Path(into) if into is not None else Path(held) / "files"
        found = as_json(publish(
            open_source(design), Wanted(), lambda _found: asked, folder, home=path.parent, design=path if keep else None, draft=draft,
            progress=tell,
        ))  # fmt: skip
        files = [{"name": Path(f["path"]).name, **{k: f[k] for k in ("what", "size", "description")}} for f in found["files"]]
        packed = None if into is not None else _packed(folder, [f["name"] for f in files])
        return {"files": files, "notes": found["notes"], "packed": packed}
    except FaultyDesignError as e:
        return {"faults": list(e.errors), "why_not": "The design stops somewhere, so nothing was written."}
    except NothingToPublishError:
        return {"why_not": "No row of this design could be worked yet, so there is nothing to publish."}
    except (CannotOpen, CannotSave, PageError) as e:
        return {"why_not": _sentence(str(e))}


def _packed(folder: Path, names: list[str]) -> bytes:
    held = io.BytesIO()
    with zipfile.ZipFile(held, "w", zipfile.ZIP_DEFLATED) as z:
        for name in names:
            z.writestr(zipfile.ZipInfo(name, (2000, 1, 1, 0, 0, 0)), (folder / name).read_bytes())
    return held.getvalue()


def pages_of(design: str, text: str, edition: Edition) -> tuple[bool, Any]:
    """In the other process: the pages, or why there are none."""
    path = Path(design)
    try:
        return True, pages(Source.of(text, path.name), edition, path.parent, path)
    except NothingToPublishError:
        return False, "No row of this design could be worked yet, so there are no pages."
    except (PageError, CannotOpen) as e:
        return False, _sentence(str(e))


def compared(design: str, text: str) -> dict[str, Any] | None:
    """In the other process: what changed since the version that was kept last, and the errata; None where none is kept."""
    path = Path(design)
    kept = last_kept(path)
    if kept is None:
        return None
    old, new = open_source(str(kept)), Source.of(text, path.name)
    found = changes_json(compare_sources(Source.of(old.text, kept.name), new), Source.of(old.text, kept.name), new)
    return {**found, "kept": kept.name}


def _sentence(words: str) -> str:
    return words[:1].upper() + words[1:] + ("" if words.endswith(".") else ".")
