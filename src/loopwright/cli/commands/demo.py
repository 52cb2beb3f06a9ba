"""`loopwright demo`: the Samphire Beanie, as it was written in one size, worked and counted."""

from __future__ import annotations

from importlib.resources import files
from pathlib import Path

from loopwright.cli.commands.check import table
from loopwright.source import Source
from loopwright.workshop.check import as_json, check_source


def demo_text(name: str) -> str:
    """A design that comes with the program: from the wheel, or from the folder `designs` of a checkout."""
    shipped = files("loopwright").joinpath("designs", name)
    if shipped.is_file():
        return shipped.read_text(encoding="utf-8")
    return (Path(__file__).parents[4] / "designs" / name).read_text(encoding="utf-8")


def run() -> int:
    """Prints the table of the demo hat."""
    source = Source.of(demo_text("samphire-as-worked.txt"), "samphire-as-worked.txt")
    print(table(as_json(source, check_source(source))))
    return 0
