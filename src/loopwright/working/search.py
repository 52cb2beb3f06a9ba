"""Decoding: of the few ways a row can be meant, the one that fabric, printed counts and later rows agree with.

Best-first over the choices in a row, and best-first over the rows. Nothing here knows any instruction.
"""

from __future__ import annotations

import heapq
import math
from collections import Counter
from collections.abc import Callable, Iterator
from dataclasses import replace
from typing import Any

from loopwright.model.tree import Chain, Evenly, Join, Make, Mark, Node, Num, PatternRun, Place, Thing
from loopwright.record import changed
from loopwright.working.as_printed import pattern_as_printed, plain, wrong_print
from loopwright.working.doubted import SLIP_OF_COUNT
from loopwright.working.explanations import Explanation, Outcome, State
from loopwright.working.kinds import code
from loopwright.working.layouts import around
from loopwright.working.leads import without_one
from loopwright.working.lower import lower_state
from loopwright.working.openings import begins_anew, by_shape, from_the_middle, has_ring, joins_round, printed_total, stitches_below
from loopwright.working.remembered import DOUBT, Found, Layer, Remembered, with_rows
from loopwright.working.rivals import MOST_RIVALS, NEAR, Rival, rivals
from loopwright.working.rows import DISAGREES, NOTHING, Made, from_hook, lead_chain, main_kind
from loopwright.working.run import MAX_ITEMS
from loopwright.working.steps import Step
from loopwright.working.tally import agrees
from loopwright.working.until import rows_until
from loopwright.working.view import View, foundation, plain_row
from loopwright.working.ways import LONGER, Alike, Conventions, Row, excused, ways

KEEP = 4
FAILS = 8.0
FRESH = 1.5
WEAK = 0.3  # of what a row costs, where much of it was not understood: it hardly judges the rows before it
DEEPEST = 5  # repeats within repeats that one row may have; the trade hardly ever goes to three
AMPLE, AMPLE_ROW = 60_000, 400  # work in all, and more for each row, from which the cheapest explanation alone goes on: many times what a pattern takes
AMPLE_ITEM = 6_000  # and for the rows that one line asks for: three times what any of the designs takes
MOST_ITEM, MOST_ROW, MOST_ROWS = 12_000, 200, 300  # and, with so much for each of so many rows, from which no more of them are worked
ALL_WORK = 500_000  # and of a size: what is past it is not worked any more


