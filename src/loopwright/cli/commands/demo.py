"""`loopwright demo`: from one worked hat to ten sizes at two gauges, every one checked."""

from __future__ import annotations

import sys
from pathlib import Path

from loopwright.workshop.demo import demo


def run(out: str) -> int:
    """Prints the demonstration as it goes; the texts stand in the folder at the end. Raises CannotSave."""
    for i, paragraph in enumerate(demo(Path(out))):
        print(f"\n{paragraph}" if i else paragraph)
        sys.stdout.flush()
    return 0
