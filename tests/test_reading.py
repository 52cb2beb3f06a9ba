"""Rows as the trade writes them, read and worked."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from loopwright.model.tree import HeadLine
from loopwright.notation import read, write
from loopwright.source import Source
from loopwright.working import work


def counts(text, terms="us"):
    return [r.counts[0] for r in work(read(Source.of(text), terms)).rows]


HAT = """Rnd 1: 6 sc in magic ring. (6)
Rnd 2: 2 sc in each st around. (12)
Rnd 3: *Sc in next st, 2 sc in next st; rep from * around. (18)
Rnd 4: (Sc in next 2 sts, 2 sc in next st) 6 times. (24)
Rnds 5-7: Sc in each st around. (24)
"""


def test_a_crown_in_the_round():
    assert counts(HAT) == [6, 12, 18, 24, 24, 24, 24]


def test_shaping_told_in_words():
    assert counts(HAT + "Rnd 8: Inc 6 sts evenly around. (30)\nRnd 9: Inc in every 3rd st around. (40)\n")[-2:] == [30, 40]


def test_rounds_that_continue():
    assert counts(HAT + "Rnds 8-10: Continue as established, inc 6 sts each rnd. (42)\n")[-3:] == [30, 36, 42]


def test_rows_on_a_chain():
    assert counts("Ch 21.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (20 sc)\nRow 2: Ch 1, sc in each st across. (20)\n")[-2:] == [20, 20]


def test_uk_terms_shift_the_stitches():
    report = work(read(Source.of(HAT.replace("sc", "dc").replace("Sc", "Dc")), "uk"))
    assert [r.counts[0] for r in report.rows] == counts(HAT)
    assert report.rows[0].made["sc"] == (6,)


def test_several_sizes():
    report = work(read(Source.of("Ch 21 (25, 31).\nRow 1: Sc in 2nd ch from hook and in each ch across. [20 (24, 30) sc]\n"), "us"))
    assert report.rows[-1].counts == (20, 24, 30)


def test_a_wrong_count_is_an_error_at_the_number():
    source = Source.of(HAT.replace("(18)", "(19)"))
    found = [f for f in work(read(source, "us")).findings if f.code == "W001"]
    assert [source.cut(f.span) for f in found] == ["19"]


@pytest.mark.parametrize("text", ["", "{", "((((((", "* * *", "rep 999999999 times", "Row 2: as row 2", "Rnd 1: " + "9" * 5000, "Rnd 1: " + "(" * 3000, "Rnd 1: " + "sc, " * 9000, "Rows 1-999999999: sc around", "\0", "Row", "Rnd 1: In next sp work 2 dc and", "Rnd 1: " + "shells of " * 40])
def test_odd_input_is_survived(text):
    assert write(read(Source.of(text))) == text
    work(read(Source.of(text)))


WORDS = st.sampled_from(["Rnd", "Row", "1:", "2:", "sc", "dc", "ch", "3", "in", "next", "each", "st", "rep", "from", "*", "(", ")", "[", "]", ",", ";", ".", "around", "turn", "inc", "dec", "sk", "sl", "x6", "magic", "ring", "(12)", "{a}", "evenly", "every", "3rd", "end", "to", "both"])


@settings(max_examples=150, deadline=None)
@given(st.lists(st.lists(WORDS, max_size=14), max_size=4))
def test_any_words_are_read_worked_and_kept(lines):
    text = "\n".join(" ".join(line) for line in lines)
    document = read(Source.of(text))
    assert write(document) == text
    assert len(work(document).sizes) == len(document.sizes)


@pytest.mark.parametrize("words", [
    "hdc in the back loop only of each st across", "hdc in the back loop of each st across", "hdc in BLO of each st across",
    "working in the back loops only, hdc in each st across", "hdc in each st across through the back loop only",
])
def test_the_loops_that_a_row_goes_into_are_understood_wherever_they_are_told(words: str) -> None:
    report = work(read(Source.of(f"Ch 26.\nRow 1: Hdc in 3rd ch from hook and in each ch across, turn. (24)\nRow 2: Ch 2, {words}, turn. (24)\n")))
    fabric = report.fabrics[0]
    assert fabric is not None
    last = fabric.rows[-1]
    assert {fabric.where(s) for s in range(last.start, last.end) if fabric.name(s) == "hdc"} == {"back"}
    assert not [f for f in report.findings if f.code == "N002"]


WHOLE = [  # what is told, and the counts of its labelled rows
    ("a chain joined into a round: the start chain stands on its first chain", [96],
     "Ch 96; join with sl st to first ch to form a ring.\nRnd 1: Ch 3 (counts as dc), dc in next ch and in each ch around; join with sl st in top of beg ch-3. (96 dc)"),
    ("shells and half shells: an ending takes the place of the last group", [37, 37, 37],
     ("Ch 38.\nRow 1: Sc in 2nd ch from hook, *skip next 2 chs, 5 dc in next ch (shell made), skip next 2 chs, sc in next ch; rep from * to end. Turn. (6 shells, 7 sc)\n"
     "Row 2: Ch 3 (counts as dc), 2 dc in same st, *sc in 3rd dc of next shell, 5 dc in next sc; rep from * ending with 3 dc in last sc. Turn.\n"
     "Row 3: Ch 1, sc in first dc, *5 dc in next sc, sc in 3rd dc of next shell; rep from * to end, working last sc in top of ch 3. Turn.")),
    ("V-stitches between a turning chain and the stitch on it", [40, 40, 40],
     ("Ch 62.\nRow 1: (Dc, ch 1, dc) in 5th ch from hook, *skip 2 ch, (dc, ch 1, dc) in next ch; rep from * across to last 3 ch, skip 2 ch, dc in last ch, turn. (19 V-sts)\n"
     "Rows 2-3: Ch 3, V-st in each ch-1 sp across, dc in top of turning ch, turn. (19 V-sts)")),
    ("counts behind a dash, and a slip across to a space", [16, 16, 32, 48],
     ("Ch 5, sl st into first ch to make a ring\nRound 1: ch 3, 15 dc into ring, sl st to 3rd ch of beginning ch 3 - 16 sts\n"
     "Round 2: ch 4, *dc into next st, ch 1, rep from * 14 more times, sl st to 3rd of beginning 4 ch - 16 dc, 16 ch sp\n"
     "Round 3: sl st into first ch-1 space, ch 3, 1 dc in same space, ch 1, *2 dc in next ch-1 space, ch 1, rep from * around, join - 32 dc\n"
     "Round 4: sl st across to first ch-1 sp, ch 3, 2 dc in same sp, ch 1, (3 dc in next sp, ch 1) 15 times, sl st to join. 48 dc")),
    ("loops: the hook that was slipped into the first one works there first", [16, 16, 16, 48],
     ("Rnd 1: Ch 2 (does not count), 16 dc in magic ring, join. (16 dc)\nRnd 2: Ch 1, sc in first st, *ch 5, sc in next st; rep from * around, ch 5, join to first sc. (16 loops)\n"
      "Rnd 3: Sl st to center of first loop, ch 1, sc in same loop, *ch 5, sc in next loop; rep from * around, ch 5, join. (16 loops)\n"
      "Rnd 4: Sl st to center of next loop, ch 1, *3 sc in loop; rep from * around, join. (48 sc)")),
    ("rows after rounds, told by a line of its own", [24, 20, 20],
     ("Rnd 1: Ch 2 (does not count), 24 dc in magic ring, join. (24 dc)\nNow work in rows:\nRow 1: Ch 3, dc in next 19 dc, turn, leaving last 4 dc unworked. (20 dc)\n"
      "Row 2: Ch 3, skip first dc, dc in each dc to end, working last dc into top of turning ch, turn. (20 dc)")),
    ("petals in a ring, each with a chain on both sides", [15], "Ch 5, join.\nRnd 1: (Ch 3, 3 dc, ch 3, sl st) in ring 5 times. (5 petals)"),
    ("petals told in another way", [10], "Ch 5, join.\nRnd 1: (Ch 2, 2 dc, ch 2, sl st in ring) 5 times. (5 petals)"),
    ("a round of meshes joined to the third chain", [12, 12, 12, 24],
     ("Rnd 1: Ch 4 (counts as dc and ch 1), (dc, ch 1) 11 times in magic ring, sl st to 3rd ch. (12 dc)\n"
      "Rnds 2-3: Ch 4, *dc in next dc, ch 1* around, sl st to 3rd ch\nRnd 4: Ch 1, 2 sc in each ch-1 sp around (24)")),
    ("shells in turn with single crochet, where the middle of a shell is told in brackets", [97, 97, 97],
     ("Ch 98.\nRow 1: Sc in 2nd ch from hook, *sk 3 ch, 7 dc in next ch, sk 3 ch, sc in next ch; rep from * across, turn.\n"
      "Row 2: Ch 3, 3 dc in first sc, *sk 3 dc, sc in next dc (center of shell), sk 3 dc, 7 dc in next sc; rep from * across, ending last rep with 4 dc in last sc, turn.\n"
      "Row 3: Ch 1, sc in first dc, *sk 3 dc, 7 dc in next sc, sk 3 dc, sc in next dc; rep from * across, ending with sc in top of ch-3, turn.")),
    ("rounds that end with a slip stitch told by its number, in German", [12, 24, 36],
     ("Babymütze\n4 Lm anschlagen und mit 1 Km zum Ring schließen.\n1. Rd: 3 Lm (= 1. Stb), 11 Stb in den Ring, mit 1 Km in die 3. Lm schließen. (12 Stb)\n"
      "2. Rd: 3 Lm, 1 Stb in dieselbe M, in jede M 2 Stb, mit 1 Km schließen. (24 Stb)\n"
      "3. Rd: 3 Lm, 2 Stb in die nächste M, *1 Stb in die nächste M, 2 Stb in die nächste M; ab * wdh bis Rd-Ende, 1 Km. (36 Stb)\n")),
    ("and in French", [12, 24],
     ("Bonnet\nMonter 4 ml et fermer en rond avec 1 mc.\nTour 1 : 3 ml (= 1 b), 11 b dans le rond, 1 mc dans la 3e ml. (12 b)\n"
      "Tour 2 : 3 ml, 1 b dans la même m, 2 b dans chaque m, 1 mc. (24 b)\n")),
    ("a foundation in the words of old books", [74, 74],
     ("Make a ch. of 150.\n1st Row - 1 d.c. in 6th ch. from hook, * ch. 1, skip 1 ch., 1 d.c. in next ch.; repeat from * to end, turn.\n"
      "2nd Row - Ch. 4, skip 1st d.c., * 1 d.c. in next d.c., ch. 1; repeat from *, ending with 1 d.c. in 2nd st. of turning ch., turn.\n")),
    ("the tip of a shawl, all in the first chain, without brackets", [6], "Row 1: Ch 4, 2 dc, ch 2, 3 dc in 4th ch from hook, turn. (6 dc)"),
    ("a chain with more for the turn, and spaces between each stitch", [100, 100],
     ("Ch 100 + 2 (counts as first dc).\nRow 1: Dc in 4th ch from hook, dc in each ch to end. [100 dc]\n"
      "Row 2: Ch 2 (counts as dc), skip first st, dc in sp between each dc to end, dc in tch. Turn. [100 dc]")),
    ("an ampersand for and", [30, 30], "Ch 31\nRow 1: sc in 2nd ch from hook & in each ch across (30 sc), ch 1, turn\nRow 2: sc in each sc across & turn (30 sc)\n"),
]


@pytest.mark.parametrize(("counts", "text"), [w[1:] for w in WHOLE], ids=[w[0] for w in WHOLE])
def test_whole_patterns_are_worked_as_a_maker_works_them(counts: list[int], text: str) -> None:
    report = work(read(Source.of(text)))
    assert [r.counts[0] for r in report.rows if r.label] == counts
    assert [r.agrees for r in report.rows if r.agrees is False] == []


def test_facts_told_one_after_the_other_in_a_line_are_found() -> None:
    document = read(Source.of("Baby Blanket\nWorsted (4) yarn. 5 mm hook. Gauge: 14 sts and 16 rows = 4 in. Terms: US\n\nCh 31.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (30 sc)\n"))
    assert {i.name: i.value.rstrip(". ") for i in document.items if isinstance(i, HeadLine)} == {"gauge": "14 sts and 16 rows = 4 in", "terms": "US"}
    assert write(document) == document.text


@pytest.mark.parametrize(("text", "terms"), [
    ("Cloth (UK)\nCh 31.\nRow 1: Dc in 2nd ch from hook and in each ch, turn. (30 dc)\n", "uk"),
    ("Cloth\nWritten in US terms.\nCh 31.\nRow 1: 1 dc in 2nd ch from hook, miss 1 ch, 1 dc in next ch, turn.\n", "us"),
    ("Cloth\nThis pattern uses British terminology.\nCh 31.\nRow 1: Dc in 2nd ch from hook and in each ch, turn. (30 dc)\n", "uk"),
])
def test_the_terms_are_those_that_are_told_in_words(text: str, terms: str) -> None:
    document = read(Source.of(text))
    assert (document.terms, document.assumptions) == (terms, ())


@pytest.mark.parametrize(("said", "sizes"), [
    ("6 (12) months", ("6 months", "12 months")), ("S (M, L)", ("S", "M", "L")), ("2 (4, 6, 8) yrs", ("2 yrs", "4 yrs", "6 yrs", "8 yrs")),
    ("newborn, 6 months", ("newborn", "6 months")), ('Adult (fits 21-23" head)', ('Adult (fits 21-23" head)',)),
])
def test_sizes_are_read_as_the_trade_writes_them(said: str, sizes: tuple[str, ...]) -> None:
    assert read(Source.of(f"Hat\nSize: {said}\nCh 31.\nRow 1: Sc in 2nd ch from hook and in each ch, turn.\n")).sizes == sizes


def test_a_change_of_colour_in_the_last_stitch_makes_no_stitch_and_is_understood() -> None:
    report = work(read(Source.of("With A, ch 41.\nRow 1: Sc in 2nd ch from hook and in each ch across, changing to B in last st, turn. 40 sts.\nRow 2: With B, ch 1, sc in each st across, turn. 40 sts.\n")))
    fabric = report.fabrics[0]
    assert fabric is not None
    assert ([r.counts[0] for r in report.rows], fabric.colours) == ([41, 40, 40], ["", "A", "B"])
    assert not [f for f in report.findings if f.code == "N002"]
