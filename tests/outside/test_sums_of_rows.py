"""Sums that others have printed, done again: multiples, foundation chains, rows worked stitch by stitch; each with its page in worked_examples.toml."""

from fractions import Fraction
from typing import Any

from loopwright.grading import counting, multiples
from loopwright.grading.counting import Legal, count_for
from loopwright.grading.multiples import Multiple
from loopwright.notation import read
from loopwright.source import Source
from loopwright.working import work


def made(text, kind=None):
    """What the rows of a written pattern make: all stitches, or those of a kind; None for a row that is not worked."""
    rows = work(read(Source.of(text), "us")).rows
    return [r.counts[0] if kind is None else r.made.get(kind, (0,))[0] for r in rows]


SOLVERS: dict[str, Any] = {}


def solves(*names):
    def keep(f):
        SOLVERS.update(dict.fromkeys(names, f))
        return f

    return keep


# Multiples and foundation chains


@solves("bonnet-multiple")
def _bonnet_multiple(chain, multiple, plus):
    n = Multiple(multiple, plus).repeats_in_chain(chain)
    return {"repeats": n, "valid": n is not None}


@solves("multiple-6plus2")
def _six_plus_two(target, multiple, plus):
    m = Multiple(multiple, plus)
    assert Legal(multiple, plus).below(target) == m.chain(m.repeats_within(target))
    return {"repeats": m.repeats_within(target), "chain": m.chain(m.repeats_within(target))}


@solves("multiple-swatch-width")
def _swatch(width_in, repeat_width_in, multiple, plus):
    m = Multiple(multiple, plus)
    n = m.repeats_to_cover(width_in, repeat_width_in)
    return {"exact": counting.exact_count(width_in, repeat_width_in), "repeats": n, "chain": m.chain(n)}


@solves("multiple-14plus3")
def _fourteen(repeats, multiple, plus):
    return {"chain": Multiple(multiple, plus).chain(repeats)}


@solves("multiple-three-parts")
def _three_parts(repeats, multiple, edge, base):
    return {"chain": Multiple(multiple, edge, base).chain(repeats)}


@solves("multiple-118")
def _118(chain, multiple, edge, turning):
    return {"repeats": Multiple(multiple, edge, turning).repeats_in_chain(chain)}


@solves("multiple-scarf-2plus5")
def _scarf(width_in, chains_per_in, plus):
    base = count_for(width_in, Fraction(1, chains_per_in))
    return {"base": base, "chain": base + plus}


@solves("chain-to-sc")
def _chain_to_sc(chain):
    sc = multiples.stitches_from_chain(chain, 2, counts=False)
    assert made(f"Ch {chain}.\nRow 1: Sc in 2nd ch from hook and in each ch across.")[-1] == sc
    return {"sc": sc}


# Rows that are worked


@solves("waffle-row-check")
def _waffle(chain, first_dc_in_ch):
    rows = made(
        f"Ch {chain}.\nRow 1: Dc in {first_dc_in_ch}rd ch from hook and in each ch across, turn.\n"
        "Row 2: Ch 2 (does not count as a st), dc in first st, *fpdc around next st, dc in each of next 2 sts; rep from * to last 2 sts, fpdc around next st, dc in last st, turn.\n"
        "Row 3: Ch 2 (does not count as a st), dc in first st, *dc in next st, fpdc around each of next 2 sts; rep from * to last 2 sts, dc in each of last 2 sts, turn.\n"
        "Row 4: Ch 2 (does not count as a st), dc in first st, *fpdc around next st, dc in each of next 2 sts; rep from * to last 2 sts, fpdc around next st, dc in last st."
    )[-4:]
    return {f"row{i}": n for i, n in enumerate(rows, 1)}


