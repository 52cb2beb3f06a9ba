"""Sums that others have printed, done again with our own formulas: circles, hats, gauge, grading; each with its page in worked_examples.toml."""

from fractions import Fraction
from typing import Any

from loopwright.grading import counting, discs, motifs, spread
from loopwright.grading.counting import Legal, count_for, half_up, with_ease_mm
from loopwright.grading.multiples import Multiple

INCH = Fraction(254, 10)


def exact(x):
    """The number as printed, without what binary makes of it."""
    return Fraction(str(x))


SOLVERS: dict[str, Any] = {}


def solves(*names):
    def keep(f):
        SOLVERS.update(dict.fromkeys(names, f))
        return f

    return keep


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


def test_example(example, as_printed):
    as_printed(SOLVERS[example["id"]](**example["given"]))
