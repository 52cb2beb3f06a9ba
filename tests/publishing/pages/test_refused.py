"""Words that try to be more than words, characters that no font holds, and what cannot be set: clear words."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest

from loopwright.publishing.document import Edition, Instructions, Paragraph, Part, Picture, Remark
from loopwright.publishing.pages import PageError, Pages, reported
from loopwright.publishing.pages.ink import NEEDED, accent, contrast
from tests.publishing.pages.made_up import figure, make, opened, texts

SIGNS = r"""*bold* _it_ #panic("x") $x^2$ @ref <label> \ [b] {c} `raw` ~ "q" 'q' // c /* d */ = - + 100% & https"""
CODE = '#read("/etc/passwd") #import "main.typ": * #sys.inputs "} #eval("1+1")'


def _with(publication, **changes):
    """The first row of the first section, changed."""
    at = next(i for i, part in enumerate(publication.parts) if part.key == "instructions")
    section: Any = publication.parts[at].blocks[0]
    section = replace(section, steps=(replace(section.steps[0], **changes), *section.steps[1:]))
    part = replace(publication.parts[at], blocks=(section, *publication.parts[at].blocks[1:]))
    return replace(publication, parts=(*publication.parts[:at], part, *publication.parts[at + 1 :]))


@pytest.mark.parametrize("edition", [Edition(), Edition(large_print=True), Edition(paper="phone")])
def test_markup_stays_plain(pages, edition):
    publication = _with(replace(make(edition=edition), title=f"Hat {SIGNS}"), words=(SIGNS,))
    pdf = pages.pdf(publication)
    flat = "".join("".join(texts(pdf)).split())
    wanted = "".join(SIGNS.split())
    assert flat.count(wanted) >= 2
    read = opened(pdf)
    assert str(read.docinfo["/Title"]) == f"Hat {SIGNS}"


def test_code_in_words_is_words(pages):
    pdf = pages.pdf(_with(make(), words=(CODE,)))
    flat = "".join("".join(texts(pdf)).split())
    assert "".join(CODE.split()) in flat
    assert "root:" not in flat


def test_an_address_of_a_script_is_no_link(pages):
    bad = Part("help", "Help", (Paragraph(("See javascript:alert(1) or https://saltmarsh.example/help.",), own=True),))
    publication = make()
    pdf = opened(pages.pdf(_with(replace(publication, parts=(*publication.parts, bad)), film="javascript:alert(2)")))
    links = [str(a.A.URI) for page in pdf.pages for a in page.get("/Annots", []) if "/A" in a and "/URI" in a.A]
    assert links == ["https://saltmarsh.example/help"]


def test_a_missing_sign_is_named_with_its_word_and_row(pages):
    with pytest.raises(PageError, match=r"Section0, Rnd 1: no font .*'☃' \(U\+2603, snowman\) in 'st☃,'"):
        pages.pdf(_with(make(), words=("Dc in next st☃, turn.",)))


def test_a_missing_sign_in_a_remark_is_named_with_its_section(pages):
    publication = make()
    parts = tuple(
        replace(p, blocks=(Instructions("a", "Crown", (Remark(("Turn 漢.",)),)),)) if p.key == "instructions" else p for p in publication.parts
    )
    with pytest.raises(PageError, match=r"Crown: .*U\+6F22"):
        pages.pdf(replace(publication, parts=parts))


def test_a_missing_sign_in_a_drawing_is_told(pages):
    publication = make()
    chart = Part("charts", "Charts", (figure(lettering="Rnd ☃"),))
    with pytest.raises(PageError, match=r"picture chart\.svg: .*'☃' \(U\+2603, snowman\)"):
        pages.pdf(replace(publication, parts=(*publication.parts, chart)))


def test_signs_that_mean_the_same_are_taken(pages):
    found = " ".join(texts(pages.pdf(_with(make(), words=("Ch‑2 space, 4″ and 3′\u200b.",)))))
    assert "Ch-2 space, 4\" and 3'." in found


def test_letters_of_the_languages_are_all_there(pages):
    words = "äöüßÄÖÜ éèêëàâçîïôûùœæ ñáíóú¿¡ ãõ åøæ ½¼¾ × – — … “” „“ «» • ° € £"
    flat = "".join("".join(texts(pages.pdf(_with(make(), words=(words,))))).split())
    assert "".join(words.split()) in flat


@pytest.mark.parametrize("signs", ["\x00", "a\x07b", "\ud800", "\u202e reversed", "tab\there", "line\nbreak", "\U0010ffff"])
def test_odd_characters_are_dropped_or_told(pages, signs):
    try:
        pdf = pages.pdf(_with(make(1, 1, 1), words=(f"Dc {signs} on.",)))
    except PageError as error:
        assert "no font" in str(error)  # noqa: PT017 - either way is right; silence is not
    else:
        assert "on." in " ".join(texts(pdf))


