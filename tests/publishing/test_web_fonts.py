"""The fonts inside web pages and books: cut from those of the drawings, with every letter of our languages and their licence."""

from pathlib import Path

import pytest

from tests.publishing.conftest import ALL
from tests.publishing.made import published

ROOT = Path(__file__).parents[2] / "src" / "loopwright"
FONTS = sorted((ROOT / "publishing" / "fonts").glob("*.woff2"))
LETTERS = "ÄÖÜäöüßẞéèêëàâîïôùûçœæÉÀñ¿¡áíóúåÅøØãõìò½¼¾×–—…’‘“”·•°€"


def opened(path: Path):
    ttlib = pytest.importorskip("fontTools.ttLib", reason="fonttools is needed to look into fonts")
    return ttlib.TTFont(path)


@pytest.mark.parametrize("path", FONTS, ids=lambda p: p.stem)
def test_letters_are_those_of_the_whole_font(path):
    whole, cut = opened(ROOT / "drawing" / "fonts" / f"{path.stem}.ttf"), opened(path)
    missing = [c for c in LETTERS if ord(c) in whole.getBestCmap() and ord(c) not in cut.getBestCmap()]
    assert missing in ([], ["ẞ"])
    for letter in "aR8½":
        a, b = (font.getGlyphSet()[font.getBestCmap()[ord(letter)]] for font in (whole, cut))
        assert a.width == b.width


@pytest.mark.parametrize("path", FONTS, ids=lambda p: p.stem)
def test_licence_and_copyright_are_inside_and_beside(path):
    names = opened(path)["name"]
    assert "Project Authors" in names.getDebugName(0)
    assert "Open Font License" in names.getDebugName(13)
    family = "Besley" if path.stem.startswith("Besley") else "AtkinsonHyperlegibleNext"
    assert "SIL OPEN FONT LICENSE" in (path.parent / f"OFL-{family}.txt").read_text(encoding="utf-8")


def test_every_character_of_our_designs_is_in_them():
    held = set(opened(next(p for p in FONTS if p.stem.endswith("400Regular"))).getBestCmap())
    used = {c for name in ALL for c in repr(published(name, words_only=True))}
    assert {c for c in used if ord(c) > 32 and ord(c) not in held} == set()
