"""Sums that others have printed, done again: spreading, sleeves, yokes, mittens, shawls, motifs, borders; each with its page in worked_examples.toml."""

from fractions import Fraction
from typing import Any

from loopwright.grading import borders, counting, motifs, raglan, spread, tapers
from loopwright.grading.counting import Legal, count_for, with_ease_mm
from loopwright.trade.stitches import row_ends


def exact(x):
    """The number as printed, without what binary makes of it."""
    return Fraction(str(x))


SOLVERS: dict[str, Any] = {}


def solves(*names):
    def keep(f):
        SOLVERS.update(dict.fromkeys(names, f))
        return f

    return keep


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
    return {"edge_sts": [row_ends()[s] for s in row_stitch]}


@solves("length-vs-fixed-pickup")
def _free_length(told_length_in, worked_length_in, pickup):
    pitch = told_length_in / pickup
    return {"sts_per_in_intended": 1 / pitch, "pickup_needed": borders.pick_up_for(worked_length_in, pitch)}


@solves("c2c-rectangle")
def _c2c(width_blocks, height_blocks):
    stop, diagonals, blocks = motifs.corner_to_corner(width_blocks, height_blocks)
    return {"last_increase_row_short_side": stop, "diagonals": diagonals, "blocks": blocks}


def test_example(example, as_printed):
    as_printed(SOLVERS[example["id"]](**example["given"]))
