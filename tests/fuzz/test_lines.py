"""Random and mutated lines for a fixed small time: none raises, none is lost, none takes long. `make fuzz` runs many more."""

import itertools
import signal
import time

import pytest

from benchmarks.fuzz_long import MANY, trouble
from benchmarks.mutations import FIRST, lines
from loopwright.notation import read, write
from loopwright.source import Source

SECONDS = 4.0


@pytest.fixture(autouse=True)
def _alarm():
    def stop(_signal: int, _frame: object) -> None:
        raise TimeoutError

    before = signal.signal(signal.SIGVTALRM, stop)
    yield
    signal.signal(signal.SIGVTALRM, before)


@pytest.mark.parametrize("seed", [101, 102])
def test_lines_are_read_and_worked(seed):
    until = time.monotonic() + SECONDS
    ran = 0
    for line in itertools.takewhile(lambda _: time.monotonic() < until, lines(seed)):
        text = FIRST + line if ran % 2 else line
        found = trouble(text, ("us", "uk", "old", None)[ran % 4])
        ran += 1
        assert found is None or found.startswith(("slow", MANY)), f"{found}: {text!r}"  # time is held by `make fuzz`, on a quiet machine
    assert ran > 20


def test_reading_alone_is_quick():
    begin = time.process_time()
    for line in itertools.islice(lines(5), 1500):
        assert write(read(Source.of(line))) == Source.of(line).text
    assert time.process_time() - begin < 1500 * 0.02


def test_whole_texts_of_mutated_lines_are_kept():
    source = Source.of("\n".join(itertools.islice(lines(7), 400)))
    assert write(read(source)) == source.text


def test_the_same_seed_gives_the_same_lines():
    assert list(itertools.islice(lines(3), 50)) == list(itertools.islice(lines(3), 50))
