"""A square in every language, row by row: gender, case, number, and what melts together. Read aloud when it was set down here."""

import tomllib
from pathlib import Path

import pytest
from spoken import KEPT, own, rows_in, said  # type: ignore[import-not-found,unused-ignore]

from loopwright.terms.languages import LANGUAGES, language
from loopwright.wording.languages import runs

DATA = tomllib.loads(Path(__file__).with_name("square.toml").read_text(encoding="utf-8"))
SQUARE, ROWS = DATA["english"], DATA["rows"]
LANGUAGE = {code: language(code) for code in LANGUAGES}


@pytest.mark.parametrize("code", LANGUAGES)
def test_a_square_reads_as_it_should(code):
    assert rows_in(SQUARE, code) == ROWS[code]


def test_full_words_bend_with_their_article():
    german = rows_in(SQUARE, "de", full_words=True)
    assert "2 halbe Stäbchen in jede der nächsten 2 Maschen" in german[2]
    assert "in das erste halbe Stäbchen schließen" in german[2]
    swedish = rows_in(SQUARE, "sv", full_words=True)
    assert "1 halvstolpe i första maskan, 2 halvstolpar i var och en av de följande 2 maskorna" in swedish[2]
    dutch = rows_in(SQUARE, "nl", full_words=True)
    assert dutch[2].endswith("sluiten met 1 halve vaste in het eerste halve stokje. (16 steken)")


def test_repeats_are_spelled_out_and_one_size_stands_alone():
    assert "*" not in rows_in(SQUARE, "de", spelled_out=True)[1]
    text = said("samphire-beanie", "fr", 0)
    assert "Taille\u00a0: prématuré" in text
    assert "(" not in text[text.index("Tours 4 à 5") :].split("\n", maxsplit=1)[0].replace("(40 db)", "")


def test_names_of_sizes_and_parts_come_out_of_the_table():
    text = said("samphire-beanie", "it")
    assert "Taglie: prematuro, neonato, 3 mesi" in text
    assert "\nCupola\n" in text


def test_only_abbreviations_that_stand_in_the_text_are_listed():
    lines = said("samphire-beanie", "da").split("\n")
    listed = next(line for line in lines if line.startswith("Forkortelser: "))
    shorts = [part.split(" = ")[0] for part in listed.removeprefix("Forkortelser: ").split(", ")]
    body = own("\n".join(lines[lines.index("Puld") :]))
    assert shorts == ["bagl relstm", "forl relstm", "hstm", "km", "lm", "m", "omg"]
    assert all(s in body for s in shorts)


def test_the_designers_sentences_stay_and_are_marked_with_their_language():
    text = said("thrift-shawl", "es")
    assert "Notas: [en: A long wrap is not for a small child: the ends can catch.]" in text
    assert len(KEPT.findall(text)) == 6


def test_a_sentence_that_every_pattern_has_is_in_the_phrase_book():
    assert "Faden abschneiden und die Enden vernähen. [en: Gather the ring" in said("samphire-beanie", "de")


def test_cautions_of_ours_are_said_in_the_language():
    from loopwright.notation import read
    from loopwright.source import Source
    from loopwright.wording import write
    from loopwright.working import work

    document = read(Source.of("Dunlin Trivet\nYarn: acrylic\n\nRnd 1: 6 sc in magic ring. (6)\n"))
    text = write(document, work(document), terms="us", language="de")
    assert "Sicherheit: Polyacryl schmilzt. Baumwolle oder Wolle nehmen, doppelt, ohne Löcher.\nSicherheit: Vorschriften sind" in text


def test_a_language_that_there_is_not_is_named_with_those_there_are():
    with pytest.raises(ValueError, match="no language called 'xx': there are en, de, fr"):
        rows_in(SQUARE, "xx")


def test_what_stayed_can_be_told_apart():
    assert runs("Mit A, [en: sc [2 dc] in it], wenden.") == (("Mit A, ", ""), ("sc [2 dc] in it", "en"), (", wenden.", ""))
    assert runs("[de: Kurz.]") == (("Kurz.", "de"),)
    assert runs("[1 fM, 1 Lm] 3x") == (("[1 fM, 1 Lm] 3x", ""),)
    text = said("thrift-shawl", "nl")
    assert "".join(f"[{r.language}: {r.words}]" if r.language else r.words for r in runs(text)) == text


@pytest.mark.parametrize("code", LANGUAGES)
def test_a_chain_space_of_no_told_length_has_words(code):
    text = "X\nTerms: US\n\nCh 11.\nRow 1: Dc in 5th ch from hook, *ch 1, sk 1 ch, dc in next ch; rep from * to end, turn.\nRow 2: Ch 3, dc in each ch sp across.\n"
    last = rows_in(text, code)[-1]
    assert "[en" not in last
    assert LANGUAGE[code].nouns["ch-sp"].short in last


@pytest.mark.parametrize("code", LANGUAGES)
def test_special_stitches_whose_definition_is_read_are_worded(code):
    text = said("avocet-bonnet", code)
    assert "[en: picot" not in text
    assert "[en: V st" not in text


def test_special_stitches_told_in_moves_stay_and_are_marked():
    assert "[en: sp = ch 2, sk 2 sts or a ch-2 sp, dc in next dc]" in said("reedbed-panel", "de")


def test_an_address_is_not_there_to_translate():
    assert "[en: https://" not in said("avocet-bonnet", "de")
