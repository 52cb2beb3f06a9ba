"""The law of mends: put into the text, each makes its finding vanish and adds none."""

from collections import Counter

from hypothesis import given, settings
from hypothesis import strategies as st

from loopwright.findings import Fix
from loopwright.source import Source
from loopwright.workshop.check import check_text

SOUND = """Reed Cowl
Terms: US
Yarn: DK, wool, 50 g = 110 m, in A (sand), B (reed)
Hook: 4 mm hook
Gauge: 16 sc and 18 rows = 10 cm
Finished size: 20 cm deep
Turning chain: ch 1 does not count as a st, ch 3 counts as dc
Abbreviations: ch = chain, sc = single crochet, dc = double crochet, sl st = slip stitch, st(s) = stitch(es), rep = repeat, rnd(s) = round(s), RS = right side, WS = wrong side

Cowl
With A, ch 30; join with sl st to form a ring.
Rnd 1: Ch 1, sc in each ch around; join with sl st to first sc. (30 sc)
Rnd 2: Ch 1, *sc in each of next 4 sts, 2 sc in next st; rep from * around; join with sl st to first sc. (36 sc)
Rnd 3: Ch 1, (sc in each of next 5 sts, 2 sc in next st) 6 times; join with sl st to first sc. (42 sc)
With B.
Rnd 4: Ch 3, dc in next st and in each st around; join with sl st to top of ch-3. (42 dc)
Fold over 0.25 in and sew. For 6 repeats this is 6 x 7 = 42.

Strap
With A, ch 9.
Row 1 (RS): Sc in 2nd ch from hook and in each ch across, turn. (8 sc)
Row 2 (WS): Ch 1, sc in each st across, turn. (8 sc)
Row 3 (RS): Ch 1, sc in each st across, turn. (8 sc)
"""

# what a slip of the pen makes of the sound text, and the code that it brings
SLIPS = {
    "W001": (
        "turn. (8 sc)\nRow 3 (RS): Ch 1, sc in each st across, turn. (8 sc)",
        "turn. (8 sc)\nRow 3 (RS): Ch 1, sc in each st across, turn. (9 sc)",
    ),
    "C002": ("2 sc in next st) 6 times", "2 sc in next st) 5 times"),
    "C007": ("Rnd 1: Ch 1, sc in each ch", "Rnd 1: Ch 1, htr in each ch"),
    "C008": (", dc = double crochet", ""),
    "C009": (", rep = repeat", ", rep = repeat, dtr = double treble crochet"),
    "C010": (
        "Rnd 2: Ch 1, *sc in each of next 4 sts, 2 sc in next st; rep from * around; join with sl st",
        "Rnd 2: Ch 1, *sc in each of next 4 sts, 2 sc in next st; rep from * around; join with ss",
    ),
    "C014": ("Rnd 3:", "Row 3:"),
    "C015": ("Row 2 (WS)", "Row 2 (RS)"),
    "C030": ("0.25 in", "0.025 in"),
    "C034": ("6 x 7 = 42", "6 x 7 = 44"),
    "C035": (" (36 sc)\nRnd 3", "\nRnd 3"),
}


def _codes(text):
    return Counter(f.code for f in check_text(text).findings)


def _put_in(text: str, fix: Fix) -> str:
    for edit in reversed(fix.edits):
        text = text[: edit.span.start] + edit.text + text[edit.span.end :]
    return text


def test_the_sound_text_is_sound():
    assert _codes(SOUND) == Counter()


def test_each_slip_brings_its_code_and_most_bring_a_mend():
    mended = set()
    for code, (right, slip) in SLIPS.items():
        assert right in SOUND
        found = check_text(SOUND.replace(right, slip)).findings
        assert code in {f.code for f in found}, (code, found)
        mended |= {f.code for f in found if f.fix}
    assert mended >= {"W001", "C002", "C007", "C008", "C009", "C010", "C014", "C015", "C030", "C034", "C035"}


@settings(deadline=None, max_examples=30)
@given(st.lists(st.sampled_from(sorted(SLIPS)), min_size=1, max_size=4, unique=True))
def test_a_mend_makes_its_finding_vanish_and_adds_none(codes):
    text = SOUND
    for code in codes:
        text = text.replace(*SLIPS[code])
    before = check_text(text).findings
    had = Counter(f.code for f in before)
    for found in before:
        if found.fix is None:
            continue
        assert all(Source.of(text).text[e.span.start : e.span.end] != e.text for e in found.fix.edits)
        after = _codes(_put_in(text, found.fix))
        assert after[found.code] < had[found.code], (found, text)
        assert not after - had, (found, after - had)
