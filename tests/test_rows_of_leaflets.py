"""Rows as printed leaflets tell them: low ends that are stitches, yarn joined further on, shapes counted behind a comma."""

from tests.line_by_line import last_rows


def made(lines, kind, terms="us"):
    """How many of a kind the last row of each line makes."""
    return [row.made.get(kind, (0,))[0] if row is not None and row.read else None for row in last_rows(lines, terms)]


def findings(lines):
    """The codes that say that a printed count is wrong."""
    from loopwright.notation import read
    from loopwright.source import Source
    from loopwright.working import work

    return [f.code for f in work(read(Source.of("\n".join(lines) + "\n"), "us")).findings if f.code == "W001"]


class TestSlipStitchAtTheEndOfARow:
    """ "Sl st in last ch, turn": the next row goes into it where its count says so."""

    START = ("Ch 11.", "Row 1: Sc in 2nd ch from hook, sc in next 8 ch, sl st in last ch, ch 1, turn.")

    def test_it_is_worked_into_where_the_next_count_says_so(self):
        lines = [*self.START, "Row 2: Sc in each st across, ch 1, turn. (10 sc)"]
        assert made(lines, "sc")[1:] == [9, 10]
        assert findings(lines) == []

    def test_it_is_passed_over_where_the_next_count_says_so(self):
        lines = [*self.START, "Row 2: Sc in each sc across, ch 1, turn. (9 sc)"]
        assert made(lines, "sc")[1:] == [9, 9]
        assert findings(lines) == []

    def test_another_count_is_still_a_fault(self):
        assert findings([*self.START, "Row 2: Sc in each st across, ch 1, turn. (12 sc)"]) == ["W001"]


class TestYarnJoinedBehindStitchesPassedOver:
    """ "Skip first 4 sts, join yarn in next st": a row leaves what it passes over."""

    START = ("Ch 17.", "Row 1: Skip first ch, sc in each remaining ch, cut yarn, turn. (16 sc)")

    def test_the_stitch_joined_in_is_worked(self):
        for told in ("attach yarn in next st, 1 s c in each remaining s c", "join yarn in next st, ch 1, sc in same st, sc in each sc across"):
            lines = [*self.START, f"Row 2: Skip first 4 sts, {told}, ch 1, turn. (12 sc)", "Row 3: Sc in each sc."]
            assert made(lines, "sc")[1:] == [16, 12, 12]
            assert findings(lines) == []

    def test_the_stitch_joined_in_is_taken_where_the_count_says_so(self):
        lines = [*self.START, "Row 2: Skip first 4 sts, attach yarn in next st, sc in each remaining sc. (11 sc)"]
        assert made(lines, "sc")[1:] == [16, 11]
        assert findings(lines) == []

    def test_stitches_left_at_both_ends(self):
        lines = [*self.START, "Row 2: Skip first 4 sc, rejoin yarn to next sc, ch 1, sc in each sc across to last 4 sc, turn."]
        assert made(lines, "sc")[1:] == [16, 8]

    def test_another_count_is_still_a_fault(self):
        assert findings([*self.START, "Row 2: Skip first 4 sts, attach yarn in next st, sc in each remaining sc. (16 sc)"]) == ["W001"]


class TestShapesCountedBehindAComma:
    """ "… to last loop, (7 clusters) ch 4": how many there are now, and none more."""

    START = "Row 2: (Cluster in next loop, ch 3) 8 times, dc in turning ch. Turn."

    def test_the_count_makes_nothing(self):
        lines = [self.START, "Row 3: Ch 3, cluster in first loop, * ch 3, cluster in next loop; repeat from * to last loop, (7 clusters) ch 4, dc in last st."]
        assert made(lines, "cluster") == [8, 7]

    def test_to_the_loop_before_the_last(self):
        for told in ("next to last loop", "the next-to-last loop", "second last loop"):
            lines = [self.START, f"Row 3: Ch 4, cluster in 2nd loop, * ch 3, cluster in next loop; repeat from * to {told}, ch 2, dc in last st."]
            assert made(lines, "cluster") == [8, 6]


