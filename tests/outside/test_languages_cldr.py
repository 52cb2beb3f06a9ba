"""Plurals, decimals, units and lists of every language against CLDR, read through Babel (https://cldr.unicode.org, https://babel.pocoo.org).

The same numbers in every language: what the English text counts, each other text counts, row by row.
"""

import re
from collections import Counter

import pytest
from babel import Locale
from babel.numbers import format_decimal
from babel.units import format_unit

from loopwright.grading import grade
from loopwright.notation import read
from loopwright.source import Source
from loopwright.terms.languages import LANGUAGES, language
from loopwright.wording import RowWords, instructions, voice_for, write
from loopwright.wording.languages.frames import filled
from loopwright.wording.languages.numbers import decimal, length, listed
from loopwright.working import work
from loopwright.workshop.designs import shipped

DESIGNS = [s.name for s in shipped()]
KEPT = re.compile(r"\[en: (?:[^\[\]]|\[[^\[\]]*\])*\]")
# words that no text in these languages has unless it was left in English
ENGLISH = re.compile(
    r"\b(?:the|each|next|around|and|with|into|from|turn|join|skip|first|stitch|stitches|round|rounds|rows|sts|rnd|rnds|until|remain|"
    r"evenly|working|other|center|centre|across|twice|once|made|hook|yarn|slip|single|treble|inches|sizes|gauge|notes|abbreviations)\b", re.IGNORECASE)


@pytest.fixture(scope="module")
def graded():
    """Every shipped design with its blanks filled, by name."""
    found = {s.name: grade(read(Source.of(s.text)), work) for s in shipped()}
    return {name: (g.document, g.report) for name, g in found.items()}


@pytest.mark.parametrize("code", LANGUAGES)
def test_every_count_picks_the_plural_of_cldr(code):
    rule = Locale.parse(language(code).locale).plural_form
    wrong = [n for n in range(1001) if filled(code, "is_many", {"n": n}) != ("no" if rule(n) == "one" else "yes")]
    assert wrong == []


@pytest.mark.parametrize("code", LANGUAGES)
def test_a_counted_frame_says_one_and_many_as_cldr_divides_them(code):
    """Full words: a chain and chains."""
    rule = Locale.parse(language(code).locale).plural_form
    chain = language(code).stitches["ch"]
    for n in range(1001):
        assert filled(code, "chain", {"n": n}, full=True) == f"{n} {chain.long if rule(n) == 'one' else chain.plural}"


@pytest.mark.parametrize("code", LANGUAGES)
def test_decimals_are_written_as_cldr_has_them(code):
    locale = language(code).locale
    for tenths in range(2001):
        assert decimal(tenths / 10, code) == format_decimal(tenths / 10, format="0.#", locale=locale)
    assert "," in decimal(7.5, code)  # all eight have a decimal comma


@pytest.mark.parametrize("code", LANGUAGES)
def test_units_are_written_as_cldr_has_them(code):
    locale = language(code).locale
    for unit, name in (("cm", "length-centimeter"), ("mm", "length-millimeter"), ("m", "length-meter"), ("g", "mass-gram")):
        for n in (1, 2, 3.5, 10, 100):
            assert length(n, unit, code) == format_unit(n, name, "short", locale=locale)
    with pytest.raises(ValueError, match="no unit 'ell'"):
        length(1, "ell", code)


def test_a_list_has_the_language_s_word_before_the_last():
    made = {code: listed(["A", "B", "C"], code) for code in LANGUAGES}
    assert made == {
        "de": "A, B und C", "fr": "A, B et C", "es": "A, B y C", "nl": "A, B en C", "sv": "A, B och C", "da": "A, B og C", "pt": "A, B e C",
        "it": "A, B e C",
    }


@pytest.mark.parametrize("code", LANGUAGES)
def test_no_english_is_left_but_what_is_marked(code, graded):
    found = {}
    for name, (document, report) in graded.items():
        text = write(document, report, terms=document.terms, language=code)
        lines = KEPT.sub(" ", text).split("\n")[1:]  # the title is a name
        own = {"fr": {"single"}}.get(code, set())
        left = sorted({w.lower() for line in lines for w in ENGLISH.findall(line)} - own)
        if left:
            found[name] = left
    assert found == {}


def numbers(row):
    """Every number of a row but 1, which languages say where English has none, and those in words ("twice")."""
    return Counter(n for n in re.findall(r"\d+", row) if n != "1")


@pytest.mark.parametrize("code", LANGUAGES)
@pytest.mark.parametrize("name", DESIGNS)
def test_numbers_are_those_of_the_english_text_row_by_row(code, name, graded):
    document, report = graded[name]
    for size in (None, 0, len(document.sizes) - 1):
        english = [p for p in instructions(voice_for(document, document.terms, size), document, report) if isinstance(p, RowWords)]
        others = [p for p in instructions(voice_for(document, document.terms, size, language=code), document, report) if isinstance(p, RowWords)]
        assert [p.item for p in english] == [p.item for p in others]
        wrong = [(a.text, b.text) for a, b in zip(english, others, strict=True) if numbers(a.text) != numbers(b.text)]
        assert wrong == []
