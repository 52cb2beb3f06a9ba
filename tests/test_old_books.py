"""Rows as printed books and leaflets of 1840-1975 write them, read and worked. All lines are our own."""

import pytest

from loopwright.notation import read, write
from loopwright.notation.quiet import quiet
from loopwright.source import Source
from loopwright.working import work


def report(text, terms="us"):
    source = Source.of(text)
    document = read(source, terms)
    assert write(document) == text
    return work(document)


def counts(text, terms="us"):
    return [r.counts[0] for r in report(text, terms).rows if r.made and set(r.made) != {"ch"}]


RING = "With Reed Green ch 6, join to form a ring, ch 3 and work 15 d c in ring, join in 3rd st of ch.\n"


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        (RING, [16]),
        (RING + "2nd Round. Ch 5, * d c in next d c, ch 2, repeat from * all around, join in 3rd st of ch.\n", [16, 16]),
        (RING + "2nd Round. Ch 3, d c in same space, 2 d c in each remaining d c, join.\n", [16, 32]),
        (RING + "2nd Round. Attach Rust in same space, s c in same place, * 2 s c in next d c, s c in next d c, repeat from * all around, join.\n", [16, 24]),
    ],
)
def test_rounds_of_leaflets(text, expected):
    assert counts(text) == expected


def test_full_stops_after_numbers():
    text = (
        "Beginning at hem Ch. 31 sts.\n1st row: 1. d.c. in 4th Ch. from hook. 1. d.c. in each st. to end of Ch. Ch. 3. Turn.\n"
        "2nd row: Miss 1st. d.c. 1. d.c. in next 5. d.c. 2. d.c. in next d.c. 1. d.c. in each d.c. to end. Ch. 1. Turn.\n"
    )
    assert counts(text) == [29, 30]


def test_sizes_named_in_brackets():
    text = "Ch. 21 sts. (6 mos.--25 sts.) (1 yr.--29 sts.).\n1st row: 1. s.c. in 2nd Ch. from hook. 1. s.c. in each Ch. to end. Ch. 1. Turn.\n2nd row: 1. s.c. in each s.c.\n"
    assert report(text).rows[-1].counts == (20, 24, 28)


def test_stitches_worked_as_their_places_come():
    text = (
        "Rnd 1: Ch 4, join to form a ring, ch 3, 2 dc in ring, * ch 2, 3 dc in ring, repeat from * twice, ch 2, join in 3rd st of ch.\n"
        "Rnd 2: Ch 3, 1 d c in each d c, 2 d c, ch 2, 2 d c in each ch 2 loop at each corner, join in 3rd st of ch.\n"
    )
    assert counts(text) == [12, 28]


def test_shapes_are_counted_across_a_row():
    text = (
        "Ch 26, s c in 2nd st from hook, * skip 2 sts of ch, 5 d c in next st, skip 2 sts, s c in next st, repeat from * across ch, ch 3, turn.\n"
        "2nd ROW: 2 d c in 1st s c, work 5 d c shells across row, ending with 3 d c in last s c, ch 1, turn.\n"
    )
    assert report(text).rows[-1].made["shell"] == (3,)


def test_a_round_ends_with_the_chain_that_is_joined():
    text = (
        "Rnd 1: Ch 6, join to form a ring, ch 6, * tr in ring, ch 2, repeat from * 6 more times, join to 4th st of ch-6.\n"
        "Rnd 2: Ch 4, 2 tr in 1st sp, * ch 3, 3 tr in next sp, repeat from * around, join last ch-3 to 4th st of ch-4.\n"
        "Rnd 3: Ch 4, tr in next 2 tr, * tr in 1st ch of ch-3, ch 4, tr in 3rd ch of same ch-3, tr in next 3 tr, repeat from * around, join last ch-4 to 4th st of ch-4.\n"
    )
    assert counts(text)[:2] == [8, 24]


def test_stitches_left_free_are_worked_later():
    text = (
        "Ch 21, s c in 2nd st from hook and in each remaining st of ch, turn.\n2nd Row. 1 s c in each of the 1st 12 s c, turn.\n"
        "3rd Row. 1 s c in each s c, cut yarn.\nAttach yarn in 1st free st, 1 s c in each s c to end.\n"
    )
    assert counts(text) == [20, 12, 12, 8]


def test_a_row_in_pattern_is_counted_by_its_print_alone():
    row = report("LEFT FRONT: Ch 40. Work same as back to underarm—9 shells.\n").rows[-1]
    assert row.read
    assert row.made["shell"] == (9,)
    assert not row.confirmed


def test_rows_told_by_the_count_they_end_with():
    text = "Ch 2, 6 s c in 2nd st from hook.\n2nd ROUND: 2 s c in each s c.\nContinue in this manner, increasing 6 sts in each round until there are 48 s c in round.\n"
    assert counts(text) == [6, 12, 18, 24, 30, 36, 42, 48]


def test_movements_of_the_hook():
    text = (
        "Ch 21, s c in 2nd st from hook and in each remaining st of ch, ch 1, turn.\n"
        "2nd ROW: * Draw up a loop in each of next 2 sts, yo and work off all loops together, repeat from * across row, ch 1, turn.\n"
        "3rd ROW: 1 s c in each of the next 9 sts, insert hook in last st, pull loop through, drop Rust, pull Sand through both loops on hook, turn.\n"
    )
    assert counts(text) == [20, 10, 10]


def test_a_sleeve_opening_counts_its_chains_when_asked():
    row = report("ROW 1: 1 sc in each of next 20 sts, ch 4 for underarm, skip next 30 sts for sleeve, 1 sc in each of next 20 sts.\n").rows[0]
    assert row.counts == (40,)
    assert row.with_chains == (44,)


OLD = "Make a chain of 5, unite; in this work 12 double crochet.\n"


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        (OLD, [12]),
        (OLD + "2nd round—In the 12 double crochet work 24 treble.\n", [12, 24]),
        (OLD + "2nd round—In each stitch of the round before work 1 white and 1 blue.\n3rd round—1 white on the white, 2 blue on the 1 in last round.\n", [12, 24, 36]),
        (OLD + "2nd round—In each stitch of the round before work 1 white and 1 blue.\n3rd round—2 white on the white, 3 blue on the 1 underneath.\n4th round—2 white over 2, 4 blue over the 3.\n", [12, 24, 60, 72]),
        (OLD + "2d.—Dc., increasing 6 in the round.\n", [12, 18]),
        (OLD + "2nd round--5 chain, and 1 plain in every stitch.\n3rd round--Treble.\n", [12, 12, 72]),
        (OLD + "2nd, 3rd and 4th rounds—Double crochet.\n", [12, 12, 12, 12]),
    ],
)
def test_books_before_1900(text, expected):
    assert counts(text, "old") == expected


@pytest.mark.parametrize("text", [RING, OLD, "Ch. 21 sts. (6 mos.--25 sts.).\n\nWith Rust ch 9,\nyo hook, insert hook in last st, pull loop through, yo and pull through all loops on hook\nincluding all"])
def test_quiet_words_keep_the_length_and_the_lines(text):
    left = quiet(text)
    assert len(left) == len(text)
    assert [len(line) for line in left.split("\n")] == [len(line) for line in text.split("\n")]


def test_a_wrong_count_in_a_leaflet_is_an_error_at_the_number():
    source = Source.of(RING + "2nd Round. Ch 3, d c in same space, 2 d c in each remaining d c, join (34 d c).\n")
    found = [f for f in work(read(source, "us")).findings if f.code == "W001"]
    assert [source.cut(f.span) for f in found] == ["34"] or [source.cut(f.span) for f in found] == ["34 d c"]
