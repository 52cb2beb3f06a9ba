"""The designs that come with the program, as starting points."""

from __future__ import annotations

import re
from importlib.resources import files
from importlib.resources.abc import Traversable
from pathlib import Path

from loopwright.record import record

AS_WORKED = "-as-worked"


@record
class Shipped:
    """One text: its short name ("samphire-beanie"), its title, its first sentence, and the whole text."""

    name: str
    title: str
    about: str
    text: str

    @property
    def as_worked(self) -> bool:
        """Whether it is a plain one-size pattern, not a design."""
        return self.name.endswith(AS_WORKED)


def shipped() -> tuple[Shipped, ...]:
    """All of them by name: out of the wheel, or from the folder `designs` of a checkout."""
    found = [p for p in _folder().iterdir() if p.name.endswith(".txt")]
    return tuple(_one(p) for p in sorted(found, key=lambda p: p.name))


def find(name: str) -> Shipped | None:
    """The text of that name: as it is, without ".txt", or its first word alone ("samphire"); designs go before plain patterns."""
    wanted = re.sub(r"[\s_]+", "-", name.strip().lower().removesuffix(".txt"))
    texts = sorted(shipped(), key=lambda s: s.as_worked)
    exact = next((s for s in texts if s.name == wanted), None)
    return exact or next((s for s in texts if wanted and wanted in s.name.split("-")), None)


def _folder() -> Traversable:
    inside = files("loopwright").joinpath("designs")
    return inside if inside.is_dir() else Path(__file__).parents[3] / "designs"


def _one(path: Traversable) -> Shipped:
    text = path.read_text(encoding="utf-8")
    lines = [line.strip() for line in text.split("\n") if line.strip()]
    about = lines[1] if len(lines) > 1 else ""
    return Shipped(path.name.removesuffix(".txt"), lines[0] if lines else path.name, about.split(". ")[0].rstrip("."), text)
