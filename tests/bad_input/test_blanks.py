"""A line full of blanks costs no more than its length: what blanks meet blanks in is not tried in every way."""

import time

import pytest

from loopwright.notation import read, write
from loopwright.source import Source
from loopwright.workshop.check import check_source

MANY = 600
LINES = (
    "Tension: 16 dc and 18 rnds = 10 cm, 4 mm{}hook", ": 17 of{}dc and 8=rows 1 cm in ripple pattern", "{{x}}: {{hand sts}} ch, join with ss to form{}a ring",
    "Abbreviations: sc{}x", "Sizes: 25 (38){}ch.", "Sizes: S{}M", "Rnd 3: Ch 1, dc in next 22 (35){}dc. (98 (124)", "Finished size: 74 (94, 124){}x 94 cm",
    "Rep Row 2{}times", "Work even{}, for 6 rows", "Dec 1 st at each end{}every 4th row", "Turning chain: ch 3{}counts as dc", "Row 1: Sc in each st.{}Size M: Row 2: Sc",
)


@pytest.mark.parametrize("line", LINES)
@pytest.mark.parametrize("blank", [" ", "\t"])
def test_blanks_are_passed_over(line, blank):
    text = "Sizes: S (M)\nRnd 1: 12 sc in magic ring. (12 sc)\n" + line.format(blank * MANY)
    begin = time.process_time()
    assert write(read(Source.of(text))) == text
    check_source(Source.of(text))
    assert time.process_time() - begin < 5, "a hundred times what it takes"
