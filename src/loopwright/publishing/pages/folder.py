"""A folder of our own for what the typesetter wants as files; it goes when nobody holds it any more."""

from __future__ import annotations

import shutil
import tempfile
import weakref
from pathlib import Path

from loopwright.publishing.errors import PageError


class Folder:
    """A folder among the system's passing ones."""

    def __init__(self, what: str) -> None:
        """`what`: for its name. Raises PageError where no folder can be made."""
        try:
            self.path = Path(tempfile.mkdtemp(prefix=f"loopwright-{what}-"))
        except OSError as error:
            raise PageError(f"pages cannot be set: no room for {what} ({error.strerror})") from error
        self._gone = weakref.finalize(self, shutil.rmtree, self.path, ignore_errors=True)

    def put(self, name: str, data: bytes) -> None:
        """Writes a file. Raises PageError where there is no room for it."""
        try:
            (self.path / name).write_bytes(data)
        except OSError as error:
            raise PageError(f"pages cannot be set: no room for {name} ({error.strerror})") from error

    def close(self) -> None:
        """Takes the folder away."""
        self._gone()
