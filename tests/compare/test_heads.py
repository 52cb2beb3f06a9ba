"""What changed above the rows: sizes, gauge, hook, yarn, cautions, stitches that are made otherwise by definition; and versions."""

from __future__ import annotations

import pytest

from loopwright.notation import read
from loopwright.publishing.changes import Version, parsed, rises, version_of
from loopwright.source import Source
from loopwright.workshop.compare.versions import compare_sources
from tests.compare.texts import CUFF, changed, edited, only

SHELLS = """Sea-lavender Strip
Terms: US
Gauge: 16 dc and 8 rows = 10 cm
Special stitches: shell = 5 dc in one place

Ch 20.
Row 1: Dc in 4th ch from hook and in each ch across, turn. (18 dc)
Row 2: Ch 3 (counts as dc), sk 2 sts, *shell in next st, sk 2 sts, sc in next st, sk 2 sts; rep from * once more, shell in next st, sk 1 st, dc in last st.
"""


@pytest.mark.parametrize(
    ("was", "now", "heading", "severity"),
    [
        ("Hook: 4 mm", "Hook: 3.5 mm", "hook", "size"),
        ("Hook: 4 mm", "Hook: 4 mm (G-6)", "hook", "size"),
        ("Yarn: DK, wool", "Yarn: DK, cotton", "yarn", "materials"),
        ("18 sc and 20 rnds = 10 cm", "17 sc and 20 rnds = 10 cm", "gauge", "size"),
        ("18 sc and 20 rnds = 10 cm", "18 sc by 20 rnds = 10 cm", "gauge", "wording"),
        ("Hook: 4 mm", "Hook: 4 mm\nCaution: Keep buttons off a baby's cuff.", "caution", "safety"),
        ("Hook: 4 mm", "Hook: 4 mm\nNotes: Small parts can be swallowed.", "notes", "safety"),
        ("Hook: 4 mm", "Hook: 4 mm\nNotes: Worked without turning.", "notes", "wording"),
        ("Sandpiper Cuff", "Sandpiper Wrist Cuff", "title", "wording"),
    ],
)
def test_lines_of_the_heading(was, now, heading, severity):
    c = only(changed(was, now), lambda x: x.what == "heading")
    assert (c.heading, c.severity) == (heading, severity)
    assert c.new_text


def test_a_special_stitch_made_otherwise_has_its_rows_under_it():
    c = only(changed("shell = 5 dc", "shell = 7 dc", text=SHELLS))
    assert (c.heading, c.severity) == ("special stitches", "count")
    assert [f.label for f in c.follows] == ["Row 2"]


def test_sizes_added_removed_and_renamed():
    gone = compare_sources(Source.of(CUFF), Source.of(edited("baby, child, teen, adult", "child, teen, adult", text=_without_first(CUFF))))
    assert gone.pairing.removed == ("baby",)
    assert gone.sizes == ("child", "teen", "adult")
    assert not [c for c in gone.changes if c.what == "count"]
    assert only(gone, lambda c: c.what == "sizes").detail == "removed"
    other = changed("baby, child, teen, adult", "baby, child, teenager, adult")
    assert other.pairing.renamed == (("teen", "teenager"),)
    assert other.wording_only


def _without_first(text: str) -> str:
    for was, now in (("8 (10, 11, 12)", "10 (11, 12)"), ("16 (20, 22, 24)", "20 (22, 24)"), ("24 (30, 33, 36)", "30 (33, 36)")):
        text = text.replace(was, now)
    return text


def test_no_sizes_in_common_leaves_the_words():
    c = compare_sources(Source.of(CUFF), Source.of(edited("baby, child, teen, adult", "wren, rail, crane", text=_without_first(CUFF))))
    assert c.sizes == ()
    assert any("no size is in both" in n for n in c.notes)
    assert only(c, lambda x: x.what == "sizes").detail == "none in common"


def test_other_titles_are_pointed_out():
    c = changed("Sandpiper Cuff", "Avocet Bonnet")
    assert any("is it one design?" in w for w in c.warnings)


@pytest.mark.parametrize(
    ("text", "name", "date", "numbers"),
    [
        ("1.3 (2026-11-20)", "1.3", "2026-11-20", (1, 3)),
        ("v2", "2", "", (2,)),
        ("Version 1.2.1, 20 November 2026", "1.2.1", "20 November 2026", (1, 2, 1)),
        ("1.0 - Nov 2026", "1.0", "Nov 2026", (1, 0)),
        ("second printing", "second printing", "", ()),
        ("2026-11-20", "", "2026-11-20", ()),
        ("1.4 [20/11/2026]", "1.4", "20/11/2026", (1, 4)),
        ("", "", "", ()),
        ("9" * 400, "9" * 400, "", (999999999,)),
    ],
)
def test_versions_as_people_write_them(text, name, date, numbers):
    assert parsed(text) == Version(name, date, numbers)


@pytest.mark.parametrize(("old", "new", "higher"), [("1.2", "1.3", True), ("1.9", "1.10", True), ("1.3", "1.3.0", False), ("2", "1.9", False), ("first", "2", None)])
def test_which_version_is_higher(old, new, higher):
    assert rises(parsed(old), parsed(new)) is higher


def test_where_the_version_stands():
    assert version_of(read(Source.of(CUFF))) == Version("1.2", "2026-09-01", (1, 2))
    assert version_of(read(Source.of(CUFF.replace("Version: 1.2 (2026-09-01)", "Version: 1.2\nDate: May 2026")))) == Version("1.2", "May 2026", (1, 2))
    assert version_of(read(Source.of(CUFF.replace("Version: 1.2 (2026-09-01)\n", "")))) is None


def test_a_changed_text_wants_a_higher_version():
    assert any("did not rise" in w for w in changed("hdc in each", "dc in each").warnings)
    assert not changed("hdc in each", "dc in each", "(24 (30, 33, 36) hdc)", "(24 (30, 33, 36) dc)", "Version: 1.2", "Version: 1.3").warnings
    without = CUFF.replace("Version: 1.2 (2026-09-01)\n", "")
    assert any("no Version line" in w for w in changed("hdc in each", "dc in each", text=without).warnings)


def test_a_pattern_in_another_language_is_compared_by_what_it_makes():
    text = "Strandläufer\nMaschenprobe: 18 fM und 20 Rd = 10 cm\n\nRd 1: 8 fM in den Fadenring. (8 fM)\nRd 2: 2 fM in jede M. (16 fM)\n"
    c = only(changed("8 fM in den", "9 fM in den", "(8 fM)", "(9 fM)", "(16 fM)", "(18 fM)", text=text))
    assert (c.what, c.was, c.now, len(c.follows)) == ("count", (8,), (9,), 1)
