"""The studio's server under readers and typing, as its own pages ask it, and what it holds in memory.

    python -m benchmarks.bench_studio_server [--readers 200] [--acts 12]

Starts a studio for reading on the shipped designs. All readers are there at once, each with a window of its own: page, folder, design, what
is true of it, then chart, words, measures of one size after the other, with a second's rest in between. Then one window types, on a
ten-size design and on a pattern of 1,000 rows. Clock on the wall, client and server on one machine; exit code 1 when a target is missed.
"""

from __future__ import annotations

import argparse
import asyncio
import json
import os
import random
import re
import shutil
import statistics
import subprocess
import sys
import tempfile
import time
from collections.abc import Iterator
from pathlib import Path
from typing import Any

from websockets.asyncio.client import ClientConnection, connect

DESIGNS = Path(__file__).parents[1] / "designs"
HAT = "samphire-beanie.txt"
LONG = "Gauge: 17 sc and 20 rows = 10 cm\n\nRow 1: Ch 41, sc in 2nd ch from hook and in each ch across. (40 sc)\n" + "".join(
    f"Row {n}: Ch 1, sc in each st across, turn. (40 sc)\n" for n in range(2, 1001)
)
WITHIN_S = 2.0  # all readers come within so long
VIEWS = ("chart", "words", "stitches", "measures", "schematic")
Took = dict[str, list[float]]


class Studio:
    """A studio in a process of its own."""

    def __init__(self, folder: Path, *more: str) -> None:
        words = [sys.executable, "-m", "loopwright", "studio", str(folder), "--no-browser", *more]
        self.process = subprocess.Popen(words, stdout=subprocess.PIPE, text=True)
        if self.process.stdout is None:
            raise RuntimeError("no output")
        address = self.process.stdout.readline().strip()
        self.host = address.split("/")[2]
        self.port = int(self.host.partition(":")[2])
        self.cookie = f"loopwright-{self.port}={address.partition('token=')[2]}"
        time.sleep(1.0)

    def memory_mb(self) -> tuple[float, float]:
        """Resident memory of the server alone, and with all its processes."""
        own = self.process.pid
        tasks = Path(f"/proc/{own}/task").glob("*/children")
        below = {int(n) for t in tasks for n in t.read_text(encoding="ascii").split()}
        return _resident_mb(own), _resident_mb(own) + sum(_resident_mb(p) for p in below)

    async def get(self, path: str) -> int:
        """Asks for a path on a connection of its own; gives the status."""
        reader, writer = await asyncio.open_connection("127.0.0.1", self.port)
        try:
            headers = {"Host": self.host, "Cookie": self.cookie, "Accept-Encoding": "gzip, br", "Connection": "close"}
            writer.write("\r\n".join([f"GET {path} HTTP/1.1", *(f"{k}: {v}" for k, v in headers.items()), "", ""]).encode())
            answer = await reader.read()
            return int(answer.split(b" ", 2)[1])
        finally:
            writer.close()

    def window(self, name: str) -> connect:
        """A window on a design."""
        return connect(
            f"ws://{self.host}/ws/design/{name}", additional_headers={"Cookie": self.cookie}, origin=f"http://{self.host}",  # type: ignore[arg-type]
            max_size=None, compression=None, open_timeout=60, proxy=None,
        )

    def end(self) -> None:
        """Ends it."""
        self.process.terminate()
        self.process.wait(30)


def _resident_mb(pid: int) -> float:
    try:
        found = re.search(r"VmRSS:\s+(\d+)", Path(f"/proc/{pid}/status").read_text(encoding="ascii"))
    except OSError:
        return 0.0
    return int(found[1]) / 1024 if found else 0.0


async def _hear(window: ClientConnection, kind: str, **wanted: Any) -> dict[str, Any]:
    while True:
        said: dict[str, Any] = json.loads(await window.recv())
        if said["t"] in ("error", "fault"):
            raise RuntimeError(str(said))
        if said["t"] == kind and all(said.get(k) == v for k, v in wanted.items()):
            return said


async def _reader(studio: Studio, names: list[str], acts: int, took: Took, errors: list[str], chance: random.Random) -> None:
    """One reader: opens a design, and looks at one thing after the other."""
    name = chance.choice(names)

    async def timed(what: str, work: Any) -> Any:
        begin = time.perf_counter()
        try:
            made = await asyncio.wait_for(work, 60)
        except Exception as e:
            errors.append(f"{what}: {type(e).__name__} {e}")
            raise
        took.setdefault(what, []).append(time.perf_counter() - begin)
        return made

    await asyncio.sleep(chance.random() * WITHIN_S)
    for path in ("/", "/api/folder", f"/api/designs/{name}"):
        status = await timed(path.rpartition("/")[0] or "/", studio.get(path))
        errors += [path] if status != 200 else []
    text = (DESIGNS / name).read_text(encoding="utf-8")
    async with studio.window(name) as window:
        await window.send(json.dumps({"t": "text", "seq": 1, "text": text}))
        seen = await timed("seen", _hear(window, "seen"))
        for n in range(acts):
            await asyncio.sleep(0.5 + chance.random())
            size = chance.randrange(max(1, len(seen["sizes"])))
            what = chance.choice(VIEWS)
            await window.send(json.dumps({"t": "view", "what": what, "size": size, "ask": n}))
            said = await timed(what, _hear(window, "view", ask=n))
            if "data" not in said:
                errors.append(f"{what}: {said.get('error') or 'dropped'}")


