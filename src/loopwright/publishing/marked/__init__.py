"""Markup for web pages and EPUB: elements that escape what they hold, and the blocks of a document as elements."""

from loopwright.publishing.marked.blocks import block, figure_words, paragraphs
from loopwright.publishing.marked.element import Markup, el, join, void

__all__ = ["Markup", "block", "el", "figure_words", "join", "paragraphs", "void"]
