"""What a terminal is asked before it is written to."""

from __future__ import annotations

import os
from typing import TextIO


def coloured(stream: TextIO) -> bool:
    """Whether colour is welcome: on a terminal, unless the user says no (the NO_COLOR convention)."""
    return stream.isatty() and "NO_COLOR" not in os.environ and os.environ.get("TERM") != "dumb"
