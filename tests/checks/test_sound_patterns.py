"""Whole patterns as they are usually written: nothing false is said of them, and a slip put into them is found."""

from collections import Counter
from functools import cache
from pathlib import Path

import pytest

from loopwright.findings.registry import severity
from loopwright.workshop.check import check_text

FOLDER = Path(__file__).parent / "sound"
TEXTS = {p.stem: p.read_text(encoding="utf-8") for p in sorted(FOLDER.glob("*.txt"))}

# pattern, words, what a slip makes of them, the codes that may say so
SLIPS = [
    ("sedge-beanie", "(50)", "(52)", {"W001"}),
    ("sedge-beanie", "in next 3 sts, 2 htr in next st) 10 times", "in next 3 sts, 2 htr in next st) 9 times", {"C002"}),
    ("sedge-beanie", "Round 4. 2 ch", "Round 5. 2 ch", {"C011", "C012"}),
    ("sedge-beanie", "(1 htr in next 4 sts", "(1 hdc in next 4 sts", {"C007"}),
    ("sedge-beanie", "Tension: 13 htr and 10 rounds to 10cm.\n", "", {"C024"}),
    ("sedge-beanie", "5 mm hook", "50 mm hook", {"C030"}),
    ("sedge-beanie", "13 htr and 10 rounds", "13 sts and 10 rounds", {"C028"}),
    ("sedge-beanie", "13 htr and 10 rounds", "33 htr and 25 rounds", {"C029"}),
    ("sedge-beanie", "does not count as a stitch.\n", ".\n", {"C005"}),
    ("sedge-beanie", "Round 7. 2 ch, 1 htr", "Round 7. 2 ch (counts as htr), 1 htr", {"C004"}),
    ("thrift-blanket", "With A, make 4 ch", "With D, make 4 ch", {"C016"}),
    ("thrift-blanket", "(pink), B", "(pink), E (sky), B", {"C017"}),
    ("thrift-blanket", "Round 3: Join C", "Row 3: Join C", {"C014"}),
    ("greenshank-mitts", "18 (19, 20.5) cm", "18 (19) cm", {"C019"}),
    ("greenshank-mitts", "36 (38, 42) hdc.\nRnd 7", "36 (38) hdc.\nRnd 7", {"C019"}),
    ("greenshank-mitts", "18 (19, 20.5) cm", "18 (19, 24) cm", {"C021"}),
    ("greenshank-mitts", "36 (38, 42) hdc.\nRnd 7", "36 (58, 42) hdc.\nRnd 7", {"C020"}),
    ("greenshank-mitts", "turn — 10 sc", "turn — 11 sc", {"W001"}),
    ("sea-kale-dishcloth", "dc in next ch, *sc", "dc in next ch, sc", {"C036"}),
    ("sea-kale-dishcloth", "Ch 31.", "Ch 32.", {"C001"}),
    ("sea-kale-dishcloth", "Row 2 (RS)", "Row 2 (WS)", {"C015"}),
    ("sea-kale-dishcloth", "1 ball (155 m)", "2 balls (155 m)", {"C032"}),
    ("turnstone-toy", "Do not give a toy with safety eyes to a child under three; embroider them instead.\n", "", {"C033"}),
    ("turnstone-toy", "(sc 2, dec) x 6 (18)", "(sc 2, dec x 6 (18)", {"C037"}),
    ("turnstone-toy", "Change to B", "Change to D", {"C016"}),
    ("turnstone-toy", "HEAD (in A)", "HEAD (in E)", {"C016"}),
    ("avocet-shawl", '28" deep', '28" deep, edge folded over .025"', {"C030"}),
    ("avocet-shawl", "20 dc and 10 rows", "20 dc and 24 rows", {"C038"}),
    ("avocet-shawl", "2 skeins", "2 skeins (1200 m)", {"C032"}),
    ("ruff-cowl", "50 (56, 62) cm", "50 (65, 62) cm", {"C020", "C021"}),
    ("ruff-cowl", "2 (3, 3) balls", "2 (3) balls", {"C019"}),
    ("marsh-harrier-pullover", "(72, 80, 88, 96) hdc\nRow 2", "(72, 80, 88, 97) hdc\nRow 2", {"W001"}),
    ("marsh-harrier-pullover", "54 (62, 70, 78, 86) hdc", "54 (62, 70, 78) hdc", {"C019"}),
    ("marsh-harrier-pullover", "(90, 100, 110, 120) cm", "(90, 100, 110, 140) cm", {"C021"}),
    ("marsh-harrier-pullover", "16 hdc and 12 rows", "16 hdc and 30 rows", {"C038"}),
    ("marsh-harrier-pullover", "Hook: 4.5 mm", "Hook: 12 mm", {"C039"}),
    ("marsh-harrier-pullover", "Rep Row 2.", "Rep Row 12.", {"W009"}),
    ("marsh-harrier-pullover", "Row 2: Ch 1, 2 hdc in first st", "Row 1: Ch 1, 2 hdc in first st", {"C012"}),
    ("marsh-harrier-pullover", "32 (34, 36, 38, 40) hdc", "32 (34, 36, 38.5, 40) hdc", {"C030"}),
    ("marsh-harrier-pullover", "does not count as a stitch.", "counts as a stitch.", {"C004", "W001"}),
    (
        "marsh-harrier-pullover",
        "Fasten off.\n\nFront",
        "Work even until back measures 50 cm.\nWork 60 sc evenly along the side edge.\n\nFront",
        {"C023"},
    ),
    ("sandpiper-booties", "(26)", "(27)", {"W001"}),
    ("sandpiper-booties", "2 hdc in each of next 6 sts", "2 hdc in each of next 7 sts", {"W001", "W003"}),
    (
        "sandpiper-booties",
        "Safety: trim all ends closely and check them often; no loose ribbons.\n",
        "Ties: sew on two buttons.\n",
        {"C033"},
    ),
    ("sandpiper-booties", "Rnds 8-11", "Rnds 7-11", {"C012"}),
    ("sandpiper-booties", "Finished sole length: 9 cm\n", "", {"C027"}),
    ("sandpiper-booties", "BLO - back loop only", "BLO - back loop only, FLO - front loop only", {"C009"}),
    ("saltwort-bag", "-- 36 dc", "-- 38 dc", {"W001"}),
    ("saltwort-bag", "16 ch-5 loops\nRound 6", "18 ch-5 loops\nRound 6", {"W001"}),
    ("saltwort-bag", "Round 4: Ch 3, dc", "Round 4: Ch 3 (does not count as a st), dc", {"C004", "W001"}),
    ("saltwort-bag", "*dc in next dc, 2 dc in next dc; repeat", "dc in next dc, 2 dc in next dc; repeat", {"C036"}),
    ("saltwort-bag", "2 balls", "2 balls (500 m)", {"C032"}),
]


@cache
def _codes(text):
    return Counter(f.code for f in check_text(text).findings)


@pytest.mark.parametrize("name", sorted(TEXTS))
def test_nothing_graver_than_advice_is_said(name):
    report = check_text(TEXTS[name])
    assert [(f.code, f.args) for f in report.findings if severity(f) != "advice"] == []
    assert all(r.read for r in report.rows if r.label)


@pytest.mark.parametrize(("name", "right", "slip", "codes"), SLIPS)
def test_a_slip_is_found(name, right, slip, codes):
    assert TEXTS[name].count(right) >= 1
    new = _codes(TEXTS[name].replace(right, slip, 1)) - _codes(TEXTS[name])
    assert codes & set(new)
