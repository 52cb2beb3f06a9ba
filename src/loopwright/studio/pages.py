"""The built pages, their fonts, and answers made small: known files only, each with its sum, compressed once."""

from __future__ import annotations

import gzip
import hashlib
import threading
from collections.abc import Callable
from dataclasses import dataclass, field
from importlib.resources import files
from pathlib import Path
from typing import TYPE_CHECKING

from starlette.responses import Response

if TYPE_CHECKING:
    from starlette.requests import Request
    from starlette.types import ASGIApp, Message, Receive, Scope, Send

TYPES = {
    ".html": "text/html; charset=utf-8", ".js": "text/javascript; charset=utf-8", ".css": "text/css; charset=utf-8",
    ".svg": "image/svg+xml", ".woff2": "font/woff2", ".png": "image/png", ".txt": "text/plain; charset=utf-8", ".json": "application/json",
    ".wasm": "application/wasm",
}
SMALL = 1000  # bytes; what is shorter goes as it is
_NOT_SMALLER = (".woff2", ".png")
_YEAR = "private, max-age=31536000, immutable"
_LEVEL = 5  # of gzip, for answers that are made anew each time


@dataclass(slots=True)
class _File:
    path: Path
    stamp: tuple[int, int]
    raw: bytes
    sum: str
    packed: dict[str, bytes] = field(default_factory=dict)


class Pages:
    """Files below one folder by their paths. What is no plain file of a known kind there, or leads out of it, is not there."""

    def __init__(self, root: Path, *, endings: tuple[str, ...] = tuple(TYPES), hashed: str = "assets/") -> None:
        """`hashed`: the folder whose files have their sum in their names, so that they never change."""
        self.root = root.resolve()
        self.endings = endings
        self.hashed = hashed
        self._files: dict[str, _File] = {}
        self._one = threading.Lock()

    def find(self, path: str) -> _File | None:
        """A file by its path below the folder, read once; None where there is none."""
        if "\\" in path or "\0" in path or any(part in ("", ".", "..") or part.startswith(".") for part in path.split("/")):
            return None
        place = self.root / path
        try:
            if place.suffix not in self.endings or place.resolve() != place or not place.is_file():
                return None
            found = place.stat()
            stamp = found.st_mtime_ns, found.st_size
            held = self._files.get(path)
            if held is None or held.stamp != stamp:
                raw = place.read_bytes()
                held = self._files[path] = _File(place, stamp, raw, hashlib.sha256(raw).hexdigest()[:20])
        except (OSError, RuntimeError, ValueError):
            return None
        return held

    def answer(self, request: Request) -> Response:
        """A file as the browser wants it: as it is, compressed, or a word that it has not changed. To be called off the loop."""
        path = request.path_params["path"]
        found = self.find(path)
        if found is None:
            return Response("There is no such file.\n", 404, media_type="text/plain")
        headers = {
            "content-type": TYPES[found.path.suffix], "etag": f'"{found.sum}"', "vary": "accept-encoding",
            "cache-control": _YEAR if path.startswith(self.hashed) else "private, no-cache",
        }
        if f'"{found.sum}"' in request.headers.get("if-none-match", ""):
            return Response(None, 304, headers=headers)
        way = self._way(found, request.headers.get("accept-encoding", ""))
        if way:
            headers["content-encoding"] = way
        return Response(self._packed(found, way), headers=headers)

    def _way(self, found: _File, accepted: str) -> str:
        if len(found.raw) < SMALL or found.path.suffix in _NOT_SMALLER:
            return ""
        ways = {part.partition(";")[0].strip() for part in accepted.split(",") if not part.replace(" ", "").endswith(";q=0")}
        return next((way for way in ("br", "gzip") if way in ways), "")

    def _packed(self, found: _File, way: str) -> bytes:
        if not way:
            return found.raw
        with self._one:
            if way not in found.packed:
                found.packed[way] = PACK[way](found.raw)
            return found.packed[way]


def _brotli(raw: bytes) -> bytes:
    import brotli  # noqa: PLC0415 - only where pages are sent

    return bytes(brotli.compress(raw, quality=9))


PACK: dict[str, Callable[[bytes], bytes]] = {"gzip": lambda raw: gzip.compress(raw, 9, mtime=0), "br": _brotli}


def fonts() -> Pages:
    """The letters of all pages, from the one place where they stand."""
    return Pages(Path(str(files("loopwright.publishing").joinpath("fonts"))), endings=(".woff2",), hashed="none")


class Smaller:
    """Compresses answers in JSON and HTML that are worth it."""

    def __init__(self, app: ASGIApp) -> None:
        """`app`: what makes the answers."""
        self.app = app

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """One request."""
        accepted = any(k == b"accept-encoding" and b"gzip" in v for k, v in scope.get("headers", ()))
        if scope["type"] != "http" or not accepted:
            await self.app(scope, receive, send)
            return
        start: Message | None = None

        async def sent(message: Message) -> None:
            nonlocal start
            if message["type"] == "http.response.start" and _worth_it(message):
                start = message
                return
            if start is not None:
                _pack(start, message)
                await send(start)
                start = None
            await send(message)

        await self.app(scope, receive, sent)


def _worth_it(start: Message) -> bool:
    headers = dict(start["headers"])
    kind = headers.get(b"content-type", b"")
    return b"content-encoding" not in headers and kind.startswith((b"application/json", b"text/html"))


def _pack(start: Message, message: Message) -> None:
    body = message.get("body", b"")
    if len(body) < SMALL or message.get("more_body"):
        return
    message["body"] = packed = gzip.compress(body, _LEVEL, mtime=0)
    kept = [(k, v) for k, v in start["headers"] if k not in (b"content-length", b"vary")]
    start["headers"] = [
        *kept, (b"content-length", str(len(packed)).encode()), (b"content-encoding", b"gzip"), (b"vary", b"accept-encoding"),
    ]
