"""What is seen of a text that was changed is what a first look at it would show: nothing that is remembered may outlive its truth."""

from __future__ import annotations

from pathlib import Path

from hypothesis import given, settings
from hypothesis import strategies as st

from loopwright.model.fabric import Fabric
from loopwright.workshop.live import Live, Seen

DESIGNS = {p.stem: p.read_text(encoding="utf-8") for p in sorted((Path(__file__).parents[2] / "designs").glob("*.txt"))}
WORDS = [
    "ch 1, ", "sc in next st, ", "2 dc in next st, ", "skip next st, ", "turn. ", "*", "(", ")", "; rep from * across", " ", "\n", "2", "0",
    "Row 3: Dc in each st across.\n", "Rnd 2: 2 sc in each st around; join. (12)\n", "Rep last row 3 times.\n", "Shell = 5 dc in one st.\n",
    "With B, ", "é", "Work even for 4 rows.\n", "Sleeve\n", "join with sl st to first st. ", "Continue as established.\n", ", ch 3, turn",
]
edits = st.tuples(st.sampled_from(["put in", "take out", "line again", "line out", "lines up", "count"]), st.floats(0, 1), st.sampled_from(WORDS), st.integers(1, 12))


def edited(text: str, what: str, where: float, word: str, many: int) -> str:
    """A text after one edit."""
    at = round(where * len(text))
    lines = text.split("\n")
    line = min(round(where * len(lines)), len(lines) - 1)
    if what == "put in":
        return text[:at] + word + text[at:]
    if what == "take out":
        return text[:at] + text[at + many :]
    if what == "line again":
        return "\n".join([*lines[: line + 1], *lines[line:]])
    if what == "line out":
        return "\n".join([*lines[:line], *lines[line + 1 :]])
    if what == "lines up":
        return "\n".join([*lines[:line], *lines[line + many :], *lines[line : line + many]])
    digit = next((i for i in range(at, len(text)) if text[i].isdigit()), None)
    return text if digit is None else text[:digit] + str((int(text[digit]) + many) % 10) + text[digit + 1 :]


def columns(fabric: Fabric | None) -> object:
    """All that a fabric holds, to be compared."""
    if fabric is None:
        return None
    return {name: bytes(v) if isinstance(v := getattr(fabric, name), bytearray) else list(v) if name != "extra" else v for name in (
        "kind", "row", "into", "many", "place", "role", "colour", "origin", "origin_end", "round", "inner", "kinds", "colours", "rows", "extra",
    )}


def told(seen: Seen) -> object:
    """All that is shown of a text, and its fabrics."""
    return seen.as_wire(), [columns(f) for f in seen.report.fabrics]


@settings(max_examples=25, deadline=None)
@given(st.sampled_from(sorted(DESIGNS)), st.lists(edits, min_size=1, max_size=4))
def test_a_text_seen_again_is_seen_as_if_for_the_first_time(name: str, changes: list[tuple[str, float, str, int]]) -> None:
    live, text = Live(name), DESIGNS[name]
    live.see(text)
    for change in changes:
        text = edited(text, *change)
        assert told(live.see(text)) == told(Live(name).see(text))


@settings(max_examples=25, deadline=None)
@given(st.lists(st.sampled_from(WORDS), min_size=1, max_size=6), st.lists(edits, min_size=1, max_size=3))
def test_so_is_one_of_rows_by_chance(words: list[str], changes: list[tuple[str, float, str, int]]) -> None:
    text = "Ch 13.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (12 sc)\n" + "".join(
        f"Row {n}: Ch 1, {word.strip()}sc in each st across, turn.\n" for n, word in enumerate(words, 2)
    )
    live = Live("chance")
    live.see(text)
    for change in changes:
        text = edited(text, *change)
        assert told(live.see(text)) == told(Live("chance").see(text))


def test_kinds_are_numbered_as_they_come_up_in_the_text_whatever_was_worked_before_it() -> None:
    rounds = ["Ch 16.", "Row 1: Sc in 2nd ch from hook and in each ch across, turn. (15)"]
    other = "\n".join([*rounds, "Row 2: Ch 2, tr2tog, tr in each st across, turn.", "Row 3: Ch 1, dc3tog, sc in each st across."])
    mine = "\n".join([*rounds, "Row 2: Ch 1, dc3tog, sc in each st across, turn.", "Row 3: Ch 1, tr2tog, hdc in each st across."])
    live = Live("kinds")
    live.see(other)
    seen = live.see(mine)
    assert [k for k in seen.report.fabrics[0].kinds if k != "sl st"] == ["ch", "sc", "dc3tog", "tr2tog", "hdc"]
    assert told(seen) == told(Live("kinds").see(mine))
