"""The process beside: one piece of work at a time, elsewhere or here, and faults where the result is asked for."""

from __future__ import annotations

import math
import os

import pytest

from loopwright.workshop.publish.beside import Beside


def test_work_is_done_in_another_process():
    with Beside() as beside:
        assert beside.submit(os.getpid).result(60) != os.getpid()
        assert beside.free


def test_work_is_done_here_where_no_process_shall_be_started():
    with Beside(own_process=False) as beside:
        assert beside.submit(os.getpid).result(0) == os.getpid()
        assert not beside.free


@pytest.mark.parametrize("own", [True, False])
def test_what_goes_wrong_is_raised_where_the_result_is_asked_for(own):
    with Beside(own_process=own) as beside:
        begun = beside.submit(int, "none")
        with pytest.raises(ValueError, match="invalid literal"):
            begun.result(60)


def test_it_is_not_free_while_it_works():
    with Beside() as beside:
        begun = beside.submit(math.factorial, 60_000)
        assert not beside.free or begun.done()
        begun.result(60)
        assert beside.free
