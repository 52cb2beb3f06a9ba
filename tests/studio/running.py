"""Waiting for what a studio makes: a run is begun, and asked after until it is done."""

from __future__ import annotations

import time
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from starlette.testclient import TestClient

LONG_S = 300.0  # a machine with much to do may take so long; what fails, fails at once
STEP_S = 0.1


def finished(studio: TestClient, at: str, asked: dict[str, Any]) -> dict[str, Any]:
    """What a run below an address told in the end."""
    run = studio.post(f"{at}/runs", json=asked)
    assert run.status_code == 202, run.text
    until = time.monotonic() + LONG_S
    while True:
        told: dict[str, Any] = studio.get(f"{at}/runs/{run.json()['id']}").json()
        if told["done"]:
            return told
        assert time.monotonic() < until, told
        time.sleep(STEP_S)
