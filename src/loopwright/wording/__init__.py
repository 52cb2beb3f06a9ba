"""Instructions out of the tree, in any terms: all sizes in brackets or one size clean, abbreviated or in full words."""

from loopwright.wording.heading import heading
from loopwright.wording.said import Heading, HeadWords, ProseWords, RowWords, Said, SectionWords
from loopwright.wording.write import instructions, voice_for, write, write_in

__all__ = [
    "HeadWords", "Heading", "ProseWords", "RowWords", "Said", "SectionWords", "heading", "instructions", "voice_for", "write", "write_in",
]
