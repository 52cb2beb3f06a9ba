"""A document as an EPUB 3 book: text that flows, reads aloud and grows, with its pictures told in words."""

from loopwright.publishing.epub.book import epub

__all__ = ["epub"]
