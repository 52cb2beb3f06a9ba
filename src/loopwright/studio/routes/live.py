"""The connection of one window that writes a design: texts in, what is true of them out; views when they are asked for.

The messages are listed in docs/studio.md; views are made in studio/seeing.py.
"""

from __future__ import annotations

import asyncio
import json
from contextlib import suppress
from typing import Any

from starlette.websockets import WebSocket, WebSocketDisconnect

from loopwright.studio.desk import Desk
from loopwright.studio.folder import ChangedElsewhereError, Folder, NotInFolderError, Stamp
from loopwright.studio.settings import IDLE_S, MOST_TEXT, RETRY_S
from loopwright.studio.shapes import shape
from loopwright.studio.workers import OutdatedError, TookTooLongError, WorkFailedError
from loopwright.workshop.files import CannotOpen, CannotSave

WATCH_S = 1.0
MOST_ASKED = 64  # views that one window may wait for at once
VIEWS = ("chart", "schematic", "words", "stitches", "sizes", "measures", "shape", "known", "hand", "proof", "nest")
"""What may be asked for; all but the shape are made in studio/seeing.py."""
OPTIONS = ("left_handed", "whole", "terms", "full", "way")
_NOT_UNDERSTOOD = "This was not understood."


async def connection(socket: WebSocket) -> None:
    """One window, from its first text to its last."""
    await socket.accept()
    with suppress(WebSocketDisconnect):
        await _Window(socket, socket.path_params["name"]).live()