class Decoder(Remembered):
    """Decodes the steps of one size. `memo` may be shared between runs: equal rows on equal states are decoded once."""

    def __init__(self, definitions: dict[str, tuple[Node, ...]], memo: dict[Any, Any] | None = None) -> None:
        super().__init__(definitions, memo)
        self.families: dict[Any, tuple[int, ...]] = {}  # by row and conventions: rows that tell the same are looked at once
        self.alike = Alike()  # what was found for the row at hand, for states that differ in nothing it asks for
        self.brief = False  # the rows at hand are looked at in their likeliest way alone, where that is a clean one
        self.unrivalled: set[frozenset[tuple[int, int]]] = set()  # rows whose counts disagree, and for which a size before had no rivals
        self.starts: dict[Any, list[int]] = {}  # numbers of stitches that a row may stand on by its printed count

    def decode(self, steps: list[Step], conventions: tuple[tuple[str, Any], ...] = ()) -> tuple[Explanation, list[Rival]]:
        """The cheapest explanation of all steps, and its rivals where a printed count disagrees with it. Never raises for what a pattern says."""
        layers = [Layer() for _ in steps]
        found = self._explanations(steps, conventions, layers)
        best = next(found)
        faults = frozenset((o.step.item, o.step.part) for o in best.outcomes() if o.agrees is False)
        if faults in self.unrivalled:
            return best, []
        near = rivals(best, found, layers)
        if not near:
            self.unrivalled.add(faults)
        return best, near

    def _explanations(self, steps: list[Step], conventions: tuple[tuple[str, Any], ...], layers: list[Layer]) -> Iterator[Explanation]:
        """The explanations of all steps, the cheapest first, until one is too dear to be a rival.

        The cheapest of all explanations begun goes on first: one that needs no excuse leaves the others where they are.
        """
        self.alike.clear()
        by_item, rows = dict[int, int](), Counter(step.item for step in steps)
        dearest, most = math.inf, math.inf
        begun: list[tuple[float, int, int, Explanation]] = [(0.0, 0, 0, Explanation(State(NOTHING, conventions), 0.0))]
        serial = 0
        while begun:
            cost, ahead, _, old = heapq.heappop(begun)
            at = -ahead  # of equals, the one that is further on
            if cost > dearest or serial > most:
                return
            if at == len(steps):
                dearest, most = min(dearest, cost + NEAR), min(most, serial + MOST_RIVALS)
                yield old
                continue
            step, spent = steps[at], self.spent
            ample = spent <= AMPLE + AMPLE_ROW * at and (not step.part or by_item.get(step.item, 0) <= AMPLE_ITEM)
            if not layers[at].takes(old, alone=not ample):
                continue
            self.brief = not ample
            if step.part and by_item.get(step.item, 0) > (most_work := MOST_ITEM + MOST_ROW * min(MOST_ROWS, rows[step.item])) and not step.problem:
                step = changed(step, problem="too-many", problem_facts=(("limit", f"the work of {most_work:,} instructions in one line"),))
            for new in self._next(old, step, steps, at):
                serial += 1
                heapq.heappush(begun, (new.cost, ahead - 1, serial, new))
            by_item[step.item] = by_item.get(step.item, 0) + self.spent - spent

    def _next(self, old: Explanation, step: Step, steps: list[Step], at: int) -> list[Explanation]:
        """What may follow one explanation over a row; an equal row on the same state is looked up."""
        if old.outcome is not None and old.outcome.problem == "too-many" and old.step is not None and old.step.item == step.item:
            step = changed(step, problem="too-many", problem_facts=tuple(old.outcome.facts.items()))  # nor can the next of such rows be worked
        told = self.told(step)
        plain = not step.problem and step.layout is None and not told.body.counts_rows and not told.body.lower and told.body.depth <= DEEPEST and self.spent <= ALL_WORK
        if not plain or step.order is not None and step.order.until_sts is not None:
            return self._grow(old, step, steps, at)
        key = (*self._which(step, told), self.names, id(old.state))
        held: tuple[Found, State] | None = self.followed.get(key)
        if held is None:
            held = self._known(old.state, step, steps, at), old.state  # it keeps its id while this is kept
            if not held[0].alone:
                self.followed[key] = held
        self._charge(held[0])
        return self._follow(old, step, held[0])

    def _follow(self, old: Explanation, step: Step, found: Found, told: tuple[tuple[str, Any], ...] = ()) -> list[Explanation]:
        """An explanation with each of the outcomes of a row."""
        return [
            Explanation(state, round(old.cost + o.cost, 9), o.also(told), old, step, 0 if rows is None else old.rows + rows)
            for state, rows, o in found.outcomes
        ]

    # --- one row -------------------------------------------------------------------------------------------------

    def _grow(self, old: Explanation, step: Step, steps: list[Step], at: int) -> list[Explanation]:
        """What may follow one explanation over a row that is looked at by itself."""
        state = old.state
        if self.spent > ALL_WORK and not step.problem:
            step = changed(step, problem="too-many", problem_facts=(("limit", ALL_WORK),))
        elif not step.problem and self.told(step).body.depth > DEEPEST:
            step = changed(step, problem="too-many", problem_facts=(("repeats in one another", DEEPEST),))
        elif not step.problem and step.order is not None and step.order.until_sts is not None and (step.order.until_sts.at(0) or 0) > MAX_ITEMS:
            step = changed(step, problem="too-many", problem_facts=(("limit", MAX_ITEMS),))
        if step.problem:
            outcome = Outcome(step, None, FAILS, None, step.problem, dict(step.problem_facts))
            return [Explanation(self._assumed_state(state, step), old.cost + FAILS, outcome, old, step, old.rows)]
        if step.order is not None and step.order.until_sts is not None:
            return [self._until(old, step, steps, at)]
        edge = around(old, step.layout) if step.layout is not None else None
        told: tuple[tuple[str, Any], ...] = (("motifs", step.layout),) if edge is not None else ()
        if edge is None and (row := self.told(step).body.lower) and (edge := lower_state(old, step, row)) is not None:
            told = (("lower", row),)
        return self._follow(old, step, self.known(edge or state, old.rows, step, steps, at, old.first_row), told)

    def known(self, state: State, rows: int, step: Step, steps: list[Step], at: int, first_row: Callable[[], int] = int) -> Found:
        """The outcomes of a step after so many rows of its piece; `first_row` tells how many stitches the first of them has."""
        counted = changed(state, rows=rows, first_row=first_row()) if self.told(step).body.counts_rows else state
        found = self._known(counted, step, steps, at)
        self._charge(found)
        return found

    def _known(self, state: State, step: Step, steps: list[Step], at: int) -> Found:
        """The outcomes of a step, out of the memo where an equal row met an equal state.

        Rows of one body differ by their number alone, which tells only whether a new piece may begin. What was found by looking at
        the rows ahead is kept with what those tell.
        """
        key = (*self._which(step, self.told(step)), self.names, state)
        found: Found | None = self.rows.get(key)
        if found is not None and found.alone:
            key = (*key, self._ahead(steps, at))
            found = self.rows.get(key)
        if found is None:
            self.looked_ahead, self.family = False, state.family
            before, self.spent = self.spent, 0
            outcomes = tuple(with_rows(state, self.of_family(s), o) for s, o in self._outcomes(state, step, steps, at))
            found = Found(outcomes, self.spent, self.looked_ahead)
            self.spent = before
            self.rows[key] = found
            if found.alone:
                self.rows[(*key, self._ahead(steps, at))] = found
        return found

    def _outcomes(self, state: State, step: Step, steps: list[Step], at: int) -> list[tuple[State, Outcome]]:
        if step.order is not None and step.order.untold and not step.order.grow and printed_total(step.printed) is None:
            return [(self._assumed_state(state, step), Outcome(step, None, FAILS, None, "otherwise"))]
        results: list[tuple[State, Outcome]] = []
        starts = self._starts(state, step)
        if len(starts) > 1 and step.number is None and all(isinstance(n, Chain) for n in step.body):
            self.looked_ahead = True
            then = steps[at + 1].body if at + 1 < len(steps) else ()
            starts = [(NOTHING, 0.0, ())] if from_hook(then) and lead_chain(then) is None else starts
        problems: list[Outcome] = []
        if step.part == 0 and (below := stitches_below(step.body)) is not None and below != state.view.stitches and (told := self._on_so_many(state, step, below, problems)):
            return told
        for view, cost, assumed in starts:
            turned = view is not NOTHING and view is not state.view
            results += [(s, changed(o, flipped=turned)) for s, o in self._readings(state, step, view, cost, assumed, problems)]
        if state.view is NOTHING and from_the_middle(step):
            # a short chain at the head of a later row is no foundation, and a row that makes nothing is not worked
            results = [(s, changed(o, cost=o.cost + FRESH * 2)) for s, o in results if o.made is not None and o.made.made and o.made.spaces_left + o.made.left == 0]
            good: list[tuple[State, Outcome]] = []
        else:
            good = [r for r in results if r[1].cost < FAILS]
        lost = from_hook(step.body) and lead_chain(step.body) is None and not state.view.foundation and state.pending is None
        guessed = state.unsure and bool(step.printed) and not any(r[1].agrees for r in good)
        endless = bool(problems) and not good and all(p.problem == "too-many" for p in problems)  # no other start would mend that
        apart = step.layout is None and (step.gap or step.new_section and step.printed and not self.told(step).body.around)  # else it is around what is there
        other = step.awaits is not None and not any(o.made is not None and o.made.count == step.awaits for _, o in good)
        if not endless and (not good or lost or guessed or (apart and (other or min(r[1].cost for r in good) > FRESH))):
            self.looked_ahead = True
            results += self._unknown_start(state, step, steps, at)
        if step.printed and not any(o.agrees for _, o in results) and (step.order is not None and step.order.untold or any(isinstance(n, PatternRun) and n.n is None for n in step.body)):
            results += pattern_as_printed(state, step)
        if not results or self.family and state.view is NOTHING and not any("start" in dict(o.assumed) for _, o in results):
            results = self._given_up(state, step, problems)
        elif step.printed:
            results += wrong_print(state, step, results)
        results.sort(key=lambda r: r[1].cost)
        return results[: KEEP + 2]

    def _on_so_many(self, state: State, step: Step, number: int, problems: list[Outcome]) -> list[tuple[State, Outcome]]:
        """A row on as many stitches as its own words say there are: rows before it are left out."""
        kind, rounds = main_kind(step.body, state.kind), step.kind == "rnd" or joins_round(step.body)
        view = plain_row(number, code(kind) if kind else 2, joined=rounds)
        fresh = changed(state, view=view, pending=None, in_rounds=rounds)
        return self._readings(fresh, step, view, 0.0, (("start", number),), problems)

    def _starts(self, state: State, step: Step) -> list[tuple[View, float, tuple[tuple[str, Any], ...]]]:
        """The views a row may be worked on: what is there, or nothing where a new piece begins."""
        sure, maybe = begins_anew(step, state)
        if sure or state.view is NOTHING:
            return [(NOTHING, 0.0, ())]
        here = (self._facing(state, step), 0.0, ())
        return [here, (NOTHING, 1.0, (("new-piece", True),))] if maybe else [here]

    def _facing(self, state: State, step: Step) -> View:
        """The row below as the hook meets it: turned for rows, not for rounds, unless the words say so."""
        view = state.view
        if view.foundation or view.ring:
            return view
        on_round = state.in_rounds and view.joined and step.side == "RS"  # the first row on a round that is not turned
        rounds = state.in_rounds and step.kind != "row" or state.joined or on_round
        turned = bool(getattr(view, "turned", False))
        if rounds and not turned:
            return view
        return view.flipped() if not turned else view

    def _readings(
        self, state: State, step: Step, view: View, extra: float, assumed: tuple[tuple[str, Any], ...], problems: list[Outcome],
    ) -> list[tuple[State, Outcome]]:
        body = self._body(state, step)
        kind = main_kind(body, state.kind)
        rounds = (state.in_rounds if view is not NOTHING else False) or step.kind == "rnd"
        which = (id(step), view, None if body is step.body else body, kind, rounds, state.rows, state.free, state.first_row, self.brief)
        held = dict(state.conventions)
        tried = self.alike.get(which, held)
        if tried is None:
            counted = bool(step.printed) and len(view.items) < LONGER[0]  # ways of very long rows would fill the memory
            words = (None if body is step.body else body, self.told(step).body, self.names, view, *which[3:]) if counted else None
            before = self.worked.get(words)
            row = Row(view, body, step.printed, self.definitions, kind, rounds, state.rows, state.free, state.first_row)
            tried = ways(row, Conventions(held), before if before is not None and before.holds(held) else None, brief=self.brief)
            if words is not None:
                self.worked[words] = tried
            self.alike.put(which, tried, step)
        self.spent += tried.work
        problems += [Outcome(step, None, FAILS, None, why.reason, why.facts, got=why.got) for why in tried.failed]
        return self._kept(state, step, tried.under(held), extra, assumed)

    def _kept(
        self, state: State, step: Step, found: list[Made], extra: float, assumed: tuple[tuple[str, Any], ...],
    ) -> list[tuple[State, Outcome]]:
        if not found:
            return []
        cleanest = min(found, key=lambda m: m.cost)
        if cleanest.agrees is False and cleanest.left == 0:
            found = [m for m in found if m.agrees is not True or m.cost <= cleanest.cost + excused(m)]  # no dear excuse for a wrong count
        ordered = sorted(found, key=lambda m: m.cost + (DISAGREES if m.agrees is False else 0.0))
        results, seen = [], set()
        for made in ordered:
            key = (made.view, made.conventions, made.pending)
            if key in seen:
                continue
            seen.add(key)
            cost = (made.cost + (DISAGREES if made.agrees is False else 0.0)) * (WEAK if step.doubt >= DOUBT else 1.0) + extra
            outcome = Outcome(step, made, cost, made.agrees, assumed=assumed)
            results.append((self._after(state, step, made), outcome))
            if len(results) >= KEEP:
                break
        return results

    def _body(self, state: State, step: Step) -> tuple[Node, ...]:
        """The row's nodes: the chain told at the end of the row before put in front, what "established" means filled in."""
        body = step.body
        if not body and step.order is not None and step.order.what == "continue":
            body = self._established(state)
        elif step.goes_on:
            lead, ends = state.frame
            plain = not any(isinstance(n, (Join, Mark)) for n in body)
            body = (*(lead if lead_chain(body) is None else ()), *body, *(ends if plain else ()))
        if state.pending is not None and lead_chain(body) is None and not has_ring(body):
            body = (state.pending, *body)
        return without_one(body)

    def _established(self, state: State) -> tuple[Node, ...]:
        change = state.last_change or 0
        lead, ends = state.frame
        if change == 0:
            return (*lead, Make("*same*", Num((1,)), Place("each", None, Thing("st"))), *ends)
        return (*lead, Evenly("inc" if change > 0 else "dec", Num((abs(change),))), *ends)

    def _after(self, state: State, step: Step, made: Made) -> State:
        view = made.view
        if made.turned and made.in_rounds and (made.joined or step.kind == "rnd"):
            view = view.flipped()
        elif made.stays and not made.in_rounds:
            view = replace(view, turned=True)  # as if it were turned already: the next row meets it as it was made
        before = state.view.stitches if state.view.items and not state.view.foundation else None
        change = made.count - before if before else None
        return State(
            view, made.conventions, made.pending, made.main_kind, made.in_rounds or (step.kind == "rnd" and made.view.items != b""),
            made.joined, state.rows + 1 if made.out else 0, change, (step.doubt >= DOUBT or by_shape(step.body)) and made.agrees is not True, made.free if made.free > 1 and made.turned else state.free,
            frame=self.told(step).body.frame if step.body and not step.goes_on else state.frame,
        )

    # --- when it does not go -------------------------------------------------------------------------------------

    def _assumed_state(self, state: State, step: Step) -> State:
        number = printed_total(step.printed)
        if number is None:
            return changed(state, pending=None, unsure=True)
        kind = main_kind(step.body, state.kind)
        return changed(state, view=plain_row(number, code(kind), joined=state.joined), pending=None, kind=kind)

    def _given_up(self, state: State, step: Step, problems: list[Outcome]) -> list[tuple[State, Outcome]]:
        problem = problems[0] if problems else Outcome(step, None, FAILS, None, "unreadable")
        from loopwright.working.beginnings import told

        if self.family and (apart := told(self.family)) is not None:
            problem = Outcome(step, None, FAILS, None, "open", {"family": f"any multiple of {apart[0]}{f' plus {apart[1]}' if apart[1] else ''} stitches"})
            self.family = ()
        elif state.view is NOTHING and problem.problem == "runs-out" and (lead_chain(step.body) is None or from_the_middle(step)):
            problem = Outcome(step, None, FAILS, None, "open")
        number = printed_total(step.printed)
        after = self._assumed_state(state, step)
        if number is None and problem.problem == "runs-out" and state.view.foundation and problem.got * 10 >= 9 * len(state.view.items) > 0:
            # a few stitches were missing: the next row goes on from those that were made
            after = changed(after, view=plain_row(problem.got, code(kind := main_kind(step.body, state.kind)), joined=state.joined), kind=kind)
        return [(after, changed(problem, step=step, as_printed=number))]

    def _unknown_start(self, state: State, step: Step, steps: list[Step], at: int) -> list[tuple[State, Outcome]]:
        """No row below, or none that fits: what the row uses tells how many stitches were there."""
        from loopwright.working.beginnings import solve

        results = []
        known = state.view.stitches if state.view.items and not state.view.foundation and not state.unsure and not step.gap else None
        for number, kind, counted, by in solve(self, state, step, steps, at):
            if known is not None and counted and 0 < abs(number - known) <= SLIP_OF_COUNT:
                continue  # a count that wants a stitch or two more than are there is a misprint, and no other piece
            chain = kind == "ch"
            view = foundation(number) if chain else plain_row(number, code(kind) if kind else 2, joined=step.kind == "rnd" or joins_round(step.body))
            problems: list[Outcome] = []
            assumed = (("start-chain" if chain else "start", number), ("start-by-count", counted), ("told-by", by))
            fresh = changed(state, view=view, pending=None, in_rounds=step.kind == "rnd" or joins_round(step.body))
            results += self._readings(fresh, step, view, FRESH if state.view is not NOTHING else 0.0, assumed, problems)
        # a start solved by a count that then disagrees is none; one that the stitches alone tell stands, and the count is wrong
        return [r for r in results if r[1].agrees is not False or not dict(r[1].assumed)["start-by-count"]]

    def count_after(self, state: State, steps: list[Step], number: int) -> int | None:
        """What the last of some rows makes when the first stands on a plain row of `number`; None where one cannot be worked."""
        first = steps[0]
        rounds = first.kind == "rnd" or joins_round(first.body)
        view = plain_row(number, code(main_kind(first.body, state.kind) or "sc"), joined=rounds)
        at = changed(state, view=view, pending=None, in_rounds=rounds)
        made: Made | None = None
        for step in steps:
            found = self._readings(at, changed(step, printed=()), self._facing(at, step), 0.0, (), [])
            if not found:
                return None
            at, outcome = min(found, key=lambda r: r[1].cost)
            made = outcome.made
        return made.count if made is not None else None

    def _until(self, old: Explanation, step: Step, steps: list[Step], at: int) -> Explanation:
        """ "Continue so until 54 sts": rows of the same change until the number is there; one for all where they do not come out."""
        assert step.order is not None
        target = step.order.until_sts.at(0) if step.order.until_sts is not None else None
        state = old.state
        rows = sum(1 for s in steps[at:] if s.item == step.item)
        if rows == 1 and target is not None and state.view.items and (found := rows_until(self, old, step, steps, at, target)) is not None:
            return found
        number = target if target is not None else state.view.stitches
        if rows > 1 and state.view.items:
            number = state.view.stitches + round((number - state.view.stitches) / rows)
        kind = step.order.kind or main_kind(step.body, state.kind)
        made = plain(state, step, number, kind)
        verdict = agrees(made, step.printed) if step.printed else None
        after = changed(state, view=made.view, pending=None, kind=kind)
        outcome = Outcome(step, made, 0.0, verdict, assumed=(("until", number),))
        return Explanation(after, old.cost + (DISAGREES if verdict is False else 0), outcome, old, step, old.rows)