async def _reading(studio: Studio, readers: int, acts: int) -> tuple[Took, list[str]]:
    """All at once, after one look at everything (the answers of a studio for reading are kept and shared)."""
    names = [HAT, "thrift-shawl.txt", "avocet-bonnet.txt"]
    await asyncio.gather(*(_reader(studio, [n], 40, {}, [], random.Random(i)) for n in names for i in range(4)))
    took: Took = {}
    errors: list[str] = []
    await asyncio.gather(*(_reader(studio, names, acts, took, errors, random.Random(n)) for n in range(readers)), return_exceptions=True)
    return took, errors


def typed(text: str, keys: int) -> Iterator[str]:
    """A text after each key. Keys are struck in rows from the first to the last: in their words and in the counts they print.

    No text comes twice: what was seen once is kept, and would be answered without being worked.
    """
    lines = text.split("\n")
    rows = [i for i, line in enumerate(lines) if re.match(r"(?:Row|Rnd)s? \d", line)]
    sound = ""
    for n in range(keys):
        i = rows[n // 4 * 7919 % len(rows)]
        if n % 2:  # takes back what the key before put in, and leaves a space at the end
            lines[i] = sound + " "
        else:
            sound = lines[i]
            count = re.search(r"\([^()]*\d(?= )", sound)
            at = count.end() if count and n % 4 == 0 else sound.index(": ") + 4
            lines[i] = sound[:at] + ("7" if n % 4 == 0 else "s") + sound[at:]
        yield "\n".join(lines)


async def _typing(studio: Studio, name: str, text: str, keys: int) -> list[float]:
    """One key after the other, ten a second, anywhere in the text: from the key to what is true of the text."""
    found = []
    async with studio.window(name) as window:
        for n, now in enumerate(typed(text, keys + 3)):
            begin = time.perf_counter()
            await window.send(json.dumps({"t": "text", "seq": n, "text": now}))
            await _hear(window, "seen", seq=n)
            if n >= 3:
                found.append(time.perf_counter() - begin)
            await asyncio.sleep(0.1)
    return found


def p95(times: list[float]) -> float:
    """The time that 95 of 100 stay below, in ms."""
    return statistics.quantiles(times, n=20)[-1] * 1000 if len(times) > 1 else times[0] * 1000


def figures(readers: int, acts: int) -> Iterator[tuple[str, float, float]]:
    """Each figure with its target, which it must stay below."""
    with tempfile.TemporaryDirectory() as held:
        folder = Path(held) / "designs"
        shutil.copytree(DESIGNS, folder)
        studio = Studio(folder, "--read-only")
        try:
            own, whole = studio.memory_mb()
            yield "memory of the idle server, MB", own, 150
            yield "the same with the process that is kept ready, MB", whole, 150
            took, errors = asyncio.run(_reading(studio, readers, acts))
            for error in errors[:5]:
                print("  ", error)
            for what, times in sorted(took.items()):
                print(f"   {what:24} {len(times):6} p50 {statistics.median(times) * 1000:7.1f} ms  p95 {p95(times):7.1f} ms")
            yield f"errors of {readers} readers at once, {sum(map(len, took.values()))} requests", len(errors), 0
            yield "their p95, ms", p95([t for times in took.values() for t in times]), 300
            yield "memory of the server with them, MB", studio.memory_mb()[0], 250
            hat = asyncio.run(_typing(studio, HAT, (DESIGNS / HAT).read_text(encoding="utf-8"), 40))
            yield "key to counts and findings, ten sizes, p50, ms", statistics.median(hat) * 1000, 60
            yield "the same, p95, ms", p95(hat), 150
            long = asyncio.run(_typing(studio, HAT, LONG, 40))
            yield "1,000 rows, p50, ms", statistics.median(long) * 1000, 250
            yield "1,000 rows, p95, ms", p95(long), 250
        finally:
            studio.end()


def main() -> int:
    """Prints the table; 1 when a target is missed."""
    args = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    args.add_argument("--readers", type=int, default=200)
    args.add_argument("--acts", type=int, default=12)
    given = args.parse_args()
    missed = 0
    print(f"load of the machine before: {os.getloadavg()[0]:.1f} on {os.cpu_count()} cores")
    for what, value, target in figures(given.readers, given.acts):
        missed += value > target
        print(f"{what:70} {value:9,.1f}   <= {target:g}{'' if value <= target else '   MISSED'}", flush=True)
    return 1 if missed else 0


if __name__ == "__main__":
    sys.exit(main())
