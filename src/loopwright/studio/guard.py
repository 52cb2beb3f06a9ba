"""Who is let in: this machine's browser with the token, from the studio's own pages. Everything else is refused before a route sees it."""

from __future__ import annotations

import asyncio
import hmac
import re
import secrets
import traceback
from http.cookies import CookieError, SimpleCookie
from typing import TYPE_CHECKING
from urllib.parse import parse_qs

from loopwright.studio.settings import MOST_BODY, MOST_PHOTOGRAPH, Settings

if TYPE_CHECKING:
    from starlette.types import ASGIApp, Message, Receive, Scope, Send

COOKIE = "loopwright"
NONCE = "nonce"  # where the scope holds what lets styles of this page in: those of the editor and inside drawings
BODY_S = 30.0  # how long a body may stand still
_TOO_LARGE = "This is too large."
_PHOTOGRAPHS = re.compile("/api/publishing/[^/]+/photographs")  # the one address where more than a text comes in
HEADERS = (
    (b"x-content-type-options", b"nosniff"),
    (b"referrer-policy", b"no-referrer"),
    (b"cross-origin-opener-policy", b"same-origin"),
    (b"cross-origin-resource-policy", b"same-origin"),
    (b"permissions-policy", b"camera=(), microphone=(), geolocation=()"),
)


class Guard:
    """Checks Host, Origin, token and the length of bodies, and adds the headers that browsers keep to."""

    def __init__(self, app: ASGIApp, settings: Settings) -> None:
        """`app`: what answers those who are let in."""
        self.app = app
        self.settings = settings

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """One request or connection."""
        if scope["type"] not in ("http", "websocket"):
            await self.app(scope, receive, send)
            return
        headers = {k.decode("latin-1").lower(): v.decode("latin-1") for k, v in scope["headers"]}
        why = self._refused(scope, headers)
        if why and scope["type"] == "websocket":
            await send({"type": "websocket.close", "code": 4403, "reason": why})
        elif why:
            await _answer(send, 413 if why is _TOO_LARGE else 403, f"{why}\n".encode())
        elif scope["type"] == "websocket":
            await self.app(scope, receive, send)
        elif self._by_address(scope):
            await self._let_in(send)
        else:
            await self._through(scope, receive, send)

    async def _through(self, scope: Scope, receive: Receive, send: Send) -> None:
        """To what answers; whatever goes wrong there is answered too, with the headers of every other answer."""
        scope[NONCE] = secrets.token_urlsafe(18)
        body, begun = _Body(receive, _most(scope)), False

        async def sent(message: Message) -> None:
            nonlocal begun
            begun = True
            await send(message)

        try:
            await self.app(scope, body.receive, _with_headers(sent, scope[NONCE]))
        except Exception:
            if begun:
                raise
            if body.ended:
                await _answer(send, 413, f"{_TOO_LARGE}\n".encode())
                return
            traceback.print_exc()
            await _answer(send, 500, b"This request met a fault of the studio. Every pattern is safe and saved.\n")

    def _refused(self, scope: Scope, headers: dict[str, str]) -> str:
        """Why somebody is not let in; "" where they are."""
        own = {f"127.0.0.1:{self.settings.port}", f"localhost:{self.settings.port}"}
        if headers.get("host", "") not in own:
            return "This studio answers on its own address only."
        origin = headers.get("origin")
        changes = scope["type"] == "websocket" or scope.get("method") not in ("GET", "HEAD")
        if origin not in {f"http://{h}" for h in own} and (changes or origin is not None):
            return "This request comes from another page."
        if headers.get("sec-fetch-site", "none") not in ("none", "same-origin") and not self._by_address(scope):
            return "This request comes from another page."
        length = headers.get("content-length", "0")
        if not length.isdecimal() or len(length) > 12 or int(length) > _most(scope):
            return _TOO_LARGE
        if not (self._by_address(scope) or self._by_cookie(headers.get("cookie", ""))):
            return "The address of this studio has a token; open it from the line that `loopwright studio` printed."
        return ""

    def _by_address(self, scope: Scope) -> bool:
        if scope["type"] != "http" or scope["path"] != "/":
            return False
        given = parse_qs(scope.get("query_string", b"").decode("latin-1")).get("token", [""])[0]
        return hmac.compare_digest(given.encode(), self.settings.token.encode())

    def _by_cookie(self, said: str) -> bool:
        try:
            held = SimpleCookie(said).get(f"{COOKIE}-{self.settings.port}")
        except CookieError:
            return False
        return held is not None and hmac.compare_digest(held.value.encode(), self.settings.token.encode())

    async def _let_in(self, send: Send) -> None:
        """The token goes from the address into a cookie, so that it stands in no history."""
        cookie = f"{COOKIE}-{self.settings.port}={self.settings.token}; Path=/; HttpOnly; SameSite=Strict"
        await _answer(send, 303, b"", ((b"location", b"/"), (b"set-cookie", cookie.encode())))


def _most(scope: Scope) -> int:
    """How many bytes the body of a request may have."""
    photograph = scope.get("method") == "POST" and _PHOTOGRAPHS.fullmatch(scope.get("path", ""))
    return MOST_PHOTOGRAPH if photograph else MOST_BODY


async def _answer(send: Send, status: int, body: bytes, more: tuple[tuple[bytes, bytes], ...] = ()) -> None:
    policy = (b"content-security-policy", b"default-src 'none'; frame-ancestors 'none'")
    headers = ((b"content-type", b"text/plain; charset=utf-8"), *HEADERS, policy, *more)
    await send({"type": "http.response.start", "status": status, "headers": list(headers)})
    await send({"type": "http.response.body", "body": body})


def _policy(nonce: str) -> bytes:
    return (
        f"default-src 'none'; script-src 'self'; style-src 'self' 'nonce-{nonce}'; img-src 'self' data: blob:; font-src 'self' data:; "
        "connect-src 'self'; worker-src 'self'; base-uri 'none'; form-action 'self'; frame-ancestors 'none'"
    ).encode()


def _with_headers(send: Send, nonce: str) -> Send:
    async def sent(message: Message) -> None:
        if message["type"] == "http.response.start":
            policy = (b"content-security-policy", _policy(nonce))
            message["headers"] = [*message.get("headers", ()), *HEADERS, policy]
        await send(message)

    return sent


class _Body:
    """A body that goes on longer than it may, whatever it said, or that does not come, ends here."""

    def __init__(self, receive: Receive, most: int) -> None:
        self._receive = receive
        self._most = most
        self._seen = 0
        self._whole = False
        self.ended = False

    async def receive(self) -> Message:
        if self._whole:
            return await self._receive()
        try:
            message = await asyncio.wait_for(self._receive(), BODY_S)
        except TimeoutError:
            self.ended = True
            return {"type": "http.disconnect"}
        self._seen += len(message.get("body", b""))
        self._whole = not message.get("more_body", False)
        self.ended = self._seen > self._most
        return {"type": "http.disconnect"} if self.ended else message
