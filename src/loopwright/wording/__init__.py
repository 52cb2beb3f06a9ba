"""Instructions out of the tree, in any terms: all sizes in brackets or one size clean, abbreviated or in full words."""

from loopwright.wording.write import write

__all__ = ["write"]
