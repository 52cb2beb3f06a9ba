"""The web page as text: nothing in it runs or fetches but what is ours, and every number is the fabric's."""

from __future__ import annotations

import base64
import hashlib
import json
import re
from dataclasses import replace
from html.parser import HTMLParser
from typing import Any

import pytest

from loopwright.publishing.document import Block, Figure, Instructions, Paragraph, Part, Picture, Publication, Step
from loopwright.publishing.marked.pictures import NotDrawnError, drawn
from loopwright.publishing.web import html
from tests.publishing.conftest import ALL
from tests.publishing.made import fabric_counts, published

HOSTILE = '</script><script>alert("x")</script><img src=x onerror=alert(1)>"&\'{}\u2028'
SAFE_SVG = '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 9 9"><style>.a{fill:red}</style><path class="a" d="M0 0H9"/></svg>'


class Seen(HTMLParser):
    """Elements with their attributes, in order, and the text of each script."""

    def __init__(self) -> None:
        super().__init__()
        self.elements: list[tuple[str, dict[str, str | None]]] = []
        self.inside: list[str] = []
        self.held: dict[str, list[str]] = {"script": [], "style": [], "title": [], "h1": []}

    def handle_starttag(self, tag, attrs):
        self.elements.append((tag, dict(attrs)))
        self.inside.append(tag)
        if tag in self.held:
            self.held[tag].append("")

    def handle_endtag(self, tag):
        while self.inside and self.inside.pop() != tag:
            pass

    def handle_data(self, data):
        for tag in self.inside[-1:]:
            if tag in self.held:
                self.held[tag][-1] += data


def seen(page: str) -> Seen:
    parser = Seen()
    parser.feed(page)
    return parser


def data_of(page: str) -> Any:
    return json.loads(seen(page).held["script"][0])


def with_hostile_words() -> Publication:
    """The beanie with hostile words wherever a designer can put some."""
    whole = published("samphire-beanie")
    parts = []
    for part in whole.parts:
        blocks: list[Block] = []
        for block in part.blocks:
            if isinstance(block, Instructions):
                steps = tuple(replace(s, words=(HOSTILE,), film="javascript:alert(1)") if isinstance(s, Step) else replace(s, text=(HOSTILE,)) for s in block.steps)
                blocks.append(replace(block, title=HOSTILE, steps=steps, film="javascript:alert(1)"))
            elif isinstance(block, Paragraph):
                blocks.append(replace(block, text=(HOSTILE,)))
            elif isinstance(block, Figure):
                blocks.append(replace(block, alt=HOSTILE, caption=HOSTILE, description=HOSTILE))
            else:
                blocks.append(block)
        parts.append(Part(part.key, HOSTILE if part.heading else "", tuple(blocks)))
    return replace(whole, title=HOSTILE, author=HOSTILE, version=HOSTILE, description=HOSTILE, sizes=(HOSTILE, *whole.sizes[1:]), parts=tuple(parts), draft=HOSTILE)


def test_words_of_a_designer_never_become_elements():
    page = html(with_hostile_words())
    plain = html(published("samphire-beanie"))
    names = [tag for tag, _ in seen(page).elements]
    assert names.count("script") == 2 == [t for t, _ in seen(plain).elements].count("script")
    assert not any(key.startswith("on") for _, attrs in seen(page).elements for key in attrs)
    assert seen(page).held["title"] == [f"{HOSTILE}, All sizes"]
    assert seen(page).held["h1"] == [HOSTILE]
    assert not any((attrs.get("href") or "").startswith("javascript") for _, attrs in seen(page).elements)
    assert data_of(page)["sizes"][0] == HOSTILE


def test_the_policy_lets_only_the_pages_own_style_and_script_through():
    page = html(published("avocet-bonnet"))
    held = seen(page).held
    policy = next(a["content"] for t, a in seen(page).elements if a.get("http-equiv") == "Content-Security-Policy") or ""
    for kind, text in (("script", held["script"][1]), ("style", held["style"][0])):
        digest = base64.b64encode(hashlib.sha256(text.encode()).digest()).decode()
        assert f"{kind}-src 'sha256-{digest}'" in policy
    assert policy.startswith("default-src 'none'")
    assert len(held["style"]) == 1
    assert not any("style" in attrs for _, attrs in seen(page).elements)


def test_nothing_is_asked_of_a_server():
    page = html(published("avocet-bonnet"))
    for tag, attrs in seen(page).elements:
        for key in ("src", "srcset", "data", "poster", "action"):
            assert (attrs.get(key) or "data:").startswith("data:"), (tag, key)
        if tag == "link":
            assert (attrs["href"] or "").startswith("data:")
    assert not re.search(r"url\((?!data:)|@import", page)


