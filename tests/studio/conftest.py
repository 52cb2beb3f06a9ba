"""A studio without a browser: its application over a folder of copied designs, asked with the headers that its guard wants."""

from __future__ import annotations

import shutil
from collections.abc import Callable, Iterator
from contextlib import ExitStack
from pathlib import Path

import pytest
from starlette.testclient import TestClient

from loopwright.studio.app import create
from loopwright.studio.settings import Settings

DESIGNS = Path(__file__).parents[2] / "designs"
PORT = 8765
HOME = f"http://127.0.0.1:{PORT}"


@pytest.fixture
def open_studio(tmp_path: Path) -> Iterator[Callable[..., TestClient]]:
    """Opens a studio on a folder with copies of the named designs; `folder` of the client is where they are."""
    with ExitStack() as held:
        def opened(*designs: str, read_only: bool = False) -> TestClient:
            folder = tmp_path / "designs"
            folder.mkdir(exist_ok=True)
            for name in designs:
                shutil.copy(DESIGNS / name, folder)
            settings = Settings(folder, PORT, read_only)
            client = held.enter_context(TestClient(create(settings), base_url=HOME, raise_server_exceptions=False))
            client.cookies.set(f"loopwright-{PORT}", settings.token)
            client.headers["origin"] = HOME
            client.folder = folder
            return client

        yield opened
