"""The connection of one window that writes a design: texts in, what is true of them out; views when they are asked for."""

from __future__ import annotations

import asyncio
import json
from typing import Any

from starlette.websockets import WebSocket, WebSocketDisconnect

from loopwright.studio.desk import Desk
from loopwright.studio.folder import ChangedElsewhereError, Folder, NotInFolderError
from loopwright.studio.settings import MOST_TEXT
from loopwright.studio.shapes import shape
from loopwright.studio.workers import OutdatedError, TookTooLongError, WorkFailedError
from loopwright.workshop import views
from loopwright.workshop.files import CannotOpen, CannotSave
from loopwright.workshop.in_hand import in_hand
from loopwright.workshop.known import known
from loopwright.workshop.live import Live

WATCH_S = 1.0
_VIEWS = ("chart", "schematic", "words", "stitches", "sizes", "measures", "shape", "known", "hand")


async def connection(socket: WebSocket) -> None:
    """One window, from its first text to its last."""
    await socket.accept()
    try:
        window = _Window(socket, socket.path_params["name"])
        await window.live()
    except WebSocketDisconnect:
        pass


class _Window:
    """What belongs to one connection. The newest text wins: those that came while one was worked on are skipped."""

    def __init__(self, socket: WebSocket, name: str) -> None:
        self.socket = socket
        self.name = name
        self.folder: Folder = socket.app.state.folder
        self.desk = Desk(name, Live(name))
        self.writers: dict[str, _Window] = socket.app.state.writers
        self.newest: dict[str, Any] | None = None
        self.base = ""
        self.stamp: tuple[float, int] | None = None
        self.waiting = asyncio.Event()
        self.tasks: set[asyncio.Task[None]] = set()

    async def live(self) -> None:
        """Reads messages until the window is closed."""
        writes = self.writers.setdefault(self.name, self) is self and not self.folder.read_only
        await self._send({"t": "writer", "you": writes})
        background = [asyncio.create_task(self._see()), asyncio.create_task(self._watch())]
        try:
            while True:
                await self._take(await self.socket.receive_text())
        finally:
            for task in (*background, *self.tasks):
                task.cancel()
            if self.writers.get(self.name) is self:
                del self.writers[self.name]

    async def _take(self, raw: str) -> None:
        """One message. What is none is answered with a word and forgotten."""
        try:
            read = json.loads(raw) if len(raw) <= 4 * MOST_TEXT else None
        except (ValueError, RecursionError):
            read = None
        said: dict[str, Any] = read if isinstance(read, dict) else {}
        kind = said.get("t")
        if kind == "text" and isinstance(said.get("text"), str) and isinstance(said.get("seq"), int) and len(said["text"]) <= MOST_TEXT:
            self.newest = said
            self.waiting.set()
        elif kind == "view" and said.get("what") in _VIEWS and isinstance(said.get("size"), (int, type(None))):
            task = asyncio.create_task(self._view(said))
            self.tasks.add(task)
            task.add_done_callback(self.tasks.discard)
        elif kind == "write here":
            await self._take_over()
        else:
            await self._send({"t": "error", "message": "This was not understood."})

    async def _take_over(self) -> None:
        before = self.writers.get(self.name)
        self.writers[self.name] = self
        if before is not None and before is not self:
            await before._send({"t": "writer", "you": False})  # noqa: SLF001 - the other window
        await self._send({"t": "writer", "you": not self.folder.read_only})

    async def _see(self) -> None:
        """Works the newest text, saves it, tells what it makes; again and again."""
        while True:
            await self.waiting.wait()
            self.waiting.clear()
            said, self.newest = self.newest, None
            if said is None:
                continue
            gauge = said.get("gauge") if isinstance(said.get("gauge"), str) else None
            saving = asyncio.create_task(self._save(said))
            try:
                seen = await self.desk.see(said["text"], gauge)
                await self._send({"t": "seen", "seq": said["seq"], **seen})
            except Exception as e:  # noqa: BLE001 - a fault of ours must not end the window
                await self._send({"t": "fault", "seq": said["seq"], "message": f"{type(e).__name__}"})
            await saving

    async def _save(self, said: dict[str, Any]) -> None:
        """To disk, where the text is no older than what stands there and this window writes."""
        base = said.get("base")
        if not isinstance(base, str) or self.writers.get(self.name) is not self or self.folder.read_only:
            return
        try:
            opened = await asyncio.to_thread(self.folder.save, self.name, said["text"], self.base or base)
            self.base, self.stamp = opened.sum, self.folder.stamp(self.name)
            await self._send({"t": "saved", "seq": said["seq"], "sum": opened.sum, "at": opened.at})
        except ChangedElsewhereError as e:
            await self._send({"t": "changed", "text": e.text})
        except (CannotSave, CannotOpen, NotInFolderError) as e:
            await self._send({"t": "unsaved", "seq": said["seq"], "message": str(e)})

    async def _watch(self) -> None:
        """Tells when the file is changed by something else."""
        self.stamp = self.folder.stamp(self.name)
        while True:
            await asyncio.sleep(WATCH_S)
            now = await asyncio.to_thread(self.folder.stamp, self.name)
            if now == self.stamp:
                continue
            self.stamp = now
            try:
                opened = await asyncio.to_thread(self.folder.read, self.name)
                text, told = opened.text, opened.sum
            except (NotInFolderError, CannotOpen):
                text, told = None, ""
            if told != self.base:
                await self._send({"t": "changed", "text": text})

    async def _view(self, said: dict[str, Any]) -> None:
        what, size = said["what"], said["size"]
        answer = {"t": "view", "what": what, "size": size, "ask": said.get("ask"), "revision": self.desk.revision}
        try:
            data = await self._made(what, size, said)
        except OutdatedError:
            return
        except TookTooLongError:
            answer["error"] = "This took too long and was stopped. A smaller size may do."
        except WorkFailedError as e:
            answer["error"] = f"This drawing failed ({e}). The pattern is safe and saved."
        except Exception as e:  # noqa: BLE001 - a fault of ours must not end the window
            answer["error"] = f"This drawing failed ({type(e).__name__}). The pattern is safe and saved."
        else:
            answer["data"] = data
        await self._send(answer)

    async def _made(self, what: str, size: int | None, said: dict[str, Any]) -> Any:
        at = 0 if size is None else size
        desk = self.desk
        if what == "chart":
            left, whole = bool(said.get("left_handed")), bool(said.get("whole"))
            return await desk.view((what, at, left, whole), lambda s: views.chart(s, at, left_handed=left, whole=whole))
        if what == "schematic":
            return await desk.view((what, size), lambda s: views.schematic(s, size))
        if what == "stitches":
            return await desk.view((what, at), lambda s: views.stitches(s, at))
        if what == "words":
            terms = said.get("terms") if said.get("terms") in ("us", "uk") else None
            full = bool(said.get("full"))
            return await desk.view((what, size, terms, full), lambda s: views.words(s, size, terms=terms, full=full, spelled_out=full))
        if what == "sizes":
            return await desk.view((what,), views.sizes)
        if what == "known":
            return await desk.view((what,), known)
        if what == "hand":
            return await desk.view((what, at), lambda s: in_hand(s, at))
        if what == "measures":
            return await desk.view((what,), views.measures)
        if desk.seen is None:
            return None
        return await shape(self.socket.app.state.workers, f"shape {id(self)}", desk.seen.source.text, at)

    async def _send(self, message: dict[str, Any]) -> None:
        await self.socket.send_text(json.dumps(message, ensure_ascii=False, separators=(",", ":")))