class _Window:
    """What belongs to one connection. The newest text wins: those that came while one was worked on are skipped."""

    def __init__(self, socket: WebSocket, name: str) -> None:
        self.socket = socket
        self.name = name
        self.folder: Folder = socket.app.state.folder
        self.desk: Desk = socket.app.state.desk
        self.writers: dict[str, _Window] = socket.app.state.writers
        self.newest: dict[str, Any] | None = None
        self.seen: tuple[str, str, str | None] | None = None
        self.revision = 0
        self.unsaved: dict[str, Any] | None = None
        self.base = ""
        self.other: str | None = None  # the sum of a text that is not this window's
        self.stamp: Stamp | None = None
        self.to_see, self.to_save = asyncio.Event(), asyncio.Event()
        self.saving = asyncio.Lock()
        self.views: set[asyncio.Task[None]] = set()

    async def live(self) -> None:
        """Reads messages until the window is closed; what it typed last is saved then."""
        writes = self.writers.setdefault(self.name, self) is self and not self.folder.read_only
        await self._send({"t": "writer", "you": writes})
        background = [asyncio.create_task(part) for part in (self._see(), self._save_all(), self._watch())]
        try:
            while True:
                await self._take(await self._received())
        finally:
            for task in (*background, *self.views):
                task.cancel()
            if self.writers.get(self.name) is self:
                del self.writers[self.name]
                if self.unsaved is not None:
                    await self._save(self.unsaved, may=True)

    async def _received(self) -> str:
        message = await self.socket.receive()
        if message["type"] == "websocket.disconnect":
            raise WebSocketDisconnect(message.get("code", 1000))
        return message.get("text") or ""

    async def _take(self, raw: str) -> None:
        """One message. What is none is answered with a word and forgotten."""
        try:
            read = json.loads(raw)
        except (ValueError, RecursionError):
            read = None
        said: dict[str, Any] = read if isinstance(read, dict) else {}
        kind = said.get("t")
        if kind == "text" and _is_text(said):
            self.newest = said
            self.to_see.set()
            if isinstance(said.get("base"), str):
                self.unsaved = said
                self.to_save.set()
        elif kind == "view" and _is_view(said) and len(self.views) < MOST_ASKED:
            task = asyncio.create_task(self._view(said))
            self.views.add(task)
            task.add_done_callback(self.views.discard)
        elif kind == "write here":
            await self._take_over()
        else:
            await self._send({"t": "error", "message": _NOT_UNDERSTOOD})

    async def _take_over(self) -> None:
        """This window writes from now on. What the other one typed is on disk first, and kept."""
        before = self.writers.get(self.name)
        self.writers[self.name] = self
        if before is not None and before is not self:
            if before.unsaved is not None:
                await before._save(before.unsaved, may=True)  # noqa: SLF001 - the other window
            await before._send({"t": "writer", "you": False})  # noqa: SLF001 - the same
            await asyncio.to_thread(self.folder.keep, self.name, "another window")
        await self._send({"t": "writer", "you": not self.folder.read_only})

    async def _see(self) -> None:
        """Works the newest text and tells what it makes; again and again."""
        while True:
            await self.to_see.wait()
            self.to_see.clear()
            said, self.newest = self.newest, None
            if said is None:
                continue
            text, gauge = said["text"], said.get("gauge") if isinstance(said.get("gauge"), str) else None
            try:
                seen = await self.desk.see(id(self), self.name, text, gauge, lambda: self.newest is None)
            except OutdatedError:
                continue
            except TookTooLongError:
                await self._send({"t": "fault", "seq": said["seq"], "message": "Working this out took too long and was stopped."})
            except Exception as e:  # noqa: BLE001 - a fault of ours must not end the window
                await self._send({"t": "fault", "seq": said["seq"], "message": str(e) or type(e).__name__})
            else:
                self.revision += 1
                self.seen = self.name, text, gauge
                await self._send_raw(f'{{"t":"seen","seq":{said["seq"]},"revision":{self.revision},{seen[1:]}')

    async def _save_all(self) -> None:
        """Saves the newest text, at most four times a second; tries again where it could not."""
        while True:
            await self.to_save.wait()
            self.to_save.clear()
            said = self.unsaved
            wait_s = IDLE_S
            if said is not None and not await self._save(said):
                wait_s = RETRY_S
                self.to_save.set()
            await asyncio.sleep(wait_s)

    async def _save(self, said: dict[str, Any], *, may: bool = False) -> bool:
        """To disk, one text after the other, each to its end even where the window is closed. False where it should be tried again."""
        return await asyncio.shield(asyncio.ensure_future(self._save_one(said, may=may)))

    async def _save_one(self, said: dict[str, Any], *, may: bool) -> bool:
        """To disk, where what stands there is what this window knows."""
        async with self.saving:
            return await self._saved(said, may=may)

    async def _saved(self, said: dict[str, Any], *, may: bool) -> bool:
        if not may and self.writers.get(self.name) is not self or self.folder.read_only:
            return True
        try:
            opened = await asyncio.to_thread(self.folder.save, self.name, said["text"], self.base or said["base"])
        except ChangedElsewhereError as e:
            self._is_saved(said)
            await self._changed(e.told(), said["text"])
        except (CannotSave, CannotOpen) as e:
            await self._send({"t": "unsaved", "seq": said["seq"], "message": str(e)})
            return False
        except NotInFolderError:
            self._is_saved(said)
            await self._send({"t": "unsaved", "seq": said["seq"], "message": "There is no such design in this folder."})
        else:
            self._is_saved(said)
            self.base, self.stamp = opened.sum, self.folder.stamp(self.name)
            await self._send({"t": "saved", "seq": said["seq"], "sum": opened.sum, "at": opened.at})
        return True

    async def _changed(self, told: dict[str, str | None], mine: str) -> None:
        """Two texts: both are kept, once, whatever is decided of them."""
        if told["sum"] != self.other:
            self.other = told["sum"]
            await asyncio.to_thread(self.folder.keep, self.name, "changed elsewhere", mine)
            await asyncio.to_thread(self.folder.keep, self.name, "changed elsewhere")
        await self._send({"t": "changed", **told})

    def _is_saved(self, said: dict[str, Any]) -> None:
        if self.unsaved is said:
            self.unsaved = None

    async def _watch(self) -> None:
        """Tells when the file is changed by something else."""
        self.stamp = self.folder.stamp(self.name)
        while True:
            await asyncio.sleep(WATCH_S)
            now = await asyncio.to_thread(self.folder.stamp, self.name)
            if now == self.stamp:
                continue
            try:
                opened = await asyncio.to_thread(self.folder.read, self.name)
                told: dict[str, str | None] = {"text": opened.text, "sum": opened.sum}
            except (NotInFolderError, CannotOpen):
                told = {"text": None, "sum": ""}
            if self.stamp == now:  # saved by this window meanwhile
                continue
            self.stamp = now
            if told["sum"] != self.base:
                await self._send({"t": "changed", **told})

    async def _view(self, said: dict[str, Any]) -> None:
        """Answers with a view of the text that was seen last; with `dropped` where that was outrun."""
        what, size, revision = said["what"], said.get("size"), self.revision
        head = json.dumps({"t": "view", "what": what, "size": size, "ask": said.get("ask"), "revision": revision})[:-1]
        try:
            data = await self._made(what, size, said, revision)
        except OutdatedError:
            more = '"dropped":true'
        except TookTooLongError:
            more = f'"error":{json.dumps("This took too long and was stopped. A smaller size may do.")}'
        except WorkFailedError as e:
            more = f'"error":{json.dumps(f"This drawing failed ({e}). The pattern is safe and saved.")}'
        else:
            more = f'"data":{data}'
        await self._send_raw(f"{head},{more}}}")

    async def _made(self, what: str, size: int | None, said: dict[str, Any], revision: int) -> str:
        if self.seen is None:
            return "null"
        if what == "shape":
            found = await shape(self.socket.app.state.workers, f"shape {id(self)}", self.seen[1], size or 0, str(said.get("way", "made")))
            return json.dumps(found, separators=(",", ":"))
        asked = {name: said[name] for name in OPTIONS if isinstance(said.get(name), (bool, str))}
        return await self.desk.view(id(self), self.seen, what, size, asked, lambda: self.revision == revision)

    async def _send(self, message: dict[str, Any]) -> None:
        await self._send_raw(json.dumps(message, ensure_ascii=False, separators=(",", ":")))

    async def _send_raw(self, message: str) -> None:
        """Sends, unless the window is gone."""
        with suppress(WebSocketDisconnect, RuntimeError):
            await self.socket.send_text(message)


def _is_text(said: dict[str, Any]) -> bool:
    """Whether it is a text that can be worked and saved: of bearable length, without halves of characters."""
    text = said.get("text")
    if not isinstance(text, str) or type(said.get("seq")) is not int or len(text) > MOST_TEXT:
        return False
    return _is_sayable(text) and (not isinstance(said.get("gauge"), str) or len(said["gauge"]) < 200 and _is_sayable(said["gauge"]))


def _is_view(said: dict[str, Any]) -> bool:
    whole = type(said.get("size")) in (int, type(None)) and type(said.get("ask")) in (int, type(None))
    return said.get("what") in VIEWS and whole and abs(said.get("size") or 0) < 1000


def _is_sayable(text: str) -> bool:
    try:
        text.encode()
    except UnicodeEncodeError:
        return False
    return True
