"""Which files are made for what is asked, and what they are called."""

from loopwright.publishing.document import Edition
from loopwright.workshop.publish.editions import Asked, jobs, name_of

SIZES = ("newborn", "child", "adult L")


def _names(asked, sizes=SIZES, terms="us"):
    return [j.name for j in jobs(asked, "Samphire Beanie", sizes, terms)]


def test_one_edition_in_its_usual_formats():
    assert _names(Asked()) == ["samphire-beanie-a4.pdf", "samphire-beanie.html", "samphire-beanie.epub", "samphire-beanie.txt"]


def test_each_choice_is_in_the_name():
    edition = Edition(size=2, terms="uk", paper="letter", large_print=True, left_handed=True)
    assert name_of(edition, "pdf", "Samphire Beanie", SIZES, "us") == "samphire-beanie-adult-l-uk-large-print-left-handed-letter.pdf"


def test_a_package_holds_what_is_handed_out():
    found = _names(Asked(formats=(), package=True))
    assert len(found) == len(set(found)) == 2 + 3 + 1 + 3 + 2
    for name in ("samphire-beanie-letter.pdf", "samphire-beanie-large-print-a4.pdf", "samphire-beanie-uk-a4.pdf", "samphire-beanie-child-a4.pdf"):
        assert name in found


def test_editions_multiply():
    assert len(_names(Asked(papers=("a4", "letter"), terms=("us", "uk"), sizes=(0, 1), formats=("pdf",)))) == 8


def test_no_two_sizes_share_a_name():
    found = _names(Asked(sizes=(0, 1), formats=("text",)), ("2 years", "2 Years +"))
    assert len(found) == 2
