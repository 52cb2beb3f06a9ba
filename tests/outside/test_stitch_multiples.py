"""The multiple of each stitch pattern, found again by working its rows and held against the trade's published multiples.

Source of the table: the multiples published with each stitch pattern; `data/patterns.toml` names the page beside each.
Stitches and foundation chain as [of, plus]; chains where sources differ are told with the pattern.
"""

import re

import pytest

from loopwright.model.tree import Group, Make, Node, Repeat, Row
from loopwright.notation import read
from loopwright.source import Source
from loopwright.trade.patterns import StitchPattern, pattern, patterns
from loopwright.working import work

PUBLISHED = {
    "plain-sc": ((1, 0), (1, 1)), "plain-hdc": ((1, 0), (1, 2)), "plain-dc": ((1, 0), (1, 2)), "plain-tr": ((1, 0), (1, 3)),
    "herringbone-hdc": ((1, 0), (1, 2)), "moss": ((2, -1), (2, 0)), "even-moss": ((2, 0), None), "lemon-peel": ((2, 0), (2, 1)), "mesh": ((2, 1), (2, 4)),
    "suzette": ((2, 1), (2, 2)), "sedge": ((3, 1), (3, 2)), "wattle": ((3, 4), (3, 5)), "v-stitch": ((3, 2), (3, 4)),
    "dense-v": ((2, 3), (2, 5)), "shell": ((6, 1), (6, 2)), "interlocking-shell": ((6, 1), (6, 3)), "fan": ((5, 2), (5, 4)),
    "seven-dc-bubble": ((4, 1), (4, 2)), "petal": ((8, 1), (8, 2)), "granny-stripe": ((3, 1), (3, 2)), "waffle": ((3, 0), (3, 2)),
    "basketweave": ((6, 2), (6, 3)), "alpine": ((2, 0), (2, 2)), "bobble": ((4, 3), (4, 4)), "puff-band": ((2, -1), (2, 0)),
    "larksfoot": ((4, 3), (4, 5)), "ripple-12": ((12, 0), (12, 3)), "ripple-14": ((14, 0), (14, 3)), "chevron": ((11, 0), (11, 1)),
    "rib": ((1, 0), (1, 1)), "star": ((2, 3), (2, 4)), "crocodile": ((6, 2), (6, 4)),
}  # fmt: skip
ALL = [pytest.param(p, id=p.key) for p in patterns()]


@pytest.mark.parametrize("stitch", ALL)
def test_the_table_agrees_with_what_is_published(stitch: StitchPattern) -> None:
    stitches, chain = PUBLISHED[stitch.key]
    assert (stitch.stitches.of, stitch.stitches.plus) == stitches
    assert chain is None or (stitch.chain.of, stitch.chain.plus) == chain


def test_a_dense_v_of_17_chains_has_six_vs() -> None:
    """Published sample of the dense V-stitch."""
    dense = pattern("dense-v")
    assert dense is not None
    assert dense.chain.repeats_in(17) == 6


def test_a_chevron_takes_two_and_twice_its_side_and_three() -> None:
    """The published rule for any side k: a repeat of 2k + 3."""
    chevron = pattern("chevron")
    assert chevron is not None
    assert chevron.stitches.of == 2 * 4 + 3


@pytest.mark.parametrize("stitch", ALL)
def test_the_multiple_is_found_again_by_working_the_rows(stitch: StitchPattern) -> None:
    """Of all foundation chains over two whole repeats, those that come out even are the table's, and no others."""
    first, last = stitch.chain.at(3), stitch.chain.at(5) + 1
    even = [length for length in range(first, last) if comes_out_even(stitch, length)]
    assert even == [length for length in range(first, last) if stitch.chain.repeats_in(length)]


@pytest.mark.parametrize("repeats", [3, 4, 7])
@pytest.mark.parametrize("stitch", ALL)
def test_every_printed_count_is_made(stitch: StitchPattern, repeats: int) -> None:
    report = work(read(Source.of(stitch.written(repeats)), "us"))
    assert report.findings == ()
    assert [row.agrees for row in report.rows[1:]] == [True] * len(stitch.rows)
    if stitch.noun == "sts":
        assert [row.counts[0] for row in report.rows[1:]] == [row.at(repeats) for row in stitch.rows]


def comes_out_even(stitch: StitchPattern, length: int) -> bool:
    """Whether the row with the repeat ends in the last place of the row below, on the last stitch its words tell.

    The last stitch is told as the next one, so that a length that does not come out leaves stitches at the end. Where that
    row stands on a plain one, the plain row has its count, as any length gives one.
    """
    document = read(Source.of(_up_to_the_repeat(stitch, length)), "us")
    report = work(document)
    fabric = report.fabrics[0]
    if report.findings or fabric is None or any(row.counts[0] is None for row in report.rows):
        return False
    below, row = [r for r in fabric.rows if r.end > r.start][-2:]
    places = [*below.borrowed, *(i for i in range(below.start, below.end) if fabric.part_of(i) in ("edge", "counts"))]
    used = {parent for stitch in range(row.start, row.end) for parent in fabric.parents(stitch)}
    left = next((at for at, place in enumerate(places) if place in used), None)  # rows go back over the row below
    item = document.items[row.item]
    told = _last_kind(item.body) if isinstance(item, Row) else None
    return left == stitch.left and fabric.name(row.end - 1) == told


def _up_to_the_repeat(stitch: StitchPattern, length: int) -> str:
    lines: list[str] = []
    for line in stitch.text.strip().splitlines():
        said = re.sub(r"\bin last\b", "in next", line.replace("{chain}", str(length)))
        if line.startswith("Row 1") and "*" not in stitch.text:
            return "\n".join([*lines, said])
        if line.startswith("Row 1") and "*" not in line:
            said += f" ({length - stitch.chain.plus + stitch.rows[0].plus} sts)"
        lines.append(said)
        if "*" in line:
            break
    return "\n".join(lines)


def _last_kind(nodes: tuple[Node, ...]) -> str | None:
    """The kind of the last stitch that words tell."""
    for node in reversed(nodes):
        if isinstance(node, Repeat):
            inner = node.nodes if node.stop_at is None else node.nodes[: node.stop_at]
            kind = _last_kind(node.ending) or _last_kind(inner)
        elif isinstance(node, Group):
            kind = _last_kind(node.nodes)
        else:
            kind = node.kind if isinstance(node, Make) else None
        if kind:
            return kind
    return None
