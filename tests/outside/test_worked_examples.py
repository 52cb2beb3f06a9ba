"""Sums that others have printed, done again with our own formulas; each example's page stands beside it in worked_examples.toml."""

import math
import tomllib
from fractions import Fraction
from pathlib import Path
from typing import Any

import pytest

from loopwright.grading import borders, counting, discs, motifs, multiples, raglan, spread, tapers
from loopwright.grading.counting import Legal, count_for, half_up, with_ease_mm
from loopwright.grading.multiples import Multiple
from loopwright.notation import read
from loopwright.source import Source
from loopwright.working import work

EXAMPLES = tomllib.loads(Path(__file__).with_name("worked_examples.toml").read_text(encoding="utf-8"))["example"]
INCH = Fraction(254, 10)
SOLVERS: dict[str, Any] = {}


def solves(*names):
    def keep(f):
        SOLVERS.update(dict.fromkeys(names, f))
        return f

    return keep


def exact(x):
    """The number as printed, without what binary makes of it."""
    return Fraction(str(x))


def made(text, kind=None):
    """What the rows of a written pattern make: all stitches, or those of a kind; None for a row that is not worked."""
    rows = work(read(Source.of(text), "us")).rows
    return [r.counts[0] if kind is None else r.made.get(kind, (0,))[0] for r in rows]


# Circles and hats


@solves("hat-diameter-23in", "hat-diameter-13p5in")
def _across(circumference_in):
    return {"diameter_in": discs.across_mm(circumference_in * INCH) / INCH}


@solves("hat-height-23in", "hat-height-13p5in")
def _height(circumference_in):
    return {"height_in": with_ease_mm(exact(circumference_in) * INCH, factor=Fraction(4, 10)) / INCH}


@solves("disc-to-hat-6p5in")
def _around(diameter_in):
    return {"circumference_in": discs.around_mm(diameter_in)}


@solves("disc-one-more-round")
def _one_more(diameter_in, round_height_in):
    across = discs.across_by_rounds_mm(1, round_height_in, centre_mm=diameter_in)
    return {"diameter_in": across, "circumference_in": discs.around_mm(across)}


@solves("hat-negative-ease")
def _negative(head_in, ease_in, sts_per_in):
    finished = with_ease_mm(head_in * INCH, ease_in * INCH)
    return {"finished_in": finished / INCH, "diameter_in": discs.across_mm(finished) / INCH, "stitches": count_for(finished, INCH / sts_per_in)}


@solves("hat-partial-increase-round")
def _partial(increase_per_round, full_rounds, partial_round_increases):
    rounds = discs.crown(increase_per_round * full_rounds + partial_round_increases, increase_per_round)
    return {"after_full_rounds": rounds[full_rounds - 1], "final": rounds[-1]}


@solves("hat-check-56dc")
def _check(stitches, gauge_sts, gauge_width_in):
    return {"circumference_in": counting.length_mm(stitches, counting.pitch_mm(gauge_sts, gauge_width_in))}


@solves("child-beanie-graded")
def _graded(gauge_hdc_per_10cm, stitches):
    return {"circumference_cm": [counting.length_mm(s, counting.pitch_mm(gauge_hdc_per_10cm, 100)) / 10 for s in stitches]}


