"""The writer of elements: what is given as text stays text, in elements and in attributes."""

from html import unescape
from xml.etree import ElementTree as ET

import pytest
from hypothesis import given
from hypothesis import strategies as st

from loopwright.publishing.marked import Markup, el, join, void
from loopwright.publishing.marked.blocks import linked, safe_address

WORDS = st.text(alphabet=st.one_of(st.sampled_from("<>&\"'/=[]();\\ *\n\t"), st.characters(exclude_categories=("Cs", "Cc"), exclude_characters="\ufffe\uffff")))


@given(WORDS, WORDS)
def test_any_text_comes_back_out_of_an_element_and_an_attribute(inside, attribute):
    made = ET.fromstring(el("p", inside, el("b", inside), title=attribute.replace("\n", " ").replace("\t", " ")))  # noqa: S314 - made just now
    assert "".join(made.itertext()) == inside * 2
    assert made.get("title") == attribute.replace("\n", " ").replace("\t", " ")
    assert [e.tag for e in made.iter()] == ["p", "b"]


@given(WORDS)
def test_links_lose_no_word(text):
    made = linked(f"see https://saltmarsh.example/a?b=1&c=2 or {text}")
    assert "".join(ET.fromstring(f"<p>{made}</p>").itertext()) == f"see https://saltmarsh.example/a?b=1&c=2 or {text}"  # noqa: S314 - as above


def test_what_xml_cannot_hold_is_left_out():
    assert el("p", "a\x00\x0b\x1f\ufffe\ud800b") == "<p>ab</p>"


def test_attributes():
    assert el("p", class_="a", aria_label="b", epub__type="c", hidden=True, lang=None, open=False) == '<p class="a" aria-label="b" epub:type="c" hidden=""></p>'
    assert void("img", alt="") == '<img alt="">'
    assert void("img", xml=True, alt="") == '<img alt=""/>'
    assert join(["<", Markup("<i>")]) == "&lt;<i>"
    for bad in ("p onload", "p>", "", "1"):
        with pytest.raises(ValueError, match="no name"):
            el(bad)


@pytest.mark.parametrize("address", ["javascript:alert(1)", "data:text/html,x", "//saltmarsh.example", "https://a b", "http://", " https://saltmarsh.example", 'https://x"y'])
def test_only_addresses_of_the_web_become_links(address):
    assert safe_address(address) is None


def test_an_address_is_a_link_without_the_stop_after_it():
    assert unescape(linked("Ask at https://saltmarsh.example/help.")) == 'Ask at <a href="https://saltmarsh.example/help">https://saltmarsh.example/help</a>.'
