"""What every chart keeps: no symbol on another, each stitch once, feet where they belong, text upright, one look for one fabric."""

import math
import re
import xml.etree.ElementTree as ET
from collections import Counter
from typing import Any

import pytest

from loopwright.drawing.chart import ChartOptions, chart, charts
from loopwright.drawing.chart.laid import lay
from loopwright.drawing.chart.sections import sections
from loopwright.drawing.chart.symbols import AIR
from loopwright.drawing.speech import English
from loopwright.model.fabric import Fabric
from tests.drawing.chart.conftest import NAMES, fabric_of
from tests.drawing.chart.svg_reading import NS, crossing, overlaps, symbols

SQUARE = """Ch 4, join with sl st to form a ring.
Rnd 1: Ch 3 (counts as dc), 2 dc in ring, ch 2, *3 dc in ring, ch 2; rep from * twice more; join with sl st to top of ch-3.
"""
HAT = "Rnd 1: 6 sc in magic ring. (6 sc)\nRnd 2: 2 sc in each st around. (12 sc)\nRnd 3: (Sc in next st, 2 sc in next st) 6 times. (18 sc)\n"
STEMS = ("sc", "hdc", "dc", "tr", "dtr", "fpdc", "bpdc")
ROWS = "Ch 11.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn.\nRow 2: Ch 1, sc in back loop only of each st across, turn.\n"


@pytest.mark.parametrize("whole", [False, True])
def test_no_symbol_lies_on_another(worked, whole):
    """Touching, crossing or one on the other; lines may meet end to end."""
    fabric, sizes = worked
    found = [(c.section, a.kind, b.kind) for c in charts(fabric, sizes, ChartOptions(whole=whole, grids=False)) for a, b in overlaps(c.svg)]
    assert found == []


def test_every_stitch_that_was_worked_is_drawn_once(worked):
    fabric, sizes = worked
    drawn = Counter(s.stitch for c in charts(fabric, sizes, ChartOptions(whole=True, grids=False)) for s in symbols(c.svg))
    assert set(drawn.values()) == {1}
    assert set(drawn) == {s for s in range(len(fabric)) if fabric.part_of(s) != "assumed"}


def test_feet_in_the_picture_stand_on_the_stitch_they_were_worked_into():
    """Read from the file: of all tops of the row below the nearest to a foot is that of its own stitch, in rows within 0.15 of a stitch.

    Stitches with a stem, into the top of one such stitch of the row before. Not measured: feet in spaces, rings and chains, several feet,
    and stitches worked past others, whose line goes aside on purpose.
    """
    measured = 0
    for name in NAMES:
        fabric, sizes = fabric_of(name)
        for c in charts(fabric, sizes, ChartOptions(whole=True, grids=False)):
            stems = {s.stitch: s.lines[0] for s in symbols(c.svg) if s.kind in STEMS and not _passes_others(fabric, s.stitch)}
            for stitch, (foot, _) in stems.items():
                parents = fabric.parents(stitch)
                if len(parents) != 1 or parents[0] not in stems or fabric.where(stitch) != "top":
                    continue
                tops = {s: line[1] for s, line in stems.items() if fabric.row[s] == fabric.row[parents[0]]}
                assert min(tops, key=lambda s: math.dist(tops[s], foot)) == parents[0], (name, stitch)
                if c.part == "edge":  # rows go around corners: outwards is not up
                    assert math.dist(tops[parents[0]], foot) <= AIR + 0.15 * 18.0, (name, stitch)
                elif c.part not in ("disc", "oval"):
                    assert abs(tops[parents[0]][0] - foot[0]) <= 0.15 * 18.0, (name, stitch)
                measured += 1
    assert measured > 10_000


def _passes_others(fabric: Fabric, stitch: int) -> bool:
    return any(fabric.row[p] < fabric.row[stitch] - 1 for p in fabric.parents(stitch))


def test_numbers_of_rows_stand_on_no_symbol_and_on_no_other_number(worked):
    fabric, sizes = worked
    for c in charts(fabric, sizes, ChartOptions(grids=False)):
        tabs = [[float(r.get(k, "")) for k in ("x", "y", "width", "height")] for r in ET.fromstring(c.svg).iter(f"{NS}rect") if r.get("class") == "tab"]  # noqa: S314
        ends = [p for s in symbols(c.svg) for line in s.lines for p in line]
        for n, (x, y, w, h) in enumerate(tabs):
            assert not [p for p in ends if x < p[0] < x + w and y < p[1] < y + h]
            assert not [t for t in tabs[:n] if x < t[0] + t[2] and t[0] < x + w and y < t[1] + t[3] and t[1] < y + h]


