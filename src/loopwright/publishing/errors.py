"""What can go wrong when a document is laid out."""

from __future__ import annotations


class PageError(Exception):
    """A document that cannot be laid out; the message says what and where, and the way out."""
