"""A document as one web page that needs nothing else: readable without script, from a file, in print."""

from loopwright.publishing.web.page import html

__all__ = ["html"]
