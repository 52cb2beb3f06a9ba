"""Pages of a publication as PDF, in three designs: columns of sizes, a ledger of one size, large print."""

from loopwright.publishing.errors import PageError
from loopwright.publishing.pages.setter import Pages, pdf, reported

__all__ = ["PageError", "Pages", "pdf", "reported"]
