"""A kit that was made elsewhere, put into its folder: all of it, or nothing where a file there was changed since."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from loopwright.workshop.publish.folder import put, refuse_changed


def place(made: Path, names: Sequence[str], folder: Path) -> None:
    """Puts files, by their paths below `made`, into a folder as the command does. Raises CannotSave; nothing was written then."""
    parts: dict[Path, dict[str, bytes]] = {}
    for name in names:
        path = Path(name)
        parts.setdefault(path.parent, {})[path.name] = (made / path).read_bytes()
    for under, files in parts.items():
        refuse_changed(folder / under, files)
    for under, files in parts.items():
        put(folder / under, files)
