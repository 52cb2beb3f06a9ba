"""Numbers as they are spoken, and the words of the trade in talk."""

import pytest

from loopwright.listening.captions import heard
from loopwright.listening.corrections import settled
from loopwright.listening.numbers import number
from loopwright.listening.words import trade_words


@pytest.mark.parametrize(("said", "value"), [
    ("thirty one", 31), ("a hundred and nineteen", 119), ("two hundred", 200), ("couple", 2), ("4.5", 4.5), ("two point five", 2.5),
    ("six and a half", 6.5), ("1,200", 1200), ("nineteen", 19), ("one hundred fifty", 150),
])
def test_a_number(said, value):
    words = said.split()
    assert number(words, 0) == (value, len(words), False)


@pytest.mark.parametrize(("said", "value"), [("third", 3), ("twenty first", 21), ("22nd", 22), ("fortieth", 40)])
def test_an_ordinal(said, value):
    words = said.split()
    assert number(words, 0) == (value, len(words), True)


@pytest.mark.parametrize("said", ["stitch", "hundredweight", "9999999", "", "."])
def test_no_number(said):
    assert number([said], 0) is None


def trade(text):
    return settled(trade_words(heard(text)))[0].text.split()


@pytest.mark.parametrize(("said", "words"), [
    ("single crow shay in each stitch", ["sc", "in", "each", "st"]),
    ("um you just half double crochet into the next one", ["hdc", "in", "next", "st"]),
    ("Round three: two in the next, one in the next.", ["rnd", "3", "2", "in", "next", "1", "in", "next"]),
    ("yarn over pull up a loop and pull through both", ["and"]),
    ("all the way round", ["around"]),
])
def test_words_of_the_trade(said, words):
    assert trade(said) == words


@pytest.mark.parametrize(("said", "words"), [
    ("chain thirty no wait one more because of the turn so thirty one", ["ch", "31"]),
    ("that's thirty one stitches no thirty stitches", ["gives", "30", "st"]),
    ("double crochet in the next sorry not double crochet half double crochet", ["hdc"]),
])
def test_what_is_taken_back_is_left_out(said, words):
    assert trade(said) == words


def test_counting_aloud_is_no_instruction():
    assert "2" not in trade("one two three four five six and done")


def test_a_no_that_takes_nothing_back():
    assert trade("single crochet in the next three no problem") == ["sc", "in", "next", "3"]