class TestChainsSkippedThatAreALoop:
    """ "Sc in 9th ch from hook, *ch 4, skip 3 sts of foundation ch, sc in next": the chains skipped are the first loop."""

    def test_the_next_row_goes_into_it(self):
        for passed in ("skip 3 ch", "skip 3 sts of foundation ch", "skip next 3 chains of the starting chain"):
            lines = [
                "Ch 29.", f"Row 1: 1 sc in 9th ch from hook, *ch 4, {passed}, 1 sc in next st; rep from * to end. Ch 5, turn.",
                "Row 2: Sc in first loop, * ch 3, sc in next loop; rep from * across.",
            ]
            assert made(lines, "sc")[1:] == [6, 6]
            assert made(lines, "ch-sp")[1] == 6

    def test_no_loop_where_the_count_says_so(self):
        lines = [
            "Ch 29.", "Row 1: Sc in 9th ch from hook, * ch 3, skip 3 ch, 1 sc in next ch; rep from * across. Ch 3, turn.",
            "Row 2: 3 dc in first loop, * 3 dc in next loop; rep from * across. (16 dc)",
        ]
        assert made(lines, "dc")[2] == 16

    def test_few_chains_are_none(self):
        lines = ["Ch 19.", "Row 1: Sc in 5th ch from hook, * ch 5, skip 3 ch, sc in next ch; rep from * across."]
        assert (made(lines, "sc")[1], made(lines, "ch-sp")[1]) == (4, 3)


class TestChainBeforeClustersInLoops:
    """ "Ch 6, turn; cluster in 2nd loop": the chain stands at the edge, with a space."""

    def test_it_is_the_last_loop_of_its_row(self):
        lines = [
            "Row 1: (Cluster in next loop, ch 3) 8 times, dc in turning ch. Ch 6, turn.",
            "Row 2: Cluster in 2nd loop, * ch 3, cluster in next loop; repeat from * across, ch 3, dc in last dc. Ch 4, turn.",
            "Row 3: Cluster in first loop, * ch 3, cluster in next loop; repeat from * across.",
        ]
        assert made(lines, "cluster") == [8, 7, 8]


class TestRoundsClosedInTheirOwnStartingChain:
    """ "…, ending with ch 2, dc in 4th ch of ch-5": half of the last loop is that stitch, and the next round begins in it."""

    RING = ("Ch 6, join with sl st to form ring.", "1st rnd: Ch 4, 23 tr in ring. Join to top of ch-4.")
    NEXT = (
        "Rnd 3: Ch 3, work (dc, ch 1, 2 dc) in the loop just formed, *[ch 4, sc in next ch-1 sp] 5 times, "
        "ch 4, (2 dc, ch 1, 2 dc) in next ch-5 loop (shell made); rep from * around, join."
    )
    LAST = (
        "Rnd 4: Sl st to ch-1 sp, ch 3, (dc, ch 1, 2 dc) in same sp, *ch 5, skip next ch-4 loop, sc in next ch-4 loop, "
        "[ch 4, sc in next loop] 3 times, ch 5, shell in sp of next shell; rep from * around, join."
    )

    def second(self, ending):
        return (
            "Rnd 2: Ch 5, [tr in next tr, ch 1] 4 times, tr in next st, *ch 5, tr in next st, [ch 1, tr in next st] 5 times; "
            f"rep from * around, end with {ending}."
        )

    def test_the_stitch_is_half_a_loop(self):
        for ending in ("ch 2, dc in 4th ch of ch-5", "ch 1, tr in 4th st of starting ch-5", "ch 3, hdc in top of starting chain"):
            rows = last_rows([*self.RING, self.second(ending)], "us")
            assert {k: v[0] for k, v in rows[2].made.items() if k in ("tr", "dc", "hdc", "ch-sp")} == {"tr": 24, "ch-sp": 24}

    def test_the_next_round_begins_in_it(self):
        lines = [*self.RING, self.second("ch 2, dc in 4th ch of ch-5"), self.NEXT, self.LAST]
        assert made(lines, "shell")[3:] == [4, 4]
        assert made(lines, "sc")[3:] == [20, 16]

    def test_a_row_that_is_turned_has_its_stitch(self):
        lines = ["Row 1: Ch 4, (dc in ring, ch 1) 5 times, dc in ring, turn.", "Row 2: Ch 4, (dc in next dc, ch 1) 5 times, dc in 3rd ch of ch-4, turn."]
        assert made(lines, "dc")[1] == 7
