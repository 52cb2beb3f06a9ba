"""Every screen at 400 % zoom of a small window, which is 320 by 256 px, and for those who want nothing to move."""

from __future__ import annotations

import re
from collections.abc import Callable
from typing import TYPE_CHECKING, NamedTuple

import pytest
from waiting import until

if TYPE_CHECKING:
    from playwright.sync_api import Page
    from served import Served

Open = Callable[..., "Page"]
HAT, SHAWL = "samphire-beanie.txt", "thrift-shawl.txt"
LONGEST_S = 0.01
LETTERS = "document.body.offsetWidth && document.fonts.status === 'loaded'"  # laid out first, as only then the letters that it needs are asked for


class Screen(NamedTuple):
    """A screen: its address, what is there once it is ready, and what is pressed then, each with what it brings."""

    at: str
    ready: str
    press: tuple[tuple[str, str], ...] = ()


SCREENS = (
    Screen("/", ".stand li, .cards li, main a"), Screen("/begin", "#bg-text"), Screen("/listen", ".captions-in textarea"),
    Screen("/swatches", "h1", (("A new swatch", ".sw-form"),)),
    Screen(f"/write/{HAT}", ".sheet[data-linked=true]", (("Older texts", ".older h2"), ("Back", ".sheet"), ("All sizes", ".sheet.all"))),
    Screen(f"/write/{HAT}", ".sheet[data-linked=true]", (("Shape", ".choices select"),)),
    Screen(f"/write/{HAT}", ".sheet[data-linked=true]", (("Words", ".choices select"),)),
    Screen(f"/write/{HAT}", ".sheet[data-linked=true]", (("Measures", "table.measures"),)),
    Screen(f"/hand/{HAT}", ".pick .act", (("child", ".big .n"),)), Screen(f"/sizes/{HAT}", ".sz-cell .fig"),
    Screen(f"/questions/{HAT}", "select[aria-label=row]"), Screen(f"/editing/{HAT}", "h1"),
    Screen(f"/publish/{SHAWL}", ".files li", (("US terms", ".choose"),)), Screen(f"/film/{HAT}", ".shot"),
    Screen(f"/camera/{HAT}", ".cam .ways", (("Rows", ".tap"), ("Shots", ".tap"))),
)
# Sideways scroll by design: the tapes and rows of choices in one line, and what has two dimensions of its own (tables, charts, pages).
WIDE = ".across, .hem, .views, .shots, .roll, .grid, [role=grid], table, .drawing, .made figure, .cm-scroller, .bench, .stations"


def there(made: Page, screen: Screen) -> Page:
    made.locator(screen.ready).first.wait_for()
    until(made, LETTERS)
    return made


def names(screen: Screen) -> str:
    return f"{screen.at.split('/')[1] or 'designs'} {' '.join(p[0] for p in screen.press)}".strip()


def too_wide(made: Page) -> list[str]:
    """What goes over the edge of the page, or scrolls sideways where words are to be read."""
    found: list[str] = made.evaluate(
        """(wide) => {
            const name = (e) => `${e.tagName.toLowerCase()}.${[...e.classList].join('.')}`, found = [];
            const root = document.documentElement;
            if (root.scrollWidth > root.clientWidth) {
                found.push(`the page is ${root.scrollWidth} px wide`);
                for (const e of document.querySelectorAll('body *')) if (e.getBoundingClientRect().right > root.clientWidth + 1 && !e.closest(wide) && !e.closest('.sr, svg')) found.push(name(e));
            }
            for (const e of document.querySelectorAll('body *')) {
                const s = getComputedStyle(e);
                if (/auto|scroll/.test(s.overflowX) && e.scrollWidth > e.clientWidth + 1 && !e.closest(wide)) found.push(`scrolls sideways: ${name(e)} ${e.scrollWidth} in ${e.clientWidth}`);
            }
            return found.slice(0, 12);
        }""",
        WIDE,
    )
    return found


def moving(made: Page) -> list[str]:
    """What would move for longer than it may."""
    found: list[str] = made.evaluate(
        """(most) => {
            const longest = (said) => Math.max(...said.split(',').map((d) => parseFloat(d) * (d.trim().endsWith('ms') ? .001 : 1)));
            const found = [];
            for (const e of document.querySelectorAll('*')) for (const part of ['', '::before', '::after']) {
                const s = getComputedStyle(e, part || undefined);
                if (part && s.content === 'none') continue;
                if (s.transitionProperty !== 'none' && longest(s.transitionDuration) + Math.max(0, longest(s.transitionDelay)) > most) found.push(`changes: ${e.className}${part}`);
                if (s.animationName !== 'none' && longest(s.animationDuration) > most) found.push(`moves: ${e.className}${part} ${s.animationName}`);
                if (s.scrollBehavior === 'smooth') found.push(`scrolls smoothly: ${e.className}`);
            }
            for (const a of document.getAnimations()) if (a.effect.getComputedTiming().activeDuration > most * 1000) found.push(`runs: ${a.effect.target?.className}`);
            return [...new Set(found)].slice(0, 12);
        }""",
        LONGEST_S,
    )
    return found


@pytest.mark.parametrize("screen", SCREENS, ids=names)
def test_nothing_is_read_sideways_and_nothing_moves(studio: Served, page: Open, screen: Screen) -> None:
    made = there(page(studio, screen.at, width=320, height=256, reduced_motion="reduce"), screen)
    assert (too_wide(made), moving(made)) == ([], [])
    for press, brings in screen.press:
        made.get_by_role("button", name=re.compile(f"^{press}")).first.click()
        made.locator(brings).first.wait_for()
        until(made, LETTERS)
        assert (press, too_wide(made), moving(made)) == (press, [], [])
