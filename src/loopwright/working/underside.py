"""The other side of a foundation chain: worked along when the words say so, and when stitches go on past a fan in its last chain."""

from __future__ import annotations

from loopwright.working.run import Run

FAN = 3  # stitches in the last chain that lead around its end


def goes_under(run: Run) -> bool:
    """Whether stitches go on along the other side of the foundation, though no words say so: several went into its last chain, and none is left."""
    n = len(run.view.items)
    if not run.view.foundation or run.end > n or run.pos < n or run.into.start.count(n - 1) < FAN:
        return False
    do_underside(run)
    return True


def do_underside(run: Run) -> None:
    """From the last chain of the foundation back along its other side: it has a place under each stitch worked so far."""
    n = len(run.view.items)
    if not run.view.foundation or run.end > n:
        return
    skipped = run.into[0].start if run.into and run.into[0] is not None else 0
    one = run.pos == n and run.into.start.count(n - 1) == 1
    if one and run.once("last-chain-again", ((0.0, False), (0.3, True))):
        run.pos = n - 1  # one stitch went into the last chain: its other side is free
    else:
        run.pos = max(run.pos, n)
    fan = bool(run.into) and run.into.start.count(skipped) >= FAN  # the first chain has its fan already
    spared = int(fan and run.once("first-chain-spared", ((0.0, True), (0.3, False))))
    run.end = n + max(0, n - 1 - skipped - spared)
    run.in_rounds = True
