"""Files made from the studio, into a folder or packed as one: runs with their progress, in processes of their own."""

from __future__ import annotations

import asyncio
import io
import json
import secrets
import tempfile
import zipfile
from collections.abc import Callable
from contextlib import suppress
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

from loopwright.studio.workers import OutdatedError, WorkerError, Workers

RUN_S = 600.0
MOST_RUNS = 6
_LOOK_S = 0.2
_TOLD = "told.json"

Made = dict[str, Any]
"""What the other process gives: `files`, `notes`, `packed`, or `why_not` and `faults`."""


@dataclass(slots=True)
class Run:
    """One making of files: what is being made and which share of all is done; in the end files and notes, or why not."""

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


class Runs:
    """The runs of one kind; the newest are kept."""

    def __init__(self, workers: Workers) -> None:
        """`workers`: who does the work."""
        self.workers = workers
        self._held: dict[str, Run] = {}

    def get(self, number: str) -> Run | None:
        """A run by its number; None where there is none."""
        return self._held.get(number)

    def begin(self, design: str, into: Path | None, work: Callable[..., Made] | str, *given: Any) -> Run:
        """Begins to make files of a design.

        `work`: a function, or its name as `Workers.run` takes it; in the other process it gets what is `given`, and a folder of this run's
        own.
        """
        run = Run(secrets.token_urlsafe(9), design, into=into.name if into is not None else "")
        while len(self._held) >= MOST_RUNS:
            self.stop(next(iter(self._held)))
        self._held[run.id] = run
        run.task = asyncio.create_task(self._run(run, work, given))
        return run

    async def _run(self, run: Run, work: Callable[..., Made] | str, given: tuple[Any, ...]) -> None:
        with tempfile.TemporaryDirectory(prefix="loopwright-") as held:
            looking = asyncio.create_task(look_at(run, Path(held)))
            try:
                await self._done(run, work, (*given, held))
            finally:
                looking.cancel()
        run.done, run.share = True, 1.0

    async def _done(self, run: Run, work: Callable[..., Made] | str, given: tuple[Any, ...]) -> None:
        try:
            found = await self.workers.run(f"run {run.id}", work, *given, time_s=RUN_S)
            run.faults, run.why_not = found.get("faults", []), found.get("why_not", "")
            run.files, run.notes, run.packed = found.get("files", []), found.get("notes", []), found.get("packed")
        except OutdatedError:
            run.why_not = "It was stopped; nothing was written."
        except WorkerError as e:
            run.why_not = f"These files could not be made ({e or type(e).__name__}). The pattern is safe and saved; nothing was written."

    def stop(self, number: str) -> None:
        """Stops a run, or forgets one that is done."""
        run = self._held.pop(number, None)
        if run is not None and not run.done:
            self.workers.stop(f"run {run.id}")


async def look_at(run: Run, held: Path) -> None:
    """Reads, again and again, what the other process says of how far it is."""
    while True:
        with suppress(OSError, ValueError, TypeError):
            run.what, run.share = json.loads(await asyncio.to_thread((held / _TOLD).read_text, "utf-8"))
        await asyncio.sleep(_LOOK_S)


def teller(held: str) -> Callable[[str, float], None]:
    """In the other process: what tells, through the run's own folder, what is being made and which share of all is done."""
    told = Path(held) / _TOLD

    def tell(what: str, share: float) -> None:
        with suppress(OSError):
            told.with_suffix(".new").write_text(json.dumps([what, share]), encoding="utf-8")
            told.with_suffix(".new").replace(told)

    return tell


def packed(folder: Path, names: list[str]) -> bytes:
    """Files of a folder, by their paths below it, as one."""
    held = io.BytesIO()
    with zipfile.ZipFile(held, "w", zipfile.ZIP_DEFLATED) as z:
        for name in names:
            z.writestr(zipfile.ZipInfo(name, (2000, 1, 1, 0, 0, 0)), (folder / name).read_bytes())
    return held.getvalue()


def sentence(words: str) -> str:
    """Words with a capital and a full stop."""
    return words[:1].upper() + words[1:] + ("" if words.endswith(".") else ".")
