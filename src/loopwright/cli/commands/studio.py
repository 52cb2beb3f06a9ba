"""`loopwright studio`: the workroom in the browser."""

from __future__ import annotations

import sys
from pathlib import Path

from loopwright.studio.serve import serve
from loopwright.studio.settings import Settings
from loopwright.workshop.files import CannotOpen, CannotSave

_MOST_PORT = 65535


def run(folder: str, port: int, *, browser: bool, read_only: bool, demo: bool = False) -> int:
    """Serves until it is stopped; 2 when the folder or the port cannot be used. `demo`: with the shipped designs in the folder."""
    if not 0 <= port <= _MOST_PORT:
        print(f"loopwright: a port is a number from 0 to {_MOST_PORT}", file=sys.stderr)
        return 2
    try:
        if demo:
            _put_designs(Path(folder))
        serve(Settings(Path(folder), port, read_only), browser=browser)
    except (CannotOpen, CannotSave) as e:
        print(f"loopwright: {e}", file=sys.stderr)
        return 2
    return 0


def _put_designs(folder: Path) -> None:
    """Copies of the shipped designs; what is there already stays as it is. Raises CannotSave."""
    from loopwright.workshop.designs import shipped
    from loopwright.workshop.files import output_folder, write_whole

    output_folder(str(folder))
    for design in shipped():
        path = folder / f"{design.name}.txt"
        if not path.exists():
            write_whole(path, design.text)
    print(f"The demo designs are in {folder}. The studio opens in the browser; Ctrl-C stops it.", file=sys.stderr)
