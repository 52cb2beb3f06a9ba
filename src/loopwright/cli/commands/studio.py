"""`loopwright studio`: the workroom in the browser."""

from __future__ import annotations

import sys
from pathlib import Path

from loopwright.studio.serve import serve
from loopwright.studio.settings import Settings
from loopwright.workshop.files import CannotOpen, CannotSave

_MOST_PORT = 65535


def run(folder: str, port: int, *, browser: bool, read_only: bool) -> int:
    """Serves until it is stopped; 2 when the folder or the port cannot be used."""
    if not 0 <= port <= _MOST_PORT:
        print(f"loopwright: a port is a number from 0 to {_MOST_PORT}", file=sys.stderr)
        return 2
    try:
        serve(Settings(Path(folder), port, read_only), browser=browser)
    except (CannotOpen, CannotSave) as e:
        print(f"loopwright: {e}", file=sys.stderr)
        return 2
    return 0