@solves("granny-rows-alternate")
def _granny(n):
    rows = made(
        f"Ch {3 * n + 2}.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn.\n"
        f"Row 2: Ch 2 (does not count as a st), 2 dc in first st, *sk 2 sts, 3 dc in next st; rep from * to last 3 sts, sk 2 sts, 2 dc in last st, turn.\n"
        "Row 3: Ch 2 (does not count as a st), dc in first st, *3 dc in next sp between groups; rep from * across, dc in last st."
    )
    assert rows[-3] == 3 * n + 1
    return {"row_a": rows[-2], "row_b": rows[-1]}


@solves("fan-5plus2-rows")
def _fan(n, chain):
    m = Multiple(5, 2, 2)
    assert m.chain(n) == chain
    rows = made(
        f"Ch {chain}.\nRow 1: Dc in 4th ch from hook (skipped chs count as dc), dc in each ch across, turn.\n"
        "Row 2: Ch 3 (counts as dc), *sk 2 sts, 5 dc in next st, sk 2 sts; rep from * to last st, dc in last st, turn.\n"
        "Row 3: Ch 3 (counts as dc), *sk 2 sts, 5 dc in next st, sk 2 sts; rep from * to last st, dc in last st."
    )[-3:]
    return {f"row{i}": r for i, r in enumerate(rows, 1)}


@solves("edit-cross-stitch-chain")
def _cross(stated_chain, stated_sts):
    made_of_it = multiples.stitches_from_chain(stated_chain, 3, counts=True)
    return {"sts_from_stated_chain": made_of_it, "chain_needed": multiples.chain_for_stitches(stated_sts, 3, counts=True), "reconciles": made_of_it == stated_sts}


@solves("edit-larksfoot-sum")
def _larksfoot(stated):
    assert stated == "4 x 8 = 28 + 1 = 29"
    return {"correct_product": 4 * 8, "n_for_29": Multiple(4, 1).repeats_in_chain(29), "reconciles": Multiple(4, 1).stitches(8) == 29}


@solves("edit-alpine-multiple")
def _alpine(stated_multiple, stated_plus, sample_chain):
    return {"reconciles": Multiple(stated_multiple, stated_plus).repeats_in_chain(sample_chain) is not None}


@solves("edit-moss-count")
def _moss(chain, stated_sc):
    sc = made(f"Ch {chain}.\nRow 1: Sc in 4th ch from hook, *ch 1, sk 1 ch, sc in next ch; rep from * across.", "sc")[-1]
    return {"sc": sc, "with_turning_space": sc + 1 if sc + 1 == stated_sc else None}


@solves("edit-bonnet-row-end")
def _row_end(chain, stated_skipped):
    fans = len(range(4, chain, 5))
    at_end = chain - 1 - range(4, chain, 5)[-1]
    return {"fans": fans, "skipped_at_end": at_end, "reconciles": at_end == stated_skipped}


@solves("edit-bootie-turning-chain")
def _bootie(round1, round2_plain, round2_inc, stated):
    body = ", ".join(f"sc in each of next {p} sts, 2 sc in each of next {i} sts" for p, i in zip(round2_plain, round2_inc, strict=True))
    without = made(f"Rnd 1: {round1} sc in magic ring.\nRnd 2: {body}.")[-1]
    return {"without_chain": without, "with_chain": without + 1 if without + 1 == stated else None}


@solves("edit-repeat-times")
def _times(already_worked, repeat_times):
    return {"intended_total": multiples.times_in_all(already_worked, repeat_times), "misread_total": repeat_times}


@solves("inc-row-simple")
def _inc(old, repeats, plain):
    takes, makes = multiples.repeat_row(plain, repeats)
    assert takes == old
    return {"new": makes}


@solves("inc-row-plain")
def _inc_plain(plain, repeats):
    takes, makes = multiples.repeat_row(plain, repeats)
    return {"used": takes, "new": makes}


@solves("dec-row")
def _dec(old, plain, repeats):
    takes, makes = multiples.repeat_row(plain, repeats, made_per_event=1, taken_per_event=2)
    assert takes == old
    return {"new": makes}


def test_example(example, as_printed):
    as_printed(SOLVERS[example["id"]](**example["given"]))
