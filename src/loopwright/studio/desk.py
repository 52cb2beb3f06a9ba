"""An opened design: its newest text, what was seen of it, and the views that are drawn of that, each once."""

from __future__ import annotations

import asyncio
from dataclasses import dataclass, field
from typing import Any

from loopwright.workshop.live import Live, Seen


@dataclass(slots=True)
class Desk:
    """One design as one window writes it. `revision` counts the texts that were seen."""

    name: str
    live: Live
    revision: int = 0
    seen: Seen | None = None
    wire: dict[str, Any] = field(default_factory=dict)
    kept: dict[tuple[Any, ...], Any] = field(default_factory=dict)
    lock: asyncio.Lock = field(default_factory=asyncio.Lock)

    async def see(self, text: str, gauge: str | None = None) -> dict[str, Any]:
        """Reads and works a text, off the loop. What is drawn of an older text is forgotten."""
        async with self.lock:
            seen = await asyncio.to_thread(self.live.see, text, gauge)
            wire = await asyncio.to_thread(seen.as_wire)
            self.seen, self.wire = seen, wire
            self.revision += 1
            self.kept.clear()
            return {**wire, "revision": self.revision}

    async def view(self, key: tuple[Any, ...], make: Any) -> Any:
        """A view of the newest text: `make(seen)`, off the loop, kept until the text changes. None before a text was seen."""
        if self.seen is None:
            return None
        if key not in self.kept:
            revision, seen = self.revision, self.seen
            made = await asyncio.to_thread(make, seen)
            if revision != self.revision:
                return made
            self.kept[key] = made
        return self.kept[key]
