"""A fact of the trade: double crochet from a ring of 12 grows by 12 a round (common practice, no source)."""

from loopwright.notation import read
from loopwright.source import Source
from loopwright.working import work


def test_double_crochet_from_twelve_grows_by_twelve():
    rounds = ["Rnd 1: 12 dc in magic ring."] + [
        f"Rnd {n}: *{'dc in next st' if n == 3 else f'dc in next {n - 2} sts'}, 2 dc in next st; rep from * around." if n > 2 else "Rnd 2: 2 dc in each st around."
        for n in range(2, 9)
    ]
    report = work(read(Source.of("\n".join(rounds)), "us"))
    assert [r.counts[0] for r in report.rows] == [12 * n for n in range(1, 9)]
