"""Publications made up for pages, whose rows can be told apart, and what is read back of a PDF."""

from __future__ import annotations

import io
from dataclasses import replace
from typing import Any

import pikepdf
import pypdfium2

from loopwright.publishing.document import (
    Edition,
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
    running,
)
from loopwright.publishing.document.build import furniture
from loopwright.publishing.phrases import Phrases


def make(
    sizes: int = 3, sections: int = 3, rows: int = 12, *, words: str = "Dc in next st, ch 1, miss next st, ", **changes: Any,
) -> Publication:
    """`rows` rows a section; each begins and ends with a word of its own: "begin0x3", "end0x3"."""
    names = tuple(f"size {chr(97 + i)}" for i in range(sizes))
    edition = changes.pop("edition", Edition())
    say = Phrases("en")
    blocks = tuple(
        Instructions(f"s{s}", f"Section{s}", (*(step(s, r, sizes, words) for r in range(rows)), Remark((f"Fasten off {s}.",), own=True)))
        for s in range(sections)
    )
    parts = (
        Part("title", "", (Paragraph(("Made up for a test.",), own=True),)),
        Part("sizes", "Sizes", (Table("Sizes", "cm", names, (TableRow("around", tuple(f"{20 + i} (8)" for i in range(sizes))),), of_sizes=True),)),
        Part("materials", "Materials", (Facts((("Hook", ("4 mm",)),)),)),
        Part("abbreviations", "Abbreviations", (Facts(tuple((f"st{i}", (f"stitch {i}",)) for i in range(9)), close=True),)),
        Part("notes", "Notes", (Listing((("Read this first.",), ("And this.",))),)),
        Part("instructions", "Instructions", blocks),
        Part("cautions", "Cautions", (Listing((("Keep away from fire.",),)),)),
    )
    found = Publication(
        title="Test Hat", description="Made up.", edition=edition, language="en-GB", own_language="en-GB", sizes=names, sample=0, terms="UK",
        version="2.1", date="2026-10-01", author="", corrections="https://saltmarsh.example/c", parts=parts, phrases=furniture(say),
    )
    return replace(found, **changes)


def step(section: int, row: int, sizes: int, words: str) -> Step:
    counts = tuple(100 * section + 10 + row + i for i in range(sizes))
    said = f"{counts[0]} ({', '.join(map(str, counts[1:]))})" if sizes > 1 else str(counts[0])
    text = f"begin{section}x{row} {words * (1 + row % 4)}end{section}x{row}."
    label = f"Rnd {row + 1}"
    alone = tuple(StepOfSize(label, text, f"{c} dc") for c in counts)
    return Step(f"s{section}-{row}", "", (label,), (text,), running(f"{said} dc", sizes), counts, alone, row)


def picture(width: int = 900, height: int = 600, lettering: str = "Rnd 1") -> Picture:
    svg = (
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {width} {height}" width="{width}" height="{height}"><style>text{{font:13px '
        f"'Atkinson Hyperlegible Next'}}</style><rect width=\"{width}\" height=\"{height}\" fill=\"none\" stroke=\"#000\"/>"
        f'<text x="20" y="30">{lettering}</text></svg>'
    )
    return Picture("chart.svg", "svg", svg.encode())


def figure(**size: Any) -> Figure:
    return Figure(picture(**size), "A chart of the crown.", "Crown")


def texts(pdf: bytes) -> list[str]:
    """The text of each page; numbers and units are kept together by a space that does not break."""
    return [page.get_textpage().get_text_bounded().replace("\u00a0", " ") for page in pypdfium2.PdfDocument(pdf)]


def opened(pdf: bytes) -> pikepdf.Pdf:
    return pikepdf.open(io.BytesIO(pdf))


def tags(pdf: pikepdf.Pdf) -> list[tuple[str, pikepdf.Dictionary]]:
    """Every element of the structure in reading order."""
    found: list[tuple[str, pikepdf.Dictionary]] = []

    def walk(element: pikepdf.Object) -> None:
        if isinstance(element, pikepdf.Array):
            for kid in element:
                walk(kid)
        elif isinstance(element, pikepdf.Dictionary) and "/S" in element:
            found.append((str(element.S)[1:], element))
            walk(element.get("/K", pikepdf.Array()))

    walk(pdf.Root.StructTreeRoot.K)
    return found
