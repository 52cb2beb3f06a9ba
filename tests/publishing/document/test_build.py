"""Documents of the designs: parts in order, every row in every size, and what is reported."""

import dataclasses
import re
from pathlib import Path

import pytest

from loopwright.publishing.document import Edition, Figure, Instructions, Listing, Step, Table, in_brackets, of_size
from loopwright.publishing.document.build import build
from loopwright.publishing.document.pattern import Change, Photograph, Pictures
from loopwright.source import Source
from loopwright.wording import write
from loopwright.workshop.measure import Wanted
from loopwright.workshop.publish.gather import gather

ORDER = [
    "title", "sizes", "materials", "gauge", "abbreviations", "special", "notes", "schematic", "instructions", "charts", "finishing", "care",
    "cautions", "help", "changes", "version", "terms-of-use",
]


def _steps(publication):
    return [s for p in publication.parts for b in p.blocks if isinstance(b, Instructions) for s in b.steps]


def test_parts_stand_in_the_order_of_the_trade(design):
    found = [p.key for p in build(design.pattern, Pictures(), Edition()).parts]
    assert found == [k for k in ORDER if k in found]
    assert {"sizes", "instructions", "notes"} <= set(found)


def test_every_row_of_the_text_is_a_step(design):
    """The rows of the written pattern, all sizes in brackets, are those of the document."""
    document = design.pattern.document
    text = write(document, design.pattern.report, terms=document.terms)
    for step in _steps(build(design.pattern, Pictures(), Edition(terms=document.terms))):
        if isinstance(step, Step):
            assert f"{step.lead}{in_brackets(step.label)}" in text
            assert in_brackets(step.words) in text


def test_counts_are_those_that_were_worked(design):
    """The last count of every item, size by size, against the report itself; with its chains where the pattern counts them."""
    rows = design.pattern.report.rows
    for size in range(len(design.pattern.sizes)):
        publication = build(design.pattern, Pictures(), Edition(size=size))
        for step in _steps(publication):
            if isinstance(step, Step) and step.counts[0] is not None:
                last = [r for r in rows if design.pattern.line_of(r.span.start) == step.line and r.counts[size] is not None][-1]
                chained = last.with_chains is not None and last.printed is not None and last.printed[size] == last.with_chains[size]
                assert step.counts[0] == (last.with_chains if chained else last.counts)[size]
                assert step.each[0][-1] == step.counts[0]
        assert publication.sizes == (design.pattern.sizes[size],)


def test_one_size_of_all_is_the_size_alone(gathered):
    pattern = gathered("samphire-beanie").pattern
    every = _steps(build(pattern, Pictures(), Edition()))
    for size in (0, len(pattern.sizes) - 1):
        alone = [s for s in _steps(build(pattern, Pictures(), Edition(size=size))) if isinstance(s, Step)]
        told = [s.by_size[size] for s in every if isinstance(s, Step) and s.by_size[size] is not None]
        assert [(in_brackets(s.label), in_brackets(s.words)) for s in alone] == [(t.label, t.words) for t in told]


def test_numbers_of_the_size_table_fit_its_columns(design):
    for block in (b for p in build(design.pattern, Pictures(), Edition()).parts for b in p.blocks if isinstance(b, Table)):
        assert all(len(row.cells) == len(block.columns) for row in block.rows)


def test_idents_are_told_apart(design):
    publication = build(design.pattern, Pictures(), Edition())
    idents = [b.ident for p in publication.parts for b in p.blocks if isinstance(b, Instructions)]
    idents += [s.ident for s in _steps(publication) if isinstance(s, Step)]
    assert len(idents) == len(set(idents))


def test_a_measure_ends_the_section_that_it_is_of(gathered):
    pattern = gathered("avocet-bonnet").pattern
    publication = build(pattern, Pictures(), Edition(terms="uk"))
    back = next(b for p in publication.parts for b in p.blocks if isinstance(b, Instructions) and b.title == "Back")
    across = next(d for d in pattern.measures[0].dimensions if d.section == "Back" and d.name == "across")
    assert of_size(back.steps[-1].text, 0).startswith(f"Measure now: across {across.value_mm / 10:.1f} cm")


def test_words_alone_have_no_picture(gathered):
    publication = build(gathered("avocet-bonnet").pattern, Pictures(), Edition(words_only=True))
    assert not any(isinstance(b, Figure) for p in publication.parts for b in p.blocks)


def test_a_missing_photograph_is_reported_and_one_without_words_too(gathered):
    pattern = dataclasses.replace(
        gathered("avocet-bonnet").pattern, photographs=(Photograph("gone.jpg", "Back", "the back", cover=False, picture=None),),
    )
    assert any("gone.jpg" in note for note in build(pattern, Pictures(), Edition()).reported)


def test_changes_are_told(gathered):
    pattern = dataclasses.replace(gathered("avocet-bonnet").pattern, changes=(Change("Changes since version 1.0", "Rnd 7: 56, was 54"),))
    part = next(p for p in build(pattern, Pictures(), Edition()).parts if p.key == "changes")
    assert in_brackets(part.blocks[0].text) == "Changes since version 1.0:"
    assert in_brackets(part.blocks[1].items[0]) == "Rnd 7: 56, was 54"


def test_a_size_that_is_none_is_refused(gathered):
    with pytest.raises(IndexError):
        build(gathered("avocet-bonnet").pattern, Pictures(), Edition(size=99))


def test_a_language_without_words_is_refused(gathered):
    with pytest.raises(LookupError):
        build(gathered("avocet-bonnet").pattern, Pictures(), Edition(language="xx"))


@pytest.mark.parametrize(("told", "chains"), [("Ch a multiple of 4 plus 2.", ["26"]), ("Ch any length (I made 42).", ["42"]), ("Ch 30.", [])])
@pytest.mark.parametrize("language", ["en", "de", "sv"])
def test_a_chain_of_an_open_length_is_said_to_be_a_sample(told, chains, language):
    text = f"Cloth\nTerms: US\nGauge: 20 sc and 24 rows = 10 cm\n{told}\nRow 1: Sc in 2nd ch from hook and in each ch across."
    pattern = gather(Source.of(text, "cloth.txt"), Wanted(), Path()).pattern
    notes = next(p for p in build(pattern, Pictures(), Edition(language=language)).parts if p.key == "notes")
    assert re.findall(r"\b(\d\d)\b", " ".join(_plain(t) for b in notes.blocks if isinstance(b, Listing) for t in b.items)) == chains


def _plain(text):
    return " ".join(run if isinstance(run, str) else getattr(run, "text", "") for run in text)
