"""A studio as it runs: a process of its own, asked over the wire as a browser would, or as somebody who is none."""

from __future__ import annotations

import http.client
import json
import os
import socket
import subprocess
import sys
import time
from contextlib import suppress
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any, cast

from websockets.sync.client import ClientConnection, connect

PATTERN = """Sedge Coaster
Gauge: 17 sc and 20 rnds = 10 cm

Rnd 1: 6 sc in magic ring. (6 sc)
Rnd 2: 2 sc in each st around. (12 sc)
Rnd 3: *Sc in next st, 2 sc in next st; rep from * around. (18 sc)
"""
LONG_S = 30.0


@dataclass
class Answer:
    """What was answered to one request."""

    status: int
    headers: dict[str, str]
    body: bytes

    @property
    def json(self) -> Any:
        return json.loads(self.body)


@dataclass
class Served:
    """One studio. `ask` and `window` come with what its own pages send; each header can be given otherwise, or as None."""

    folder: Path
    process: subprocess.Popen[str]
    address: str
    said: list[str] = field(default_factory=list)

    @property
    def host(self) -> str:
        return self.address.split("/")[2]

    @property
    def port(self) -> int:
        return int(self.host.partition(":")[2])

    @property
    def token(self) -> str:
        return self.address.partition("token=")[2]

    @property
    def cookie(self) -> str:
        return f"loopwright-{self.port}={self.token}"

    def ask(self, path: str, method: str = "GET", body: Any = None, **headers: str | None) -> Answer:
        own: dict[str, str | None] = {"Host": self.host, "Cookie": self.cookie, "Origin": None if method == "GET" else f"http://{self.host}"}
        own.update({k.replace("_", "-").title(): v for k, v in headers.items()})
        raw = body if isinstance(body, bytes) or body is None else json.dumps(body).encode()
        talk = http.client.HTTPConnection("127.0.0.1", self.port, timeout=LONG_S)
        try:
            talk.putrequest(method, path, skip_host=True, skip_accept_encoding=True)
            for name, value in own.items():
                if value is not None:
                    talk.putheader(name, value)
            if raw is not None and "Content-Length" not in own:
                talk.putheader("Content-Length", str(len(raw)))
            talk.endheaders(raw)
            answer = talk.getresponse()
            return Answer(answer.status, {k.lower(): v for k, v in answer.getheaders()}, answer.read())
        finally:
            talk.close()

    def window(self, name: str, origin: str | None = "", cookie: str | None = "", host: str = "") -> ClientConnection:
        given = self.cookie if cookie == "" else cookie
        headers = {} if given is None else {"Cookie": given}
        return connect(
            f"ws://{host or self.host}/ws/design/{name}", additional_headers=headers, max_size=None, open_timeout=LONG_S, proxy=None,
            origin=cast("Any", f"http://{self.host}" if origin == "" else origin), sock=socket.create_connection(("127.0.0.1", self.port)),
        )

    def end(self) -> None:
        with suppress(ProcessLookupError):
            self.process.kill()
        self.process.wait(LONG_S)


def start(folder: Path, *more: str, env: dict[str, str] | None = None) -> Served:
    """Starts a studio on a folder; it is up when this returns."""
    words = [sys.executable, "-m", "loopwright", "studio", str(folder), "--no-browser", *more]
    told = {**os.environ, **(env or {})}
    process = subprocess.Popen(words, stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True, env=told)
    assert process.stdout is not None
    address = process.stdout.readline().strip()
    assert address, process.stderr and process.stderr.read()
    made = Served(folder, process, address)
    until = time.monotonic() + LONG_S
    while True:
        try:
            made.ask("/mark.svg")
        except OSError:
            assert time.monotonic() < until
            time.sleep(0.02)
        else:
            return made


def hear(window: ClientConnection, *kinds: str, timeout_s: float = LONG_S) -> dict[str, Any]:
    """The next message of one of these kinds; others are passed over."""
    until = time.monotonic() + timeout_s
    while True:
        said: dict[str, Any] = json.loads(window.recv(timeout=max(0.01, until - time.monotonic())))
        if said["t"] in kinds:
            return said


def write(window: ClientConnection, seq: int, text: str, base: str | None, **more: Any) -> None:
    """Types: the whole text, as the page sends it."""
    window.send(json.dumps({"t": "text", "seq": seq, "text": text, "base": base, **more}))
