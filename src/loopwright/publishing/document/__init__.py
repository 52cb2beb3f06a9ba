"""The document: a pattern as parts in the trade's order, of blocks that every format can lay out."""

from loopwright.publishing.document.blocks import (
    Block,
    Facts,
    Figure,
    Instructions,
    Listing,
    Paragraph,
    Part,
    Picture,
    Publication,
    Remark,
    Step,
    StepOfSize,
    Table,
    TableRow,
)
from loopwright.publishing.document.edition import Design, Edition, Paper
from loopwright.publishing.document.running import Text, Varies, in_brackets, of_size, running

__all__ = [
    "Block", "Design", "Edition", "Facts", "Figure", "Instructions", "Listing", "Paper", "Paragraph", "Part", "Picture", "Publication",
    "Remark", "Step", "StepOfSize", "Table", "TableRow", "Text", "Varies", "in_brackets", "of_size", "running",
]