@pytest.mark.parametrize("name", ALL)
def test_figures_of_every_size_are_the_fabrics(name):
    """Each row's count in each size, row by row as it was worked."""
    publication = published(name)
    rows = data_of(html(publication))["rows"]
    for size in range(len(publication.sizes)):
        found: list[int] = []
        for variants, *of in rows:
            at = of[0][size] if of else 0
            if at >= 0 and len(variants[at]) > 1:
                n, each = variants[at][4:]
                found += each if isinstance(each, list) else [] if n is None else [n] * each
        assert found == fabric_counts(name, size)


def test_rows_read_without_the_script_as_they_are_printed():
    publication = published("samphire-beanie")
    page = html(publication)
    words = " ".join(re.sub(r"<[^>]+>", "", page.split("<main")[1].split("</main")[0]).split())
    assert "Rnds 4-5 (5, 6, 6, 7, 8, 9, 10, 10, 11): Continue as established, inc 8 sts each rnd. (40 (40, 48, 48, 56, 64, 72, 80, 80, 88) hdc)" in words
    hidden = {(a.get("class") or "").split(" ")[0] for _, a in seen(page).elements if "hidden" in a}
    assert hidden == {"place", "stations", "kept", "bar"}


def test_parts_stand_in_the_order_of_the_document():
    publication = published("avocet-bonnet")
    wanted = [p.key for p in publication.parts if p.key != "title"]
    assert [a["id"] for t, a in seen(html(publication)).elements if t == "section" and (a.get("class") or "").startswith("part ")] == wanted


def test_one_size_has_no_switch_and_says_which_it_is():
    page = html(published("samphire-beanie", size=6))
    assert "Samphire Beanie, child" in seen(page).held["title"]
    assert not any(a.get("type") == "radio" for _, a in seen(page).elements)
    assert data_of(page)["sizes"] == ["child"]


def test_ids_are_not_used_twice():
    for name in ("avocet-bonnet", "curlew-toy"):
        ids = [a["id"] for _, a in seen(html(published(name))).elements if "id" in a]
        assert len(ids) == len(set(ids)) > 10


def test_the_same_document_gives_the_same_page():
    assert html(published("avocet-bonnet")) == html(published("avocet-bonnet"))


def test_colour_and_typeface_are_taken_only_where_they_are_ones():
    publication = published("curlew-toy")
    good = html(replace(publication, edition=replace(publication.edition, accent="#0A6174", typeface="Marsh Sans")))
    assert "--accent:#0A6174" in good
    assert '--written:"Marsh Sans"' in good
    bad = html(replace(publication, edition=replace(publication.edition, accent="red}body{}", typeface='x";}</style>')))
    assert "red}body" not in bad
    assert len(seen(bad).held["style"]) == 1
    assert "</style>" not in bad.split("<style>")[1].split("</style></head>")[0]


@pytest.mark.parametrize(
    "svg",
    [
        "<svg xmlns='http://www.w3.org/2000/svg'><script>alert(1)</script></svg>",
        "<svg xmlns='http://www.w3.org/2000/svg' onload='alert(1)'/>",
        "<svg xmlns='http://www.w3.org/2000/svg'><foreignObject/></svg>",
        "<svg xmlns='http://www.w3.org/2000/svg'><path style='fill:red'/></svg>",
        "<svg xmlns='http://www.w3.org/2000/svg'><use href='https://marsh.example/x.svg#a'/></svg>",
        "<svg xmlns='http://www.w3.org/2000/svg'><style>@import 'https://marsh.example'</style></svg>",
        "<!DOCTYPE svg [<!ENTITY a 'b'>]><svg xmlns='http://www.w3.org/2000/svg'/>",
        "<svg xmlns='http://www.w3.org/2000/svg'><path></svg>",
        "no picture",
    ],
)
def test_a_drawing_that_holds_more_than_shapes_is_not_put_into_the_page(svg):
    picture = Picture("bad.svg", "svg", svg.encode())
    with pytest.raises(NotDrawnError):
        drawn(picture, "a picture")
    publication = published("curlew-toy")
    part = Part("charts", "Charts", (Figure(picture, "a picture"),))
    page = html(replace(publication, parts=(part,)))
    shown = next(a for t, a in seen(page).elements if t == "img")
    assert (shown["src"] or "").startswith("data:image/svg+xml;base64,")  # an image never runs anything
    assert shown["alt"] == "a picture"


def test_a_plain_drawing_is_an_element_with_its_words():
    made, style = drawn(Picture("a.svg", "svg", SAFE_SVG.encode()), 'a "red" line')
    assert made == '<svg viewBox="0 0 9 9" role="img" aria-label="a &quot;red&quot; line"><path class="a" d="M0 0H9"/></svg>'
    assert style == ".a{fill:red}"
