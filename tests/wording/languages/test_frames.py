"""Every frame, stitch, caution and name has words in every language, and every frame can be filled."""

import re
import tomllib
from importlib.resources import files

import pytest
from fluent.syntax import FluentParser
from fluent.syntax.ast import Junk, VariableReference
from fluent.syntax.visitor import Visitor

from loopwright.terms import dialect
from loopwright.terms.languages import LANGUAGES, language
from loopwright.trade.cautions import cautions
from loopwright.wording.languages import phrasebook, unchecked
from loopwright.wording.languages.frames import SHARED, Words, filled, keys, source

ENGLISH = tomllib.loads(files("loopwright.terms").joinpath("phrases/en.toml").read_text(encoding="utf-8"))["short"]
BY_TABLE = {"corner", "blank"}  # these are things with a gender: they stand in the tables of terms
COMPOSED = ("sc2tog", "hdc2tog", "dc3tog", "fphdc", "bphdc", "fptr", "bpsc", "fpdc2tog")


class Slots(Visitor):
    """Names of the variables in a file of frames."""

    def __init__(self) -> None:
        self.names: set[str] = set()

    def visit_VariableReference(self, node: VariableReference) -> None:  # noqa: N802 - the library looks for the name of the class
        self.names.add(node.id.name)


def slots(code):
    found = Slots()
    for name in (SHARED, code):
        found.visit(FluentParser().parse(source(name)))
    return {re.sub(r"-[dgknpt]$", "", n) for n in found.names} - {"full"}


@pytest.mark.parametrize("code", LANGUAGES)
def test_every_instruction_of_the_english_writer_has_a_frame(code):
    wanted = {key for key, frame in ENGLISH.items() if isinstance(frame, str)} - BY_TABLE
    assert wanted - keys(code) == set()
    assert phrasebook.frames() - keys(code) == set()


@pytest.mark.parametrize("code", LANGUAGES)
def test_no_frame_is_miswritten(code):
    junk = [e.content for name in (SHARED, code) for e in FluentParser().parse(source(name)).body if isinstance(e, Junk)]
    assert junk == []


@pytest.mark.parametrize("code", LANGUAGES)
def test_every_frame_fills_for_every_gender_and_number(code):
    names = slots(code)
    for gender, number in (("m", 1), ("f", 2), ("n", 0), ("c", 5), ("p", 21)):
        values = {n: Words(f"⟨{n}⟩", gender=gender, number=number, together=number == 2, key="rnd_in_text") for n in names}
        for frame in keys(code):
            for full in (False, True):
                text = filled(code, frame, values, full=full)
                assert not {"{", "$"} & set(text.replace("{⟨name⟩}", "")), (frame, text)


@pytest.mark.parametrize("code", LANGUAGES)
def test_every_stitch_has_a_term(code):
    table = language(code)
    lacking = [k for k in (*dialect("us").terms, *COMPOSED) if not table.knows(k)]
    assert lacking == []


@pytest.mark.parametrize("code", LANGUAGES)
def test_short_forms_stand_for_one_stitch(code):
    shorts = [w.short for k, w in language(code).stitches.items() if w.short != w.long]
    assert len(shorts) == len(set(shorts))


@pytest.mark.parametrize("code", LANGUAGES)
def test_every_caution_has_a_sentence(code):
    wanted = {f"caution-{c.key}" for c in cautions()} | {"caution-defer"}
    assert wanted - keys(code) == set()


@pytest.mark.parametrize("code", LANGUAGES)
def test_cautions_keep_their_figures(code):
    for caution in cautions():
        text = filled(code, f"caution-{caution.key}", {})
        figures = re.findall(r"\d+(?:[.,]\d+)?", text)
        assert [f.replace(",", ".") for f in figures] == re.findall(r"\d+(?:\.\d+)?", caution.text), caution.key


def test_words_melt_together_as_the_language_has_it():
    made = {}
    for code, text in (("fr", "autour de le point V"), ("fr", "dans le arceau"), ("pt", "em a próxima"), ("it", "in la m"), ("it", "in lo spazio")):
        said = text
        for before, after in language(code).contractions:
            said = before.sub(after, said)
        made[text] = said
    assert made == {
        "autour de le point V": "autour du point V", "dans le arceau": "dans l'arceau", "em a próxima": "na próxima",
        "in la m": "nella m", "in lo spazio": "nello spazio",
    }


def test_terms_without_a_source_are_listed_once_in_order():
    found = unchecked("de", ["hdc", "fpdc", "ch", "fpdc", "rnd", "sc2tog"])
    assert [(u.key, u.short, u.sure) for u in found] == [("fpdc", "RStb v", "custom"), ("rnd", "Rd", "custom"), ("sc2tog", "2 fM zus", "custom")]
    assert [u.key for u in unchecked("sv", ["sc2tog", "hdc"])] == []  # both were seen
    with pytest.raises(ValueError, match="there are en, de, fr"):
        unchecked("xx", [])
