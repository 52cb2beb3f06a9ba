"""Photographs over the wire: put into the folder by what they are, never over another; named, changed and taken out in the text; laid aside."""

import io

import pytest
from PIL import Image

from loopwright.model.tree import HeadLine
from loopwright.notation import read
from loopwright.source import Source
from loopwright.studio.photograph_lines import named
from loopwright.studio.settings import MOST_BODY, MOST_PHOTOGRAPH
from loopwright.workshop.publish.photographs import photographs

NAME = "samphire-beanie.txt"
AT = f"/api/publishing/{NAME}/photographs"
TEAL, RED = (10, 120, 90), (200, 40, 20)


def picture(kind="JPEG", colour=TEAL, size=(60, 40)):
    held = io.BytesIO()
    Image.new("RGB", size, colour).save(held, kind)
    return held.getvalue()


@pytest.fixture
def studio(open_studio):
    return open_studio(NAME)


def put(studio, called, data):
    return studio.post(f"{AT}?called={called}", content=data)


def line(studio, text, **given):
    found = studio.post(f"{AT}/line", json={"text": text, **given})
    assert found.status_code == 200, found.text
    return found.json()["text"]


def listed(studio, text):
    return studio.post(f"{AT}/list", json={"text": text}).json()


@pytest.mark.parametrize(("called", "kind", "name"), [
    ("crown.jpg", "JPEG", "crown.jpg"), ("crown.JPEG", "JPEG", "crown.jpg"), ("crown.png", "WEBP", "crown.webp"), ("crown", "PNG", "crown.png"),
    ("../../crown.jpg", "JPEG", "crown.jpg"), ("C:\\pictures\\crown (2);a:b.jpg", "JPEG", "crown -2-a-b.jpg"), ("", "JPEG", "photograph.jpg"),
    (".hidden.jpg", "JPEG", "hidden.jpg"), ("böschung.jpg", "JPEG", "böschung.jpg"), ("x" * 240 + ".jpg", "JPEG", "x" * 60 + ".jpg"),
])
def test_a_photograph_is_kept_by_what_it_is_under_a_safe_name(studio, called, kind, name):
    data = picture(kind)
    found = put(studio, called.replace(";", "%3B").replace("\\", "%5C"), data)
    assert (found.status_code, found.json()) == (201, {"file": name})
    assert (studio.folder / "photographs" / name).read_bytes() == data
    assert [p.name for p in (studio.folder / "photographs").iterdir()] == [name]


def test_a_name_that_is_taken_gets_a_number_and_the_same_picture_is_there_once(studio):
    (studio.folder / "crown.jpg").write_bytes(picture(colour=RED))
    assert put(studio, "crown.jpg", picture()).json()["file"] == "crown 2.jpg"
    assert put(studio, "crown.jpg", picture()).json()["file"] == "crown 2.jpg"
    assert put(studio, "crown.jpg", picture(colour=RED)).json()["file"] == "crown.jpg"
    assert (studio.folder / "crown.jpg").read_bytes() == picture(colour=RED)
    assert len(list((studio.folder / "photographs").iterdir())) == 1


@pytest.mark.parametrize("data", [b"", b"GIF89a" + bytes(40), b"<svg xmlns='http://www.w3.org/2000/svg'/>", picture()[:-60], picture("PNG")[:50], b"MZ" + bytes(99)])
def test_what_is_no_photograph_is_refused_with_a_word(studio, data):
    found = put(studio, "crown.jpg", data)
    assert found.status_code == 422
    assert "photograph" in found.json()["error"]
    assert not (studio.folder / "photographs").exists()


def test_photographs_may_be_larger_than_texts_and_are_bounded(studio):
    assert put(studio, "crown.jpg", bytes(MOST_BODY + 1)).status_code == 422
    assert put(studio, "crown.jpg", bytes(MOST_PHOTOGRAPH + 1)).status_code == 413
    assert studio.post(f"{AT}/list", content=bytes(MOST_BODY + 1)).status_code == 413


def test_one_is_added_changed_and_taken_out_and_the_rest_of_the_text_stays(studio):
    text = (studio.folder / NAME).read_text()
    one = line(studio, text, do="add", file="crown.jpg", where="cover", alt="")
    assert set(one.split("\n")) - set(text.split("\n")) == {"Photograph: crown.jpg (cover)"}
    two = line(studio, one, do="add", file="band.png", where="Band", alt="the band,\nlaid flat")
    assert "Photograph: crown.jpg (cover)\nPhotograph: band.png (Band): the band, laid flat\n" in two
    set_ = line(studio, two, do="set", number=0, was="crown.jpg", file="crown.jpg", where="Crown", alt="from above; flat")
    assert "Photograph: crown.jpg (Crown): from above; flat\n" in set_
    assert line(studio, set_, do="set", number=0, was="crown.jpg", where="cover") == set_.replace("(Crown)", "(cover)")
    assert line(studio, line(studio, set_, do="out", number=0, was="crown.jpg"), do="out", number=0, was="band.png") == text
    assert (studio.folder / NAME).read_text() == text


def test_several_on_one_line_are_changed_one_by_one(studio):
    text = "Hat\nPhotographs: a.jpg (cover); b.jpg (Crown): flat; c.jpg\n\nCrown\nRnd 1: 6 sc in magic ring. (6)\n"
    made = line(studio, text, do="set", number=1, was="b.jpg", file="b.jpg", where="", alt="from above; flat")
    assert "Photographs: a.jpg (cover); b.jpg: from above, flat; c.jpg\n" in made
    assert "Photographs: a.jpg (cover); c.jpg\n" in line(studio, text, do="out", number=1, was="b.jpg")