def test_the_picture_is_plain_and_the_same_every_time(worked):
    fabric, sizes = worked
    options = ChartOptions(grids=False, line=lambda stitch: stitch // 10 + 1)
    one, two = charts(fabric, sizes, options), charts(fabric, sizes, options)
    assert one == two
    for c in one:
        root: Any = ET.fromstring(c.svg)  # noqa: S314 - our own drawing
        tags = {e.tag.removeprefix(NS) for e in root.iter()}
        assert tags <= {"svg", "title", "desc", "style", "rect", "text", "g", "path", "circle"}
        assert not [a for e in root.iter() for a in e.attrib if a.startswith("on") or a.endswith("href")]
        assert root.find(f"{NS}title").text
        assert root.find(f"{NS}desc").text == c.description
        assert all(p.get("data-line") for p in root.iter(f"{NS}path") if "data-stitch" in p.attrib)
        assert "prefers-color-scheme:dark" in c.svg
        assert not re.search(r"nan|inf\b", "".join(p.get("d") for p in root.iter(f"{NS}path")))


def test_left_handed_is_an_exact_mirror_with_upright_text(weave):
    fabric, sizes = weave(SQUARE)
    right, left = chart(fabric, sizes), chart(fabric, sizes, ChartOptions(left_handed=True))
    ones, twos = symbols(right.svg), symbols(left.svg)
    pairs = [(p, q) for s, t in zip(ones, twos, strict=True) for p, q in zip(s.lines, t.lines, strict=True)]
    sums = {round(a[0] + b[0], 1) for p, q in pairs for a, b in zip(p, q, strict=True)}
    assert max(sums) - min(sums) <= 0.21
    assert all(abs(a[1] - b[1]) < 0.11 for s, t in zip(ones, twos, strict=True) for a, b in zip(s.lines[0], t.lines[0], strict=True))
    assert "transform" not in left.svg
    assert "clockwise" in left.description
    assert "counter-clockwise" not in left.description


def test_the_square_has_its_corners_at_the_corners(weave):
    fabric, sizes = weave(SQUARE + "Rnd 2: Sl st in next 2 dc and in ch-2 sp, ch 3 (counts as dc), (2 dc, ch 2, 3 dc) in same sp, "
                          "*(3 dc, ch 2, 3 dc) in next ch-2 sp; rep from * around; join with sl st to top of ch-3.\n")  # fmt: skip
    section = sections(fabric, sizes, whole=True)[0]
    assert section.sides == 4
    last = max(m.row for m in lay(fabric, section).marks)
    chains = [m.top for m in lay(fabric, section).marks if m.row == last and m.kind == "ch" and fabric.part_of(m.stitch) == "edge"]
    assert len(chains) == 8
    reach = max(abs(x) for x, _ in chains)
    assert all(min(abs(x), abs(y)) > 0.5 * reach for x, y in chains)


def test_loops_change_places_on_the_wrong_side(weave):
    """Symbols show the fabric from its right side: a back loop of a wrong-side row is a front loop there."""
    fabric, sizes = weave(ROWS)
    assert "front loop only" in chart(fabric, sizes).svg
    assert "rows: sc, back loop only)" in chart(fabric, sizes).svg


def test_the_key_names_what_is_used_in_the_terms_asked_for(weave):
    fabric, sizes = weave(HAT)
    us, uk = chart(fabric, sizes), chart(fabric, sizes, ChartOptions(terms="uk"))
    assert re.findall(r'data-key="([^"]+)"', us.svg) == ["sc"]
    assert "single crochet" in us.svg
    assert "double crochet" in uk.svg
    assert "18 dc" in uk.description


def test_words_tell_each_round(weave):
    fabric, sizes = weave(HAT)
    told = chart(fabric, sizes).description.splitlines()
    assert told[1] == "Rnd 1, counter-clockwise: 6 sc in ring (6 sc)."
    assert told[3] == "Rnd 3, counter-clockwise: (sc in next st, 2 sc in next st) 6 times (18 sc)."


def test_wide_rows_are_cut_to_the_repeat_and_say_so(weave):
    rows = "Row 1: Sc in 2nd ch from hook and in each ch across, turn.\nRow 2: Ch 1, sc in each st across, turn.\n"
    fabric, sizes = weave(f"Ch 201.\n{rows}")
    part, whole = chart(fabric, sizes), chart(fabric, sizes, ChartOptions(whole=True))
    gone = (len(fabric) - len(symbols(part.svg))) // 3  # of the chain and both rows
    assert part.notes == (f"Shown: {gone} plain stitches of every row left out at the dotted line; Row 1 to Row 2.",)
    assert part.svg.count('class="gap"') == 1
    assert len(symbols(part.svg)) < 100 < len(symbols(whole.svg)) == len(fabric)
    assert overlaps(part.svg) == []


def test_a_last_round_unlike_the_others_is_shown_over_a_gap():
    """Of the bag's sides: the slip stitches at the top, on the round that they are worked into, whose place the tenth takes."""
    fabric, sizes = fabric_of("glasswort-bag")
    drawn = next(c for c in charts(fabric, sizes) if c.section == "Sides")
    assert "; Rnd 1 to Rnd 10 and Rnd 40 to Rnd 41 of 41." in drawn.notes[0]
    rows = Counter(s.row for s in symbols(drawn.svg))
    labels = [fabric.rows[index].label for index in rows]
    assert labels == [f"Rnd {n}" for n in (*range(1, 11), 40, 41)]
    assert len(set(rows.values())) == 1
    assert overlaps(drawn.svg) == []
    assert drawn.svg.count('class="gap"') == 2  # of rounds, and of stitches
    feet = {s.stitch: s.foot for s in symbols(drawn.svg)}
    under = [s for s in feet if fabric.rows[fabric.row[s]].label == "Rnd 41" and fabric.part_of(s) == "edge"]
    assert under
    assert all(abs(feet[s][0] - feet[fabric.parents(s)[0]][0]) < 1.0 for s in under)


@pytest.mark.parametrize(("last", "shown"), [("sc", "Row 1 to Row 12 of 40."), ("sl st", "Row 1 to Row 10 and Row 39 to Row 40 of 40.")])
def test_rows_that_turn_end_as_they_were_worked(weave, last, shown):
    """A last row like the others is not shown; what is left out goes there and back."""
    text = "Ch 9.\nRow 1 (RS): Sc in 2nd ch from hook and in each ch across, turn. (8 sc)\nRows 2-39: Ch 1, sc in each st across, turn. (8 sc)\n"
    (drawn,) = charts(*weave(f"{text}Row 40: Ch 1, {last} in each st across. (8 {last})\n"))
    assert shown in drawn.notes[0]
    assert overlaps(drawn.svg) == []


def test_what_is_left_out_before_the_last_row_is_all_alike(weave):
    """A row of chains among those that would be left out keeps them from it."""
    text = "Ch 9.\nRow 1 (RS): Sc in 2nd ch from hook and in each ch across, turn. (8 sc)\nRows 2-19: Ch 1, sc in each st across, turn. (8 sc)\n"
    other = "Row 20: Ch 1, hdc in each st across, turn. (8 hdc)\nRows 21-39: Ch 1, sc in each st across, turn. (8 sc)\n"
    (drawn,) = charts(*weave(f"{text}{other}Row 40: Ch 1, sl st in each st across. (8 sl st)\n"))
    assert "Row 1 to Row 12 of 40" in drawn.notes[0]


def test_nothing_to_draw_is_said():
    from loopwright.grading.gauge import StitchSizes

    assert charts(Fabric(), StitchSizes(8.0, 9.0)) == ()
    with pytest.raises(ValueError, match="no stitch to draw"):
        chart(Fabric(), StitchSizes(8.0, 9.0))



def test_yarn_colours_have_their_letter(weave):
    fabric, sizes = weave(
        "Yarn: DK, wool, in A (sand), B (reed)\nWith A, ch 6.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn.\n"
        "Row 2: With B, ch 1, sc in each st across, turn.\n"
    )
    drawn = chart(fabric, sizes, ChartOptions(colours=True))
    assert any(fabric.colours)
    for colour in (c for c in fabric.colours if c):
        assert f"Yarn {colour}" in drawn.svg


def test_a_stitch_without_a_symbol_has_a_number_in_the_chart_and_in_the_key(weave):
    fabric, sizes = weave("Ch 6.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn.\n")
    fabric.kinds[fabric.kinds.index("sc")] = "reed knot"
    drawn = chart(fabric, sizes)
    assert drawn.svg.count(">1</text>") == 7  # five in the row, one in the key, the number of the row
    assert ">reed knot</text>" in drawn.svg


def test_frames_of_repeats_cross_no_stitch(worked):
    fabric, sizes = worked
    for section in sections(fabric, sizes, whole=False):
        laid = lay(fabric, section)
        stems = [(f, m.top) for m in laid.marks for f in m.feet]
        for frame in laid.frames:
            near = [s for m, s in zip([m for m in laid.marks for _ in m.feet], stems, strict=True) if abs(m.row - frame.row) <= 1]
            assert not [s for s in near for side in frame.sides if crossing(side, s)]


def test_a_row_too_wide_to_show_is_cut_with_a_word(weave):
    fabric, sizes = weave("Ch 5001.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn.\nRows 2-9: Ch 1, sc in each st across, turn.\n")
    drawn = chart(fabric, sizes)
    assert "plain stitches of every row left out at the dotted line" in drawn.notes[0]
    assert "of 9" in drawn.notes[0]
    assert len(drawn.svg) < 400_000


def test_a_long_edge_without_an_even_repeat_shows_its_two_ends(weave):
    uneven = ", ".join("dc in next st" if n.bit_count() % 2 else "sc in next st" for n in range(300))  # Thue and Morse: no stretch thrice
    fabric, sizes = weave(f"Ch 301.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn.\nRow 2: Ch 1, {uneven}, turn.\n")
    drawn = chart(fabric, sizes)
    assert "both ends of the rows" in drawn.notes[0]
    left_out = int(re.findall(r"(\d+) symbols left out", drawn.notes[0])[0])
    assert len(symbols(drawn.svg)) + left_out == len(fabric)
    assert overlaps(drawn.svg) == []
    assert float(re.findall(r'viewBox="0 0 (\S+)', drawn.svg)[0]) < 2500


def test_ids_of_two_charts_in_one_page_differ(weave):
    fabric, sizes = weave(HAT)
    one, two = (chart(fabric, sizes, ChartOptions(ident=ident)).svg for ident in ("child", "adult"))
    ids = [set(re.findall(r' id="([^"]+)"', svg)) for svg in (one, two)]
    assert len(ids[0]) == 2
    assert not ids[0] & ids[1]
    with pytest.raises(ValueError, match="cannot begin an id"):
        chart(fabric, sizes, ChartOptions(ident='a"><script>'))


def test_names_that_xml_cannot_hold_are_made_plain(weave):
    fabric, sizes = weave("Tern\n\nCrown <&\x02>\nRnd 1: 8 sc in magic ring.\nRnd 2: 2 sc in each st around.\n")
    fabric.kinds[fabric.kinds.index("sc")] = "reed \x01 & <knot>"
    drawn = chart(fabric, sizes)
    root: Any = ET.fromstring(drawn.svg)  # noqa: S314 - our own drawing
    assert root.find(f"{NS}desc").text == drawn.description
    assert {p.get("data-kind") for p in root.iter(f"{NS}path") if p.get("data-stitch")} == {"reed & <knot>"}


def test_stitches_apart_in_one_place_are_told_so(weave):
    """A V stitch is two stitches in one place: the second is in the same, not in the next."""
    fabric, sizes = weave(
        "Ch 13.\nRow 1: Hdc in 3rd ch from hook, *sk 1 ch, (hdc, ch 1, hdc) in next ch, sk 1 ch; rep from * 2 more times, hdc in last ch, turn.\n"
        "Row 2: Ch 2 (counts as hdc), (hdc, ch 1, hdc) in each ch-1 sp across, hdc in last st, turn.\n"
    )
    told = chart(fabric, sizes).description.splitlines()
    assert "hdc in next ch, ch 1, hdc in same ch" in told[2]
    assert "(hdc in next ch sp, ch 1, hdc in same ch sp) 3 times" in told[3]


def test_words_are_those_of_the_speech_that_is_given(weave):
    class Loud(English):
        def say(self, key, **slots):
            return super().say(key, **slots).upper()

        def name(self, said):
            return f"<{said}>"

    fabric, sizes = weave(HAT)
    drawn = chart(fabric, sizes, ChartOptions(speech=Loud("us")))
    assert "COUNTER-CLOCKWISE" in drawn.description
    assert drawn.description != chart(fabric, sizes).description
