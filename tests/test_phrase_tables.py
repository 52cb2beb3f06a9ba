"""The tables of phrases: each entry finds its own example, and what is made of it keeps its length. The examples are our own."""

from __future__ import annotations

import re

import pytest

from loopwright.notation.asides import without_asides
from loopwright.notation.plainer import plainer
from loopwright.shipped import shipped_table

ASIDES = shipped_table("loopwright.notation", "asides.toml")["aside"]
SAID = shipped_table("loopwright.notation", "plainer.toml")["said"]


@pytest.mark.parametrize("one", ASIDES, ids=lambda one: one["as_in"][:40])
def test_an_aside_is_found_in_its_example(one: dict[str, str]):
    text = one["as_in"]
    found = re.search(one["finds"], text, re.IGNORECASE)
    assert found is not None
    assert found.group().strip()
    assert any(word in text.lower() for word in one["words"])
    quiet = without_asides(text, lambda m: " " * len(m.group()))
    assert quiet != text
    assert len(quiet) == len(text)


@pytest.mark.parametrize("one", SAID, ids=lambda one: one["as_in"][:40])
def test_other_words_for_the_same_are_put_plainly(one: dict[str, str]):
    text = one["as_in"]
    assert one["word"] in text.lower()
    plain = plainer(text)
    assert plain != text
    assert len(plain) == len(text)


def test_what_would_be_longer_stays_as_it_stands():
    assert plainer("Ch 3 (as dc), sc.") == "Ch 3 (= dc) , sc."
    assert plainer("Sc in each st.") == "Sc in each st."


def test_the_tables_tell_their_schema():
    assert [shipped_table("loopwright.notation", name)["schema"] for name in ("asides.toml", "plainer.toml", "words.toml")] == [1, 1, 1]
