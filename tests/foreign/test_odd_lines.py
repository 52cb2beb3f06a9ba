"""Mutated lines in other languages: none raises, none is lost, none hangs; and English lines stay English."""

import random
import time
from pathlib import Path

import pytest

from benchmarks.mutations import lines
from loopwright.notation import read, write
from loopwright.notation.foreign.detect import language_of
from loopwright.notation.foreign.translate import translated
from loopwright.source import Source, Span
from loopwright.terms.reading import LANGUAGES, language_named, table
from loopwright.workshop.check import check_source
from tests.foreign.test_patterns import patterns

DESIGNS = Path(__file__).parents[2] / "designs"
SECONDS = 3.0
SIGNS = list("*()[]{},;.:-–—=+/&0123456789 \n\t“„«»'’²½×†äßñçœÉ\u0301\ufeff😀")


def foreign_lines(language):
    return [line for _, text, _ in patterns(language) for line in text.split("\n")]


def mutated(language, seed):
    rng = random.Random(seed)  # noqa: S311
    known = foreign_lines(language)
    words = [w for line in known for w in line.split()]
    while True:
        line = rng.choice(known)
        for _ in range(rng.randint(1, 6)):
            at = rng.randrange(len(line) + 1)
            what = rng.randrange(6)
            if what == 0:
                line = line[:at] + rng.choice(SIGNS) + line[at:]
            elif what == 1:
                line = line[:at] + line[at + rng.randint(1, 9) :]
            elif what == 2:
                line = line[:at] + " " + rng.choice(words) + " " + line[at:]
            elif what == 3:
                line = line[:at] + rng.choice(known)
            elif what == 4:
                parts = line.split()
                rng.shuffle(parts)
                line = " ".join(parts)
            else:
                line = line[:at] + line[:at]
        yield line[:400]


@pytest.mark.parametrize("language", LANGUAGES)
def test_mutated_lines_are_read_and_worked(language):
    until = time.monotonic() + SECONDS
    first = foreign_lines(language)[:3]
    for ran, line in enumerate(mutated(language, 11)):
        if time.monotonic() > until:
            break
        source = Source.of("\n".join([*first, line]) if ran % 2 else line)
        document = read(source, language)
        assert write(document) == source.text
        report = check_source(source, language)
        for found in report.findings:
            assert 0 <= found.span.start <= found.span.end <= len(source.text), (found, source.text)
    assert ran > 20


@pytest.mark.parametrize("language", LANGUAGES)
def test_the_way_back_stays_in_the_line(language):
    for line in [line for _, line in zip(range(300), mutated(language, 5), strict=False)]:
        text = Source.of(f"A\n{line}\nB").text
        own = translated(text, language, said=True)
        assert own.made.count("\n") == text.count("\n")
        lines_made, lines_was = own.made.split("\n"), text.split("\n")
        at_made = at_was = 0
        for made, was in zip(lines_made, lines_was, strict=True):
            for a, b in ((0, len(made)), (0, len(made) // 2), (len(made) // 3, len(made))):
                if a < b:
                    back = own.back(Span(at_made + a, at_made + b))
                    assert at_was <= back.start <= back.end <= at_was + len(was)
            at_made, at_was = at_made + len(made) + 1, at_was + len(was) + 1


@pytest.mark.parametrize("language", LANGUAGES)
def test_a_long_line_does_not_hang(language):
    line = " ".join(foreign_lines(language))
    begin = time.process_time()
    for text in (line * 20, "(" * 3000, "2 Lm " * 2000, "* " * 4000, "en la m dans jede M " * 500, "1. " * 3000):
        assert write(read(Source.of(text), language)) == text
    assert time.process_time() - begin < 20


def test_english_is_not_taken_for_another_language():
    for _, line in zip(range(1500), lines(21), strict=False):
        assert language_of(line)[0] == "en", line
    for path in DESIGNS.glob("*.txt"):
        assert language_of(path.read_text(encoding="utf-8"))[0] == "en", path.name


@pytest.mark.parametrize("language", LANGUAGES)
def test_each_pattern_is_found_out(language):
    for name, text, _ in patterns(language):
        assert language_of(text) == (language, False), name


def test_names_of_languages():
    assert [language_named(n) for n in ("Deutsch", "FRANÇAIS", "español", "English", "es", "klingonisch")] == ["de", "fr", "es", "en", "es", None]
    with pytest.raises(ValueError, match="de, fr, es"):
        table("nl")


def test_prose_stays_as_it_is():
    text = "Strandläufer\nEine Mütze für den Strand, die man im Wind tragen kann.\n\nRd 1: 6 fM in einen Fadenring. (6)\nRd 2: 2 fM in jede M. (12)\n"
    document = read(Source.of(text))
    assert document.title == "Strandläufer"
    assert [i.text for i in document.items if type(i).__name__ == "Prose"][:2] == text.split("\n")[:2]
