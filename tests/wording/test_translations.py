"""The designer's sentences out to a translator and back: numbers apart, checked, put in for every size."""

from typing import Any

import pytest

from loopwright.notation import read
from loopwright.source import Source
from loopwright.wording import voice_for, write, write_in
from loopwright.wording.translations import as_table, filled_in, from_table, identity, template, translation_of, troubles, units
from loopwright.working import work

TEXT = (
    "Ruff Cowl\nSizes: small, large\nTerms: US\n\nBody\nRnd 1: Ch 40 (48), join with sl st to form a ring.\n"
    "Rnd 2: Ch 1, sc in each ch around; join. (40 (48) sc)\nStuff the rim 2 times with MC before you go on.\n"
)
PLAIN = "Stuff the rim {1} times with MC before you go on"
GERMAN = "Vor dem Weiterhäkeln den Rand {1} Mal mit MC füllen"


def kept(text=TEXT, code="de", **how):
    document = read(Source.of(text))
    voice: Any = voice_for(document, "us", language=code, **how)
    write_in(voice, document, work(document))
    return voice.heard.kept


def test_numbers_and_lists_of_sizes_are_taken_out_and_put_back():
    plain, numbers = template("leave the last 13 (13, 15, –) sts and 2.5 cm unworked")
    assert plain == "leave the last {1} sts and {2} cm unworked"
    assert numbers == ("13 (13, 15, –)", "2.5")
    assert filled_in("{2} cm, {1} M, {9}", numbers) == "2.5 cm, 13 (13, 15, –) M, {9}"


def test_units_tell_where_each_stands_and_come_once():
    found = units([*kept(), *kept()])
    assert [(u.text, u.where, u.numbers) for u in found] == [(PLAIN, "Body", ("2",))]
    assert found[0].id == identity(PLAIN) == "u" + f"{int(identity(PLAIN)[1:], 16):016x}"


def test_a_translation_is_used_with_the_numbers_of_the_text():
    document = read(Source.of(TEXT))
    for size in (None, 0, 1):
        text = write(document, work(document), terms="us", language="de", size=size, translations={PLAIN: GERMAN})
        assert "Vor dem Weiterhäkeln den Rand 2 Mal mit MC füllen." in text
        assert "[en:" not in text
    assert translation_of("Stuff it.", {PLAIN: GERMAN}) is None
    assert translation_of("Stuff the rim 7 times with MC before you go on", {PLAIN: GERMAN}) == GERMAN.replace("{1}", "7")


def test_a_table_comes_back_as_it_went():
    table = as_table(units(kept(), {PLAIN: GERMAN}), "de")
    assert table.split("\n")[0] == "id\twhere\ttext\tnumbers\tde"
    assert from_table(table) == {PLAIN: GERMAN}
    assert from_table("\ufeff" + table.replace("\n", "\r\n")) == {PLAIN: GERMAN}
    odd = units([('He said "slip\tit",\nthen 3', "", "")], {'He said "slip\tit",\nthen {1}': "ja {1}"})
    assert from_table(as_table(odd, "fr")) == {odd[0].text: "ja {1}"}


@pytest.mark.parametrize("text", ["", "a\tb\n", "id\twhere\ttext\tnumbers\n", "id;where;text;numbers;de\n"])
def test_another_table_is_refused_in_words(text):
    with pytest.raises(ValueError, match="line 1: this is no table of translations"):
        from_table(text)


def test_a_broken_line_is_named():
    with pytest.raises(ValueError, match="line 3: 2 columns"):
        from_table("id\twhere\ttext\tnumbers\tde\nu1\tx\ty\t\tz\nu2\tx\n")


@pytest.mark.parametrize(("told", "kinds", "message"), [
    ({}, ["missing"], f"“{PLAIN}” is not translated"),
    ({PLAIN: GERMAN}, [], ""),
    ({PLAIN: "Den Rand mit MC füllen."}, ["numbers"], f"“{PLAIN}” is translated without {{1}}"),
    ({PLAIN: "Den Rand {1} Mal füllen."}, ["abbreviations"], f"“{PLAIN}” loses MC"),
    ({PLAIN: GERMAN, "Gone.": "Weg."}, ["stale"], "“Gone.” is no longer in the pattern: its translation is not used"),
])
def test_what_is_wrong_with_a_translation_is_said(told, kinds, message):
    found = troubles(units(kept()), told)
    assert [t.kind for t in found] == kinds
    assert [t.message for t in found] == ([message] if message else [])


def test_a_pattern_in_the_language_asked_for_needs_no_translation_of_its_prose():
    document = read(Source.of("Mütze\n\nKrone\nRd 1: 6 fM in einen Fadenring. (6 fM)\nDen Faden gut vernähen.\n"))
    if document.language == "de":
        text = write(document, work(document), terms="us", language="de")
        assert "[de:" not in text