@solves("child-beanie-last-round")
def _last(before, plain_between):
    runs = [b // (p + 1) for b, p in zip(before, plain_between, strict=True)]
    for b, n, p in zip(before, runs, plain_between, strict=True):
        assert set(spread.increases(b, n)) == {p}
    return {"increases": runs, "after": [b + n for b, n in zip(before, runs, strict=True)]}


@solves("crown-prediction-two-ways")
def _two_ways(stitches, rounds, hdc_per_4in, rows_per_4in):
    # The printed, measured width (6.25) follows from neither: the test states it so that the gap stays in sight.
    by_width = discs.across_mm(counting.length_mm(stitches, Fraction(4, hdc_per_4in)))
    by_rows = discs.across_by_rounds_mm(rounds, Fraction(4, rows_per_4in))
    assert max(by_width, by_rows) < 6.25
    return {"d_from_width_in": by_width, "d_from_rows_in": by_rows, "d_published_in": 6.25}


@solves("increase-rate-from-gauge-a")
def _rate_a(sts_per_4in, rows_per_4in):
    return {"ideal_increase": discs.flat_rate(4 / sts_per_4in, 4 / rows_per_4in)}


@solves("increase-rate-from-gauge-b")
def _rate_b(sts_per_10cm, rows_per_10cm):
    return {"ideal_increase": discs.flat_rate(100 / sts_per_10cm, 100 / rows_per_10cm)}


@solves("flat-circle-rule-of-thumb")
def _thumb(stitch):
    return {"increase_per_round": [discs.BY_HEART[s] for s in stitch]}


@solves("flat-circle-exact-sc")
def _exact_sc(ratio_h_over_w, rounds):
    return {"stitches": list(discs.flat_counts(rounds, discs.flat_rate(1, ratio_h_over_w)))}


@solves("flat-circle-exact-dc")
def _exact_dc(ratio_h_over_w):
    return {"ideal_increase": discs.flat_rate(1, ratio_h_over_w)}


@solves("sc-rounds-standard", "dc-rounds-standard")
def _standard(start, rounds):
    return {"stitches": list(discs.crown(start * rounds, start))}


@solves("hat-odd-last-round")
def _odd_last(rounds):
    return {"increase_each": list(discs.gains(tuple(rounds))[1:])}


@solves("stagger-even-rounds")
def _stagger(sections, plain_run):
    before = sections * (plain_run + 1)
    runs = spread.staggered(before, sections)
    assert sum(r.times for r in runs if r.event and r.plain == plain_run) == sections - 1
    return {"first_plain": runs[0].plain, "middle_repeats": runs[1].times, "last_plain": runs[-1].plain, "stitches": before + sections}


@solves("hat-start-count-scaling")
def _start(have_circ_in, want_circ_in, in_per_extra_start_stitch, start):
    extra, low, high = discs.start_for(have_circ_in, want_circ_in, in_per_extra_start_stitch)
    return {"exact_extra": extra, "start_low": start + low, "start_high": start + high}


@solves("sphere-rows")
def _sphere(equator):
    return {"rows": discs.ball_rows(equator)}


# Gauge, grading, rounding


@solves("sizes-inconsistent-gauge")
def _inconsistent(stitches, circumference_in):
    implied = [1 / p for p in counting.implied_pitches_mm(stitches, circumference_in)]
    # 40 stitches at 18 in and 48 at 20 in: even half a stitch either way leaves no width of a stitch that fits both.
    return {"implied_sts_per_in": implied, "consistent": counting.consistent(stitches, circumference_in)}


@solves("bonnet-gauge-chain")
def _bonnet_chain(chain, sts_per_in, rows_per_in, depth_in):
    return {"width_in": counting.length_mm(chain, Fraction(1, sts_per_in)), "rows": count_for(exact(depth_in), Fraction(1, rows_per_in))}


@solves("bonnet-back-disc")
def _bonnet_disc(stitches, increase_per_round, diameter_in):
    rounds = len(discs.crown(stitches, increase_per_round))
    height = diameter_in / 2 / rounds
    assert discs.rounds_for(diameter_in, height) == rounds
    return {"rounds": rounds, "round_height_in": height}


@solves("bonnet-neck-gap")
def _neck(total, repeats, stitches_per_repeat):
    worked = Multiple(stitches_per_repeat, 1).stitches(repeats)
    return {"worked": worked, "left_for_neck": total - worked, "neck_percent": 100 * (total - worked) / total}


@solves("gauge-convert-sweater")
def _sweater(pattern_sts, mine_sts, pattern_rows, mine_rows, pattern_chain):
    return {
        "stitch_factor": counting.converted(1, pattern_sts, mine_sts), "row_factor": counting.converted(1, pattern_rows, mine_rows),
        "new_chain": half_up(counting.converted(pattern_chain, pattern_sts, mine_sts)),
    }


@solves("gauge-convert-multiple-of-6")
def _of_six(pattern_sts_per_in, mine_sts_per_in, counts, multiple):
    new = [counting.converted(c, pattern_sts_per_in, mine_sts_per_in) for c in counts]
    return {"exact": new, "rounded": [Legal(multiple).nearest(n)[0] for n in new]}


@solves("gauge-convert-finer")
def _finer(pattern_sts_per_in, mine_sts_per_in, count, multiple):
    new = counting.converted(count, pattern_sts_per_in, mine_sts_per_in)
    rounded = Legal(multiple).nearest(new)[0]
    return {
        "exact": new, "rounded": rounded,
        "pattern_width_in": counting.length_mm(count, 1 / pattern_sts_per_in), "new_width_in": counting.length_mm(rounded, 1 / mine_sts_per_in),
    }


@solves("gauge-ignored")
def _ignored(stitches, pattern_sts_per_in, mine_sts_per_in):
    return {"intended_in": stitches * counting.pitch_mm(pattern_sts_per_in, 1), "actual_in": stitches * counting.pitch_mm(mine_sts_per_in, 1)}


@solves("gauge-round-half-up")
def _half_up(values):
    assert half_up(Fraction(33, 2)) == 17
    return {"rounded": [half_up(exact(v)) for v in values]}


@solves("rows-convert")
def _rows(rows, old_rows_per_in, new_rows_per_in):
    length = counting.length_mm(rows, Fraction(1, old_rows_per_in))
    return {"length_in": length, "rows_new": count_for(length, Fraction(1, new_rows_per_in))}


@solves("rows-body")
def _body_rows(length_in, rows_per_in):
    return {"exact": counting.exact_count(length_in, 1 / rows_per_in), "rows": count_for(exact(length_in), 1 / exact(rows_per_in))}


@solves("resize-percent")
def _percent(old_in, new_in):
    return {"ratio": counting.converted(1, old_in, new_in)}


@solves("yarn-by-stitch-count")
def _rectangle(sts_per_4in, rows_per_4in, width_in, height_in):
    across, rows, whole = motifs.stitches_of_rectangle(width_in, height_in, 4 / exact(sts_per_4in), 4 / exact(rows_per_4in))
    return {"width_sts": across, "rows": rows, "total_stitches": whole}


@solves("yarn-doily-halfway")
def _doily(rounds, pairs):
    assert rounds == 2 * len(pairs)
    # In pairs of rounds of equal count: half of the stitches are made by round 11, not by round 8.
    each = [n for n in pairs for _ in range(2)]
    return {
        "total": sum(each), "after_8": sum(each[:8]), "after_11": sum(each[:11]),
        "share_8": sum(each[:8]) / sum(each), "share_11": sum(each[:11]) / sum(each),
    }


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


# Even spreading


@solves("evenly-51-4-round", "evenly-51-4-flat")
def _evenly(stitches, increases, in_round):
    if not in_round:
        return {"positions": list(spread.positions_flat(stitches, increases))}
    return {"intervals": list(spread.even(stitches, increases)), "positions": list(spread.positions_round(stitches, increases))}


@solves("evenly-112-16")
def _exact_interval(stitches, increases):
    (interval,) = set(spread.even(stitches, increases))
    return {"interval": interval}


@solves("evenly-40-4-gaps")
def _gaps(stitches, increases):
    gaps = spread.between(stitches, increases)
    return {"gaps": len(gaps), "stitches_per_gap": gaps[0]}


# Sleeves, yokes, necks


@solves("sleeve-round-even")
def _round_even(cuff_in, underarm_in, sts_per_in):
    wide = underarm_in * sts_per_in
    narrow = counting.same_parity(exact(cuff_in) * sts_per_in, wide)
    return {"cuff_exact": cuff_in * sts_per_in, "cuff": narrow, "underarm": wide, "increase": wide - narrow, "pairs": tapers.pairs(wide, narrow)}


@solves("sleeve-schedule-108-11")
def _schedule(rows, pairs):
    steps = tapers.schedule(rows, pairs)
    return {"every": [s.every for s in steps], "times": [s.times for s in steps], "rows_used": tapers.rows_of(steps)}


@solves("sleeve-50-to-72")
def _up_to_even(cuff_in, top_in, sts_per_in):
    # This page rounds both ends up to even; the nearest even number to 49.5 is 50 and to 71.5 is 72 as well.
    cuff, top = (Legal(2).nearest(exact(w) * exact(sts_per_in))[0] for w in (cuff_in, top_in))
    return {"cuff_exact": cuff_in * sts_per_in, "cuff": cuff, "top_exact": top_in * sts_per_in, "top": top, "pairs": tapers.pairs(top, cuff)}


@solves("sleeve-child-6x10")
def _sleeve(every, times, per_event):
    step = tapers.Step(every, times)
    return {"stitches_removed": times * per_event, "rows": step.rows}


@solves("sleeve-baby-rows")
def _baby(cast, cuff_rows, every, times, length_in, rows_per_in):
    # The first increase of the page is worked in the row after the cuff, then every 4th row 10 times: 1 + 40 rows, 11 increases.
    shaped = cuff_rows + 1 + tapers.Step(every, times).rows
    rows = count_for(exact(length_in), Fraction(1, rows_per_in))
    return {"final_sts": cast + 2 * (times + 1), "rows_shaped": shaped, "rows_total": rows, "rows_plain_after": rows - shaped}


@solves("raglan-neck-22in")
def _raglan(sts_per_in, neck_in, bust_in, sleeve_in):
    return {k: Legal(2).nearest(w * exact(sts_per_in))[0] for k, w in (("neck", neck_in), ("bust", bust_in), ("sleeve", sleeve_in))}


@solves("raglan-neck-split")
def _split(neck_in, parts_in):
    front, sleeve, back, same = parts_in
    assert sleeve == same
    parts = raglan.by_shares(neck_in, (Fraction(front, neck_in), Fraction(sleeve, neck_in), Fraction(back, neck_in)), 1)
    return {"sum_in": parts.total}


@solves("raglan-percent-method")
def _percent_raglan(neck_sts):
    parts = raglan.by_percent(neck_sts)
    return {"back": parts.back, "sleeve": parts.sleeve, "increase_sts": parts.corners, "front": parts.front, "front_gt_back": parts.front > parts.back}


@solves("raglan-compound-schedule")
def _compound(every_other, every_fourth, every_other_again):
    rows = 2 * every_other + 4 * every_fourth + 2 * every_other_again
    steps = tapers.compound(rows, every_other + every_fourth + every_other_again)
    assert steps == (tapers.Step(2, every_other + every_other_again), tapers.Step(4, every_fourth))
    return {"rows": tapers.rows_of(steps), "increases_per_edge": tapers.events_of(steps)}


@solves("neck-depth-rows")
def _neck_depth(depth_in, rows_per_in):
    rows = depth_in * rows_per_in
    return {"rows_exact": rows, "rows_used": Legal(2).above(rows)}


@solves("round-yoke-rows")
def _yoke_rows(depth_in, rows_per_in, spacing):
    rows = count_for(depth_in, Fraction(1, rows_per_in))
    return {"rows": rows, "groups": rows // spacing}


@solves("round-yoke-final-count")
def _yoke_end(body, sleeve, underarm):
    return {"yoke_end": raglan.round_yoke_end(body, sleeve, underarm)}


@solves("shoulder-neck-split")
def _neck_split(total, shoulder, centre, side):
    wide, middle = tapers.neck(total, shoulder, side)
    assert middle == centre
    return {"neck": wide, "check": centre + 2 * side}


@solves("shoulder-steps")
def _shoulder(shoulder, steps):
    (step,) = set(tapers.slope(shoulder, steps))
    return {"step": step}


# Mittens and socks


@solves("mitten-cuff")
def _cuff(hand_in, sts_per_in):
    basic = hand_in * sts_per_in
    return {"basic": basic, "cuff": counting.share(basic, Fraction(9, 10), Legal(4))}


@solves("mitten-ease")
def _mitten(hand_in):
    return {"finished_in": with_ease_mm(hand_in, factor=Fraction(11, 10))}


@solves("sock-multiple-of-8")
def _sock(foot_in, sts_per_in):
    wanted = foot_in * sts_per_in
    cast = Legal(8).nearest(wanted)[0]
    return {"exact": wanted, "cast": cast, "heel": cast // 2}


@solves("sock-negative-ease")
def _sock_ease(foot_circ_in, foot_len_in):
    return {"sock_circ_in": with_ease_mm(foot_circ_in, factor=Fraction(9, 10)), "sock_len_in": with_ease_mm(foot_len_in, -0.25)}


# Shawls, motifs, borders


@solves("shawl-scale-by-yarn")
def _shawl(width_in, depth_in, yards, have_yards):
    area = motifs.triangle_mm2(width_in, depth_in)
    less = area * Fraction(have_yards, yards)
    depth = motifs.depth_for_area_mm(less)
    return {"area_sq_in": area, "new_area": less, "new_depth_in": depth, "new_width_in": 2 * depth}


@solves("shawl-border-yarn")
def _border_yarn(depth_ratio):
    return {"fraction": [motifs.border_share(d) for d in depth_ratio]}


@solves("similar-triangles")
def _similar(length_ratio):
    return {"area_ratio": [motifs.area_ratio(r) for r in length_ratio]}


@solves("motif-throw")
def _throw(width_in, length_in, square_in):
    grid = motifs.covering(width_in, length_in, square_in)
    return {
        "cols_exact": counting.exact_count(width_in, square_in), "cols": grid.columns, "rows": grid.rows, "squares": grid.motifs,
        "finished_width_in": grid.width_mm,
    }


@solves("granny-rectangle-9x4", "granny-rectangle-6x4")
def _granny_rectangle(long, short):
    chains, rounds = motifs.granny_rectangle(long, short)
    return {"z": long - short, "chains": chains, "rounds": rounds}


@solves("motif-shawl-count")
def _motif_shawl(hypotenuse_in, square_diagonal_in):
    whole, halves = motifs.half_square_shawl(hypotenuse_in, square_diagonal_in)
    return {"exact": counting.exact_count(hypotenuse_in, square_diagonal_in), "halves": halves, "whole": whole}


@solves("pickup-ratio")
def _pickup(sts_per_4in, rows_per_4in):
    per_row = borders.rate(sts_per_4in, rows_per_4in)
    words = borders.in_words(per_row)
    assert words == ((3, 4), (3, 4), (4, 5))
    return {"reduced": [per_row.numerator, per_row.denominator], "sum_num": sum(k for k, _ in words), "sum_den": sum(n for _, n in words)}


@solves("row-end-edging")
def _row_end_rate(row_stitch):
    return {"edge_sts": [borders.PER_ROW_END[s] for s in row_stitch]}


@solves("length-vs-fixed-pickup")
def _free_length(told_length_in, worked_length_in, pickup):
    pitch = told_length_in / pickup
    return {"sts_per_in_intended": 1 / pitch, "pickup_needed": borders.pick_up_for(worked_length_in, pitch)}


@solves("c2c-rectangle")
def _c2c(width_blocks, height_blocks):
    stop, diagonals, blocks = motifs.corner_to_corner(width_blocks, height_blocks)
    return {"last_increase_row_short_side": stop, "diagonals": diagonals, "blocks": blocks}


def test_every_example_is_done():
    assert {e["id"] for e in EXAMPLES} == set(SOLVERS)


@pytest.mark.parametrize("example", EXAMPLES, ids=lambda e: e["id"])
def test_example(example):
    ours = SOLVERS[example["id"]](**example["given"])
    assert set(ours) == set(example["expected"]), "every printed value is answered"
    for key, printed in example["expected"].items():
        _close(ours[key], printed, example["tolerance"])


def _close(ours, printed, tolerance):
    if isinstance(printed, list):
        assert len(ours) == len(printed)
        for a, b in zip(ours, printed, strict=True):
            _close(a, b, tolerance)
    elif isinstance(printed, bool):
        assert ours is printed
    else:
        assert math.isclose(float(ours), printed, rel_tol=0, abs_tol=tolerance + 1e-9)
