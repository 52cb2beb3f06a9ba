"""Work in processes of its own: the newest of a kind runs, what is outrun or takes too long is stopped, what is remembered is used."""

from __future__ import annotations

import asyncio
import os
import time
from concurrent.futures import ThreadPoolExecutor

import pytest

from loopwright.studio import workers as studio_workers
from loopwright.studio.desk import Desk
from loopwright.studio.workers import OutdatedError, TookTooLongError, WorkerError, Workers, WorkFailedError

SLEEP, PID = "time:sleep", "os:getpid"


def run(coroutine):
    """Runs it in a thread of its own: the browser that other tests hold open keeps a loop running in the main one."""
    with ThreadPoolExecutor(1) as thread:
        return thread.submit(asyncio.run, coroutine).result()


def together(work, most=2):
    """Runs a piece of a test with workers, and ends them."""
    async def whole():
        held = Workers(most)
        try:
            return await work(held)
        finally:
            held.close()

    return run(whole())


def test_work_is_done_in_another_process_that_is_used_again():
    async def work(held):
        return [await held.run("a", PID) for _ in range(3)]

    pids = together(work)
    assert len(set(pids)) == 1
    assert pids[0] != os.getpid()


def test_the_newest_of_a_kind_stops_the_one_before():
    async def work(held):
        await held.run("warm", PID)
        older = asyncio.create_task(held.run("a", SLEEP, 30))
        await asyncio.sleep(0.1)
        began = time.monotonic()
        newer = await held.run("a", "builtins:int", "5")
        with pytest.raises(OutdatedError):
            await older
        return newer, time.monotonic() - began

    value, took_s = together(work)
    assert value == 5
    assert took_s < 20


def test_work_that_is_no_longer_wanted_is_left_alone_for_its_patience_and_then_stopped():
    async def work(held):
        wanted = [True]
        await held.run("warm", PID)
        short = asyncio.create_task(held.run("a", SLEEP, 0.2, patience_s=10, fresh=lambda: wanted[0]))
        await asyncio.sleep(0.05)
        wanted[0] = False
        await short
        with pytest.raises(OutdatedError):
            await held.run("a", SLEEP, 30, fresh=lambda: wanted[0])
        wanted[0] = True
        long = asyncio.create_task(held.run("b", SLEEP, 30, patience_s=0.1, fresh=lambda: wanted[0]))
        await asyncio.sleep(0.05)
        wanted[0] = False
        with pytest.raises(OutdatedError):
            await long

    together(work)


def test_what_takes_too_long_or_goes_wrong_is_said():
    async def work(held):
        with pytest.raises(TookTooLongError):
            await held.run("a", SLEEP, 30, time_s=0.2)
        with pytest.raises(WorkFailedError, match="ValueError"):
            await held.run("a", "builtins:int", "no number")
        with pytest.raises(WorkFailedError, match="without a word"):
            await held.run("a", "os:_exit", 3)
        return await held.run("a", "builtins:int", "7")

    assert together(work) == 7


def test_pieces_of_one_home_are_done_in_one_process_one_after_the_other():
    async def work(held):
        first, other = await asyncio.gather(held.run("a", PID, home="hat"), held.run("b", PID, home="shawl"))
        again = await asyncio.gather(*(held.run(f"{n}", PID, home="hat") for n in range(4)))
        return first, other, again

    first, other, again = together(work)
    assert first != other
    assert set(again) == {first}


def test_a_home_that_is_busy_holds_up_nobody_else():
    async def work(held):
        await asyncio.gather(held.run("x", PID, home="hat"), held.run("y", PID, home="shawl"))
        busy = asyncio.create_task(held.run("a", SLEEP, 30, home="hat"))
        await asyncio.sleep(0.05)
        began = time.monotonic()
        await held.run("b", PID, home="shawl")
        busy.cancel()
        with pytest.raises(asyncio.CancelledError):
            await busy
        return time.monotonic() - began

    assert together(work) < 10


def test_processes_that_had_nothing_to_do_for_long_end(monkeypatch):
    async def work(held):
        pids = await asyncio.gather(*(held.run(f"{n}", PID, home=f"{n}") for n in range(3)))
        held.rest(keep=0)
        assert len(set(pids)) == 3
        alive = [p for p in pids if _lives(p)]
        monkeypatch.setattr(studio_workers, "IDLE_S", -1.0)
        held.rest(keep=1)
        return alive, [p for p in pids if _lives(p)]

    before, after = together(work, most=3)
    assert (len(before), len(after)) == (3, 1)


def _lives(pid: int) -> bool:
    try:
        os.kill(pid, 0)
    except ProcessLookupError:
        return False
    return True


class Counting(Workers):
    """Workers that make nothing, slowly, and count how often they are asked."""

    def __init__(self, outcomes):
        super().__init__()
        self.asked, self.outcomes = 0, outcomes

    async def run(self, kind, work, *given, **more):  # noqa: ARG002 - as those it stands for
        self.asked += 1
        await asyncio.sleep(0.02)
        outcome = self.outcomes.pop(0) if self.outcomes else '{"seen":1}'
        if isinstance(outcome, WorkerError):
            raise outcome
        return outcome


def test_many_windows_of_one_text_share_one_answer():
    counting = Counting([])

    async def work():
        desk = Desk(counting, counting)
        first = await asyncio.gather(*(desk.see(n, "hat", "text", None, lambda: True) for n in range(200)))
        again = await desk.see(201, "hat", "text", None, lambda: True)
        return {*first, again}

    assert run(work()) == {'{"seen":1}'}
    assert counting.asked == 1


def test_an_answer_that_came_to_nothing_for_one_window_is_made_for_the_next():
    counting = Counting([OutdatedError()])

    async def work():
        desk = Desk(counting, counting)
        return await asyncio.gather(*(desk.see(n, "hat", "text", None, lambda: True) for n in range(2)), return_exceptions=True)

    first, second = run(work())
    assert isinstance(first, OutdatedError)
    assert second == '{"seen":1}'


def test_answers_that_are_kept_are_bounded(monkeypatch):
    monkeypatch.setattr("loopwright.studio.desk.MOST_KEPT", 100)
    counting = Counting([])

    async def work():
        desk = Desk(counting, counting)
        for n in range(30):
            await desk.see(1, "hat", f"text {n}", None, lambda: True)
        newest = await desk.see(1, "hat", "text 29", None, lambda: True)
        asked = counting.asked
        return asked, newest, await desk.see(1, "hat", "text 0", None, lambda: True)

    asked, newest, oldest = run(work())
    assert (asked, counting.asked) == (30, 31)
    assert newest == oldest
