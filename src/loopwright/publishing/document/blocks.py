"""Parts and blocks of a document: frozen data that knows nothing of pages."""

from __future__ import annotations

from typing import Literal

from loopwright.publishing.document.edition import Edition
from loopwright.publishing.document.running import Text
from loopwright.record import record

PartKey = Literal[
    "title", "sizes", "materials", "gauge", "abbreviations", "special", "notes", "schematic", "instructions", "charts", "finishing", "care",
    "cautions", "help", "changes", "version", "terms-of-use",
]


@record
class Picture:
    """A picture: SVG, PNG or JPEG. `name`: of the file it would be, letters, digits and hyphens with an ending; no two alike in a document.

    `width_mm`: how wide it is meant to be on paper, None for as wide as the column allows. `light`: of an SVG, that it is all ink.
    """

    name: str
    kind: Literal["svg", "png", "jpeg"]
    data: bytes
    width_mm: float | None = None


@record
class Paragraph:
    """Running words. `own`: the designer's own, in the language that the design is written in. `heading`: a small heading, "" for none."""

    text: Text
    own: bool = False
    heading: str = ""


@record
class Listing:
    """Items, one under the other. `own`: as of Paragraph."""

    items: tuple[Text, ...]
    ordered: bool = False
    own: bool = False


@record
class Facts:
    """Names with what belongs to them: "Hook" and "4 mm"; "hdc" and "half double crochet". `close`: short ones, for columns."""

    pairs: tuple[tuple[str, Text], ...]
    close: bool = False


@record
class TableRow:
    """A row of a table: its head and its cells; "" for an empty cell. `same`: all cells alike, so that one can stand for all.

    `group`: a head over this row and those that follow, "" where it goes on.
    """

    head: str
    cells: tuple[str, ...]
    group: str = ""

    @property
    def same(self) -> bool:
        """Whether all cells are alike."""
        return len(set(self.cells)) == 1 and len(self.cells) > 1


@record
class Table:
    """Rows under columns. `of_sizes`: the columns are the document's sizes. `note`: words below it."""

    caption: str
    corner: str
    columns: tuple[str, ...]
    rows: tuple[TableRow, ...]
    of_sizes: bool = False
    note: str = ""


@record
class Figure:
    """A picture with the words for who cannot see it (`alt`, short), a caption, and a full description ("" where the words tell it)."""

    picture: Picture
    alt: str
    caption: str = ""
    description: str = ""
    cover: bool = False


@record
class StepOfSize:
    """A row as one size has it. `lead`: what stands before its label."""

    label: str
    words: str
    count: str
    lead: str = ""


@record
class Step:
    """One row or round, or a range of them, to be ticked off.

    `ident`: for links, "crown-3". `lead`: what stands before the label ("For size adult only: "). `label`: "Rnds 5-9 (9, 10)" without a
    colon. `words`: what is worked. `count`: the count in brackets as written, "72 (72, 80) hdc", () for none. `counts`: stitches at its
    end per size of the document, as worked, None where not worked or not known. `by_size`: as each size of the document alone has it,
    None where it has no such row. `line`: of the design. `film`: address of its moment in the film, "".
    `each`: per size the stitches at the end of each row that it stands for, () where not known.
    """

    ident: str
    lead: str
    label: Text
    words: Text
    count: Text
    counts: tuple[int | None, ...]
    by_size: tuple[StepOfSize | None, ...]
    line: int
    film: str = ""
    each: tuple[tuple[int | None, ...], ...] = ()


@record
class Remark:
    """Words between rows; `by_size` as of Step. `own`: the designer's own."""

    text: Text
    by_size: tuple[str, ...] = ()
    own: bool = True


@record
class Instructions:
    """A section: title ("Sleeve (make 2)"; "" for rows before any heading), rows and remarks, photographs, address of its film.

    `own`: its name in the design, whatever the language of the document.
    """

    ident: str
    title: str
    steps: tuple[Step | Remark, ...]
    figures: tuple[Figure, ...] = ()
    film: str = ""
    own: str = ""


Block = Paragraph | Listing | Facts | Table | Figure | Instructions


@record
class Part:
    """A part of the document under a heading of its own. `key` names it whatever the language."""

    key: PartKey
    heading: str
    blocks: tuple[Block, ...]


@record
class Publication:
    """A whole document of one edition, ready to be laid out.

    `sizes`: names of the sizes that it holds; one for an edition of one size. `sample`: index of the size that the pattern was worked in.
    `language`: BCP 47 tag ("en-US", "en-GB", "de"). `version` and `date`: as the design says, "" for none; they stand on every page.
    `corrections`: address where corrections are told, "". `author`: as the design says. `draft`: why it is a draft, "" for none.
    `own_language`: tag of the words that are the designer's own.
    `reported`: what was missing or assumed, for the one who publishes. `phrases`: words of the page furniture by key.
    """

    title: str
    description: str
    edition: Edition
    language: str
    own_language: str
    sizes: tuple[str, ...]
    sample: int | None
    terms: str
    version: str
    date: str
    author: str
    corrections: str
    parts: tuple[Part, ...]
    phrases: dict[str, str]
    draft: str = ""
    reported: tuple[str, ...] = ()
