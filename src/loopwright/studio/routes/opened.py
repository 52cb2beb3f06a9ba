"""What most routes begin with: the folder of designs, and the design that the address names."""

from __future__ import annotations

import asyncio
from pathlib import Path
from typing import TYPE_CHECKING

from loopwright.studio.folder import Folder, Opened

if TYPE_CHECKING:
    from starlette.requests import Request


def folder_of(request: Request) -> Folder:
    """The folder that this studio is on."""
    found: Folder = request.app.state.folder
    return found


async def opened_of(request: Request) -> Opened:
    """The design that the address names. Raises NotInFolderError, CannotOpen."""
    return await asyncio.to_thread(folder_of(request).read, request.path_params["name"])


def path_of(request: Request) -> Path:
    """The design's file; only after it was opened, which refuses names that lead elsewhere."""
    return folder_of(request).path / str(request.path_params["name"])
