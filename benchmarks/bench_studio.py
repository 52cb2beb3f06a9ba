"""The studio as it is seen: in Chromium, from a key to the count and the finding on screen, from an address to a useful screen, the shape.

    python -m benchmarks.bench_studio [--keys 60]

Starts a studio on the shipped designs and on patterns made here. A key is timed in the page itself, from its keydown to the first frame
that shows what follows from it (the number said beside the count, and the pencil line under it). Clock on the wall; needs playwright, a
Chromium (environment variable CHROMIUM, else the one on the path) and the built pages.
"""

from __future__ import annotations

import argparse
import shutil
import statistics
import sys
import tempfile
import time
from pathlib import Path
from typing import TYPE_CHECKING

from benchmarks.bench_studio_server import DESIGNS, HAT, LONG, Studio

if TYPE_CHECKING:
    from playwright.sync_api import Page

TUBE = """Tube
Gauge: 17 sc and 20 rnds = 10 cm

Rnd 1: Ch {n}, join with sl st to first ch. Sc in each ch around; join. ({n} sc)
Rnds 2-{m}: Sc in each st around; join. ({n} sc)
"""
ARGS = [
    "--no-sandbox", "--disable-quic", "--no-first-run", "--disable-background-networking", "--disable-dev-shm-usage",
    "--enable-unsafe-swiftshader",
]
FOUND = "!!document.querySelector('.tape .claim') && !!document.querySelector('.f-look')"
TIMER = """(there) => new Promise((done) => {
  addEventListener('keydown', () => {
    const from = performance.now();
    const look = () => { if ((CONDITION) === there) done(performance.now() - from); else requestAnimationFrame(look); };
    requestAnimationFrame(look);
  }, { once: true, capture: true });
})"""
FRAMES = """() => new Promise((done) => {
  const canvas = document.querySelector('.solid canvas'), times = [];
  const box = canvas.getBoundingClientRect(), at = (n) => ({ clientX: box.x + 50 + n, clientY: box.y + 80, pointerId: 1, bubbles: true });
  canvas.setPointerCapture = () => {};
  canvas.dispatchEvent(new PointerEvent('pointerdown', at(0)));
  const step = (t) => {
    times.push(t);
    canvas.dispatchEvent(new PointerEvent('pointermove', at(times.length * 5)));
    if (times.length < 61) { requestAnimationFrame(step); return; }
    canvas.dispatchEvent(new PointerEvent('pointerup', at(400)));
    done(60000 / (times[60] - times[0]));
  };
  requestAnimationFrame(step);
})"""


def first_screen(page: Page, host: str, name: str, times: int = 5) -> list[float]:
    """Milliseconds from the address to counts on the tape."""
    took = []
    for _ in range(times):
        start = time.perf_counter()
        page.goto(f"http://{host}/write/{name}", wait_until="commit")
        page.wait_for_selector(".tape .count", state="attached")
        took.append(1000 * (time.perf_counter() - start))
    return took


def keys(page: Page, line: str, times: int, *, to: str = "Control+Home") -> list[float]:
    """Milliseconds from a key to what follows from it: a digit is added to the count that a row prints.

    Another digit each time, and after nine of them a space more at the end of the line: no text comes twice, as none is worked again that
    was. Taking it away is not timed.
    `to`: the key that goes where the line can be seen.
    """
    page.locator(".cm-content").click()
    page.keyboard.press(to)
    page.locator(".cm-line", has_text=line).first.click()
    took: list[float] = []
    for i in range(times):
        if i % 9 == 0:
            page.keyboard.press("End")
            page.keyboard.press("Space")
            for _ in range(len(line) - line.rindex(" ") + i // 9 + 1):
                page.keyboard.press("ArrowLeft")
        page.wait_for_timeout(1500 if i == 0 else 600)
        page.evaluate(f"() => {{ window.timed = ({TIMER.replace('CONDITION', FOUND)})(true); }}")
        page.keyboard.press(str(i % 9 + 1))
        took.append(page.evaluate("() => window.timed"))
        page.evaluate(f"() => {{ window.timed = ({TIMER.replace('CONDITION', FOUND)})(false); }}")
        page.keyboard.press("Backspace")
        page.evaluate("() => window.timed")
    return took


def shape(page: Page, host: str, name: str) -> tuple[float, float]:
    """Milliseconds until the shape is seen, and frames a second while it is turned."""
    page.goto(f"http://{host}/write/{name}")
    page.wait_for_selector(".sheet[data-linked=true]")
    page.wait_for_timeout(3000)
    start = time.perf_counter()
    page.get_by_role("button", name="Shape").click()
    page.wait_for_selector(".solid canvas")
    page.get_by_text("The shape is being worked out").wait_for(state="detached", timeout=60_000)
    seen = 1000 * (time.perf_counter() - start)
    return seen, page.evaluate(FRAMES)


def tell(name: str, took: list[float]) -> None:
    """One line of figures."""
    took = sorted(took)
    print(f"{name:<58} p50 {statistics.median(took):7.0f} ms   p95 {took[int(0.95 * (len(took) - 1))]:7.0f} ms   n {len(took)}")


def main() -> int:
    """Takes all figures and prints them."""
    from playwright.sync_api import sync_playwright

    given = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    given.add_argument("--keys", type=int, default=60)
    asked = given.parse_args()
    with tempfile.TemporaryDirectory() as made, sync_playwright() as api:
        folder = Path(made)
        shutil.copy(DESIGNS / HAT, folder)
        (folder / "long.txt").write_text(LONG, encoding="utf-8")
        for stitches, rounds in ((50, 20), (100, 50)):
            (folder / f"tube-{stitches * rounds}.txt").write_text(TUBE.format(n=stitches, m=rounds), encoding="utf-8")
        studio = Studio(folder)
        try:
            chromium = api.chromium.launch(executable_path=shutil.which("chromium"), args=ARGS)
            page = chromium.new_page(viewport={"width": 1440, "height": 900})
            page.goto(f"http://{studio.host}/?token={studio.cookie.partition('=')[2]}")
            page.wait_for_selector(".standing")
            tell("open the ten-size hat, counts on the tape", first_screen(page, studio.host, HAT))
            tell("a key in the ten-size hat, count and finding seen", keys(page, "2 hdc in each st around; join. (16 hdc)", asked.keys))
            page.goto(f"http://{studio.host}/write/long.txt")
            page.wait_for_selector(".tape .count", state="attached")
            row = "Row {}: Ch 1, sc in each st across, turn. (40 sc)"
            tell("a key in row 5 of 1,000, the same", keys(page, row.format(5), asked.keys))
            tell("a key in row 995 of 1,000, the same", keys(page, row.format(995), asked.keys, to="Control+End"))
            for name in ("tube-1000.txt", "tube-5000.txt"):
                seen, frames = shape(page, studio.host, name)
                print(f"{'shape of ' + name:<58} seen after {seen:6.0f} ms   {frames:5.1f} frames/s")
            chromium.close()
        finally:
            studio.process.kill()
            studio.process.wait()
    return 0


if __name__ == "__main__":
    sys.exit(main())
