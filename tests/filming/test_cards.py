"""Cards: clear of the captions, legible on a telephone, not mirrored, the same numbers as the rows."""

import io
import re
from html import unescape

import numpy as np
import pytest
from PIL import Image

from loopwright.filming.cards.card import CAPTIONS, SHAPES, SIDES
from loopwright.filming.cards.kit import cards
from loopwright.filming.cards.letters import SMALLEST_PX, width_px, wrapped
from loopwright.filming.shots import plan
from loopwright.workshop.film.rasters import png, png_on

TEXT = re.compile(r'<text font-size="([\d.]+)" class="(\w+)" x="([\d.-]+)" y="[\d.-]+"( text-anchor="end")?>([^<]*)</text>')
TYPE = {
    "words": ("Atkinson Hyperlegible Next", 400), "label": ("Atkinson Hyperlegible Next", 600), "count": ("Besley", 700), "figure": ("Besley", 500),
}


@pytest.fixture(scope="module")
def hat_cards(hat, hat_plan):
    return cards(hat.facts, hat_plan)


def test_there_is_a_card_for_every_row_in_both_shapes(hat_cards, hat_plan):
    rows = {(i, n) for i, s in enumerate(hat_plan.sections) for n in range(len(s.rows))}
    for shape in SHAPES:
        assert {(c.section, c.row) for c in hat_cards if c.kind == "row" and c.shape == shape} == rows
        assert {"title", "materials", "gauge", "caution", "measure", "sizes"} <= {c.kind for c in hat_cards if c.shape == shape}


@pytest.mark.parametrize("name", ["samphire-beanie:child", "thrift-shawl:", "avocet-bonnet:newborn", "sea-lavender-blanket:lap"])
@pytest.mark.parametrize("language", ["en", "de", "fr"])
def test_nothing_stands_where_captions_do_nor_outside(filmed, name, language):
    design, _, size = name.partition(":")
    facts = filmed(design, size or None, language=language).facts
    for c in cards(facts, plan(facts)):
        wide, high = SIDES[c.shape]
        left, top, right, bottom = c.box
        assert 0 <= left < right <= wide, c.name
        assert 0 <= top < bottom <= high * (1 - CAPTIONS), c.name
        for m in re.finditer(r'<rect[^>]* x="([\d.]+)" y="([\d.]+)" width="([\d.]+)" height="([\d.]+)"', c.svg):
            x, y, w, h = map(float, m.groups())
            assert left - 0.01 <= x <= x + w <= right + 0.01, c.name
            assert top - 0.01 <= y <= y + h <= bottom + 0.01, c.name


def test_every_text_is_large_enough_and_has_room(hat_cards):
    for c in hat_cards:
        assert c.svg.count("<text") == len(TEXT.findall(c.svg)), c.name
        for size, name, x, anchor, words in TEXT.findall(c.svg):
            assert float(size) >= SMALLEST_PX
            wide = width_px(unescape(words), float(size), *TYPE[name])
            low, high = (float(x) - wide, float(x)) if anchor else (float(x), float(x) + wide)
            assert c.box[0] - 1 <= low, (c.name, words)
            assert high <= c.box[2] + 1, (c.name, words)


def test_the_count_and_the_words_of_a_row_are_on_its_card(hat_cards, hat_plan):
    row = hat_plan.sections[0].rows[4]
    card = next(c for c in hat_cards if c.kind == "row" and (c.section, c.row) == (0, 4) and c.shape == "16x9")
    texts = [unescape(t[4]) for t in TEXT.findall(card.svg)]
    assert texts[:3] == ["Rnd 5", "40", row.words]
    assert card.whole


def test_the_other_sizes_are_told_from_the_report(hat, hat_cards):
    table = next(c for c in hat_cards if c.kind == "sizes" and c.section == 1)
    texts = [unescape(t[4]) for t in TEXT.findall(table.svg)]
    counts = next(r.counts for r in hat.measured.graded.report.rows if r.section == "Band")
    pairs = dict(zip(texts[3::2], texts[4::2], strict=True))
    assert pairs == {n: str(c) for n, c in zip(hat.facts.sizes, counts, strict=True)}


def test_cards_of_the_left_handed_cut_are_the_same(hat, hat_cards, filmed):
    left = filmed("samphire-beanie", "child", left_handed=True).facts
    mirrored = cards(left, plan(left))
    assert [c.svg for c in mirrored if c.kind == "row"] == [c.svg for c in hat_cards if c.kind == "row"]


def test_a_card_as_a_picture_is_clear_but_for_its_box(hat_cards):
    card = next(c for c in hat_cards if c.kind == "row" and c.shape == "16x9" and c.row == 4)
    whole = Image.open(io.BytesIO(png(card, 1280)))
    assert whole.size == (1280, 720)
    assert whole.mode == "RGBA"
    box = whole.getchannel("A").getbbox()
    assert box is not None
    assert all(abs(a - b) <= 2 for a, b in zip(box, card.box, strict=True))
    clear = np.asarray(whole)[:, :, 3]
    assert clear[300, 70] == 255
    assert clear[650, 640] == 0
    assert Image.open(io.BytesIO(png_on(card, (1440, 1080)))).size == (1440, 1080)


def test_the_picture_of_the_card_is_that_of_its_drawing(hat_cards):
    """Drawing only the box is a short cut: the whole drawing gives the same pixels."""
    import resvg_py

    from loopwright.workshop.png import FONTS

    card = next(c for c in hat_cards if c.kind == "row" and c.shape == "16x9" and c.row == 4)
    whole = bytes(resvg_py.svg_to_bytes(svg_string=card.svg, width=1280, font_files=list(FONTS), skip_system_fonts=True))
    a, b = (np.asarray(Image.open(io.BytesIO(data)).convert("RGBA"), int) for data in (whole, png(card, 1280)))
    assert (np.abs(a - b).max(axis=2) > 8).mean() < 0.001


def test_words_that_have_no_room_are_cut_with_a_sign():
    lines, whole = wrapped("hdc in next st " * 20, 34, 400, 3)
    assert not whole
    assert len(lines) == 3
    assert lines[-1].endswith("…")
    assert all(width_px(x, 34) <= 400 for x in lines)
    assert wrapped("short", 34, 400, 3) == (["short"], True)