@pytest.mark.parametrize("text", [
    "Hat\n\nRnd 1: 6 sc in magic ring. (6)\n", "Rnd 1: 6 sc in magic ring. (6)\n", "Hat\n", "", "Hat\nGauge: 17 sc = 10 cm\n\nRnd 1: 6 sc in magic ring. (6)\n",
    "Mütze\nMaschenprobe: 17 fM und 20 Rd = 10 cm\n\nRd 1: 6 fM in den Fadenring. (6 fM)\nRd 2: 2 fM in jede M. (12 fM)\n",
])
def test_the_line_is_read_back_wherever_it_is_put(studio, text):
    made = line(studio, text, do="add", file="crown.jpg", where="cover", alt="the hat")
    assert listed(studio, made)["named"] == [{"file": "crown.jpg", "where": "cover", "alt": "the hat", "there": False}]
    assert [x for x in text.split("\n") if x] == [x for x in made.split("\n") if x and x != "Photograph: crown.jpg (cover): the hat"]


def test_they_are_read_as_publishing_reads_them(tmp_path):
    text = "Hat\nPhotograph: a b.jpg (Cover): one: two; three\nPhotographs: c.jpg; d.jpg (Top):;  e.jpg\nPhotograph: (x)\nPhotograph:\n\nRnd 1: 6 sc in magic ring. (6)\n"
    document = read(Source.of(text))
    heads = [i for i in document.items if isinstance(i, HeadLine)]
    ours = [(n.file, n.where.lower() == "cover", n.alt) for n in named(Source.of(text), document)]
    assert ours == [(p.file, p.cover, p.alt) for p in photographs(heads, tmp_path)]
    assert [o[0] for o in ours] == ["a b.jpg", "c.jpg", "d.jpg", "e.jpg"]


@pytest.mark.parametrize("given", [
    {"do": "add", "file": ""}, {"do": "add", "file": "../a.jpg"}, {"do": "add", "file": "a(1).jpg"}, {"do": "add", "file": "a.jpg", "where": "Top (make 2)"},
    {"do": "add", "file": "a.jpg", "alt": "x" * 700}, {"do": "set", "number": 0, "was": "a.jpg", "file": "a.jpg"}, {"do": "out", "number": -1, "was": ""}, {"do": "burn"}, {},
])
def test_what_no_line_can_say_is_refused(studio, given):
    found = studio.post(f"{AT}/line", json={"text": "Hat\n", **given})
    assert found.status_code == 422
    assert found.json()["error"]


def test_missing_ones_sections_and_others_of_the_folder_are_told(studio):
    put(studio, "here.jpg", picture())
    put(studio, "other.png", picture("PNG"))
    (studio.folder / "notes.jpg.txt").write_text("no photograph")
    text = "Hat\nPhotograph: here.jpg\nPhotograph: gone.jpg\n\nCrown (make 2)\nRnd 1: 6 sc in magic ring. (6)\n"
    found = listed(studio, text)
    assert [(n["file"], n["there"]) for n in found["named"]] == [("here.jpg", True), ("gone.jpg", False)]
    assert (found["sections"], found["others"]) == (["Crown"], ["other.png"])


def test_a_photograph_is_shown_small_and_only_from_the_folder(studio, tmp_path):
    (tmp_path / "secret.jpg").write_bytes(picture())
    (studio.folder / "photographs").mkdir()
    (studio.folder / "photographs" / "out.jpg").symlink_to(tmp_path / "secret.jpg")
    put(studio, "big.jpg", picture(size=(3000, 2000)))
    small = studio.get(f"{AT}/shown?file=big.jpg")
    with Image.open(io.BytesIO(small.content)) as image:
        assert image.size == (480, 320)
    assert studio.get(f"{AT}/shown?file=big.jpg", headers={"if-none-match": small.headers["etag"]}).status_code == 304
    for name in ("out.jpg", "../secret.jpg", str(tmp_path / "secret.jpg"), "", "none.jpg", "%00"):
        assert studio.get(f"{AT}/shown?file={name}").status_code == 404
    assert "out.jpg" not in listed(studio, "Hat\n")["others"]
    (studio.folder / "damaged.jpg").write_bytes(b"nothing")
    assert studio.get(f"{AT}/shown?file=damaged.jpg").status_code == 204


def test_what_no_design_names_is_laid_aside_and_never_lost(studio):
    put(studio, "crown.jpg", picture())
    assert studio.post(f"{AT}/aside", json={"file": "crown.jpg"}).json() == {"to": ".loopwright/laid aside/crown.jpg"}
    put(studio, "crown.jpg", picture(colour=RED))
    assert studio.post(f"{AT}/aside", json={"file": "crown.jpg"}).json() == {"to": ".loopwright/laid aside/crown 2.jpg"}
    assert (studio.folder / ".loopwright" / "laid aside" / "crown.jpg").read_bytes() == picture()
    put(studio, "crown.jpg", picture())
    (studio.folder / "other.txt").write_text("Other\nPhotograph: crown.jpg\n")
    found = studio.post(f"{AT}/aside", json={"file": "crown.jpg"})
    assert (found.status_code, "other.txt" in found.json()["error"]) == (422, True)
    assert (studio.folder / "photographs" / "crown.jpg").exists()


def test_a_studio_only_for_reading_shows_and_puts_nothing(open_studio):
    studio = open_studio(NAME, read_only=True)
    (studio.folder / "crown.jpg").write_bytes(picture())
    assert put(studio, "band.jpg", picture()).status_code == 422
    assert studio.post(f"{AT}/aside", json={"file": "crown.jpg"}).status_code == 422
    assert listed(studio, "Hat\n")["read_only"]
    assert studio.get(f"{AT}/shown?file=crown.jpg").status_code == 200
    assert sorted(p.name for p in studio.folder.iterdir()) == ["crown.jpg", NAME]