def test_a_typeface_that_was_not_given_is_told(pages):
    with pytest.raises(PageError, match="typeface 'Heron Sans' is not among the fonts that are given"):
        pages.pdf(make(edition=Edition(typeface="Heron Sans")))


@pytest.mark.parametrize(("data", "words"), [(b"", "no TrueType"), (b"wOF2" + bytes(40), "WOFF"), (b"\x00\x01\x00\x00" + bytes(60), "damaged")])
def test_a_file_that_is_no_font_is_told(data, words):
    with pytest.raises(PageError, match=words):
        Pages([data])


def test_a_font_file_that_is_not_there_is_told(tmp_path):
    with pytest.raises(PageError, match=r"heron\.ttf: No such file"):
        Pages([tmp_path / "heron.ttf"])


def test_her_own_typeface_is_used_and_ours_stands_in(tmp_path):
    from importlib.resources import files

    from fontTools.ttLib import TTFont

    path = tmp_path / "heron.ttf"
    font = TTFont(str(files("loopwright.drawing.fonts") / "Besley_500Medium.ttf"))
    for record in font["name"].names:
        if record.nameID in (1, 3, 4, 6, 16):
            record.string = "Heron" if record.nameID != 6 else "Heron-Regular"
    font.save(path)
    with Pages([path]) as own:
        pdf = opened(own.pdf(make(edition=Edition(typeface="Heron"))))
    names = {str(f.BaseFont) for page in pdf.pages for f in page.Resources.Font.values()}
    assert any("Heron" in n for n in names)
    assert any("Besley" in n for n in names)


@pytest.mark.parametrize("asked", ["teal", "#12", "#GGGGGG", "rgb(1,2,3)"])
def test_an_accent_that_is_no_colour_is_told(pages, asked):
    with pytest.raises(PageError, match="is no colour"):
        pages.pdf(make(edition=Edition(accent=asked)))


@pytest.mark.parametrize("asked", ["#FFFFFF", "#FFD700", "#7FB", "#88CCEE"])
def test_a_pale_accent_is_darkened_and_reported(asked):
    taken, told = accent(asked)
    rgb = tuple(int(taken[i : i + 2], 16) for i in (1, 3, 5))
    assert contrast(rgb) >= NEEDED
    assert taken in told
    assert reported(make(edition=Edition(accent=asked))) == (told,)


def test_a_dark_accent_stays():
    assert accent("#0A6174") == ("#0A6174", "")
    assert reported(make()) == ()


def test_contrast_is_as_defined():
    assert contrast((0, 0, 0)) == pytest.approx(21.0)
    assert contrast((255, 255, 255)) == pytest.approx(1.0)
    assert contrast((118, 118, 118)) == pytest.approx(4.54, abs=0.01)  # the lightest grey that WCAG's own examples let pass


@pytest.mark.parametrize("picture", [Picture("crown.jpg", "jpeg", b"not a picture"), Picture("c.svg", "svg", b"<svg/>")])
def test_a_damaged_picture_is_named(pages, picture):
    publication = make()
    part = Part("charts", "Charts", (replace(figure(), picture=picture),))
    with pytest.raises(PageError, match=picture.name):
        pages.pdf(replace(publication, parts=(*publication.parts, part)))


def test_an_enormous_picture_is_brought_down(pages):
    import io

    from PIL import Image

    held = io.BytesIO()
    Image.effect_noise((3000, 3000), 80).convert("RGB").save(held, "JPEG", quality=95)
    publication = make()
    part = Part("charts", "Charts", (replace(figure(), picture=Picture("crown.jpg", "jpeg", held.getvalue())),))
    pdf = pages.pdf(replace(publication, parts=(*publication.parts, part)))
    assert len(pdf) < len(held.getvalue()) / 2


def test_no_room_for_what_is_laid_out_is_told(monkeypatch):
    def full(*_args, **_kwargs):
        raise OSError(28, "No space left on device")

    monkeypatch.setattr("pathlib.Path.write_bytes", full)
    with pytest.raises(PageError, match=r"no room for .*No space left"):
        Pages()


def test_nothing_is_left_behind(tmp_path, monkeypatch):
    import tempfile

    monkeypatch.setattr(tempfile, "tempdir", str(tmp_path))
    with Pages() as opened_pages:
        opened_pages.pdf(make(1, 1, 1))
        assert list(tmp_path.iterdir())
    assert list(tmp_path.iterdir()) == []
