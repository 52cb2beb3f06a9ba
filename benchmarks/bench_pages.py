"""What pages are timed and weighed by. Each function gives lines: what it is, the figure, ">=" or "<=", the target."""

from __future__ import annotations

import html
import re
import subprocess
import sys
import time
from collections.abc import Iterator
from dataclasses import replace
from functools import cache
from pathlib import Path

from benchmarks.clock import best
from benchmarks.figures import DESIGNS, Lines, blanket, worked
from loopwright.drawing.chart import ChartOptions, charts
from loopwright.grading.gauge import StitchSizes
from loopwright.publishing.document import (
    Block,
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
    Table,
    in_brackets,
)
from loopwright.publishing.document.build import build
from loopwright.publishing.document.pattern import Pictures
from loopwright.source import Source
from loopwright.workshop.measure import Wanted
from loopwright.workshop.publish.gather import gather
from loopwright.workshop.publish.pictures import Drawings

TEN_SIZES = "samphire-beanie"
CHARTS, SYMBOLS = 60, 2000
_MEGABYTE_KB = 1024
_PEER_STYLE = (
    "@page{size:A4;margin:18mm}body{font:10.5pt sans-serif}table{border-collapse:collapse}td,th{border:1px solid;padding:1mm}"
    "svg{width:160mm}"
)


@cache
def package() -> tuple[Publication, ...]:
    """What a designer hands out of a hat in ten sizes: both papers, large print, the other terms, each size alone. No cover picture."""
    path = DESIGNS / f"{TEN_SIZES}.txt"
    found = gather(Source.of(path.read_text(encoding="utf-8"), path.name), Wanted(), DESIGNS)
    studio = Drawings(found.measured)
    editions = [Edition(), Edition(paper="letter"), Edition(large_print=True), Edition(terms="uk")]
    editions += [Edition(size=i) for i in range(len(found.pattern.sizes))]
    return tuple(build(found.pattern, Pictures(studio.charts(e), studio.schematics(e)), e) for e in editions)


def setting() -> Lines:
    """The package in threads; three of its documents against an HTML-to-PDF library; the book of charts, its time and memory."""
    from loopwright.publishing.pages import Pages

    documents = package()
    begin = time.process_time()
    with Pages() as pages:
        pages.pdfs(documents)
    yield f"pages of {len(documents)} documents in two threads, s of processor", time.process_time() - begin, "<=", 2.0
    with Pages() as pages:
        yield from against_html(pages, (documents[0], documents[2], documents[5]))
    seconds, megabytes = _book_alone()
    yield f"book of {CHARTS} charts of {SYMBOLS:,} symbols, s", seconds, "<=", 5.0
    yield "  its memory at most, MB", megabytes, "<=", 400.0


def against_html(pages: object, documents: tuple[Publication, ...]) -> Lines:
    """The same words, tables and drawings as tagged PDF by WeasyPrint; ours with a new title each time: none is remembered."""
    import weasyprint

    turn = iter(range(10_000))
    for name, document in zip(("all sizes", "large print", "one size"), documents, strict=True):
        text = as_html(document)

        def ours(document: Publication = document) -> object:
            return pages.pdf(replace(document, title=f"{document.title} {next(turn)}"))  # type: ignore[attr-defined]

        def theirs(text: str = text) -> object:
            return weasyprint.HTML(string=text).write_pdf(pdf_variant="pdf/ua-1", pdf_tags=True)

        mine = best(ours, 3)
        yield f"pages, {name} ({mine * 1000:.0f} ms), times as fast as HTML to PDF", best(theirs, 1) / mine, ">=", 5.0


def as_html(document: Publication) -> str:
    """A plain page with the same content, without any design of its own."""
    body = "".join(f"<h2>{html.escape(p.heading)}</h2>{''.join(map(_block, p.blocks))}" for p in document.parts)
    title = html.escape(document.title)
    return f'<html lang="en"><head><title>{title}</title><style>{_PEER_STYLE}</style></head><body><h1>{title}</h1>{body}</body></html>'


def _block(block: Block) -> str:
    return "".join(_pieces(block))


def _pieces(block: Block) -> Iterator[str]:
    if isinstance(block, Paragraph):
        yield f"<p>{html.escape(in_brackets(block.text))}</p>"
    elif isinstance(block, Listing):
        yield f"<ul>{''.join(f'<li>{html.escape(in_brackets(i))}</li>' for i in block.items)}</ul>"
    elif isinstance(block, Facts):
        yield f"<dl>{''.join(f'<dt>{html.escape(n)}</dt><dd>{html.escape(in_brackets(t))}</dd>' for n, t in block.pairs)}</dl>"
    elif isinstance(block, Table):
        heads = "".join(f"<th>{html.escape(c)}</th>" for c in ("", *block.columns))
        rows = "".join("<tr>" + "".join(f"<td>{html.escape(c)}</td>" for c in (r.head, *r.cells)) + "</tr>" for r in block.rows)
        yield f"<table><tr>{heads}</tr>{rows}</table>"
    elif isinstance(block, Instructions):
        yield f"<h3>{html.escape(block.title)}</h3><table><tr><th>Row</th><th>Work</th><th>Count</th></tr>"
        for s in block.steps:
            said = ("", s.text, ()) if isinstance(s, Remark) else (in_brackets(s.label), s.words, s.count)
            cells = (str(said[0]), in_brackets(said[1]), in_brackets(said[2]))
            yield "<tr>" + "".join(f"<td>{html.escape(c)}</td>" for c in cells) + "</tr>"
        yield "</table>"
    elif isinstance(block, Figure) and block.picture.kind == "svg":
        yield f"<figure>{re.sub('<style>.*?</style>', '', block.picture.data.decode(), flags=re.DOTALL)}</figure>"


def book() -> Publication:
    """A book of charts, each of about so many symbols and no two alike."""
    fabric = worked(blanket(SYMBOLS)).fabrics[0]
    drawn = charts(fabric, StitchSizes(8.0, 9.0), ChartOptions(whole=True))[0]
    figures = tuple(
        Figure(Picture(f"chart-{i}.svg", "svg", drawn.svg.replace(">Row", f">{i} Row", 1).encode()), f"Chart {i}, in rows.", f"Chart {i}")
        for i in range(CHARTS)
    )
    first = package()[0]
    return replace(first, title="Sixty Charts", parts=(first.parts[0], Part("charts", "Charts", figures)))


def _book_alone() -> tuple[float, float]:
    """Seconds and megabytes of the book in a process of its own, over what the process holds before."""
    told = subprocess.run([sys.executable, "-m", "benchmarks.bench_pages"], capture_output=True, check=True, text=True).stdout.split()
    return float(told[0]), float(told[1])


def _main() -> None:
    from loopwright.publishing.pages import Pages

    made = book()
    begin = time.process_time()
    with Pages() as pages:
        pages.pdf(made)
    print(time.process_time() - begin, _most_held_kb() / _MEGABYTE_KB)


def _most_held_kb() -> int:
    """The most this process held, in kB; what the process that began it held does not count, as it does in what getrusage tells."""
    told = re.search(r"VmHWM:\s*(\d+)", Path("/proc/self/status").read_text(encoding="ascii"))
    if told is None:
        raise RuntimeError("the system does not tell")
    return int(told[1])


if __name__ == "__main__":
    _main()
