"""What a studio is started with."""

from __future__ import annotations

import hashlib
import secrets
from dataclasses import dataclass, field
from pathlib import Path

HOST = "127.0.0.1"
MOST_BODY = 4_000_000  # bytes of a request
MOST_PHOTOGRAPH = 40_000_000  # bytes of one that brings a photograph
MOST_TEXT = 400_000  # characters of a design
IDLE_S = 0.25  # what is typed is on disk after so many seconds
RETRY_S = 2.0  # a text that could not be saved is tried again after so many
_PORTS = 20_000, 10_000


@dataclass(frozen=True, slots=True)
class Settings:
    """A folder of designs, the port, whether it is only for reading, and the token without which nothing is answered."""

    folder: Path
    port: int = 0
    read_only: bool = False
    token: str = field(default_factory=lambda: secrets.token_urlsafe(24), repr=False)

    @property
    def address(self) -> str:
        """What the browser opens."""
        return f"http://{HOST}:{self.port}/?token={self.token}"


def mark_of(folder: Path) -> str:
    """What tells one folder from another: windows keep what is not saved yet under it."""
    return hashlib.sha256(str(folder.resolve()).encode("utf-8", "surrogateescape")).hexdigest()[:12]


def usual_port(folder: Path) -> int:
    """The port that a folder gets where it is free: always the same, so that a window finds again what it kept."""
    return _PORTS[0] + int(mark_of(folder), 16) % _PORTS[1]
