# ruff: noqa: INP001 (a script, no package)
"""Every drawing of every design, and the chart of every stitch pattern, on one page, DIR/index.html: python docs/make_pictures.py [DIR].

The page shows everything as wide as a column, charts once more as wide as a telephone, and mirrored for the left hand.
"""

from __future__ import annotations

import argparse
import html
import sys
from collections.abc import Sequence
from pathlib import Path

from studio_pictures import studio_pictures

from loopwright.drawing.chart import charts
from loopwright.grading import grade
from loopwright.grading.gauge import StitchSizes
from loopwright.notation import read
from loopwright.source import Source
from loopwright.trade.patterns import StitchPattern, patterns
from loopwright.working import work
from loopwright.workshop.draw import File, Sheet, draw
from loopwright.workshop.files import write_whole
from loopwright.workshop.measure import Wanted, measure_source

DESIGNS = Path(__file__).parents[1] / "designs"
STYLE = (
    "body{font:16px/1.5 system-ui;margin:1rem;max-width:70rem}figure{margin:1rem 0}"
    "img{max-width:100%;border:1px solid #8884;background:#fff}"
    ".small{display:inline-block;width:360px;vertical-align:top;margin:0 1rem 1rem 0}"
)
SWATCH = StitchSizes(8.0, 9.0)  # mm: a stitch of a pattern that tells no gauge
REPEATS = 3


def main() -> None:
    """Draws each design in its middle size, and lays the pictures on one page."""
    told = argparse.ArgumentParser(description="Draws every design and every place of the studio, and lays the pictures on one page.")
    told.add_argument("folder", nargs="?", default="pictures", type=Path, help="where they go (pictures)")
    folder: Path = told.parse_args().folder
    parts: list[str] = []
    for path in sorted(DESIGNS.glob("*.txt")):
        source = Source.of(path.read_text(encoding="utf-8"), path.name)
        names = [m.size for m in measure_source(source).sizes]
        wanted = Wanted(sizes=[names[len(names) // 2]] if names != ["one size"] else None, shape=True, budget_s=30)
        measured, files = draw(measure_source(source, wanted), wanted, Sheet(), str(folder / path.stem))
        parts.append(f"<h2>{html.escape(measured.document.title or path.stem)}</h2>")
        parts += [_figure(f, folder) for f in files if not f.path.endswith(".glb")]
        _, mirrored = draw(measured, wanted, Sheet(what=("chart",), left_handed=True), str(folder / path.stem))
        parts += [_figure(f, folder, small=True) for f in (*(f for f in files if f.what == "chart"), *mirrored)]
        sys.stdout.write(f"{path.stem}: {len(files)} files\n")
    parts.append("<h2>Stitch patterns</h2>")
    parts += [_figure(f, folder, small=True) for pattern in patterns() for f in _swatch(pattern, folder)]
    _write(parts, folder)  # what is drawn can be looked at, whatever becomes of the screens
    screens = studio_pictures(folder / "studio")
    parts += ["<h2>The studio</h2>"] if screens else []
    parts += [f'<figure><img src="studio/{p.name}" alt="{p.stem}"><figcaption>{p.stem}</figcaption></figure>' for p in screens]
    _write(parts, folder)


def _write(parts: Sequence[str], folder: Path) -> None:
    page = f'<!doctype html><html lang="en"><meta charset="utf-8"><title>Drawings</title><style>{STYLE}</style>{"".join(parts)}</html>'
    write_whole(folder / "index.html", page)


def _swatch(pattern: StitchPattern, folder: Path) -> list[File]:
    """Charts of a stitch pattern, three repeats wide and as high as its text."""
    graded = grade(read(Source.of(pattern.text.replace("{chain}", str(pattern.chain.at(REPEATS))))), work)
    found = []
    for n, chart in enumerate(charts(graded.report.fabrics[0], SWATCH), 1) if graded.report and graded.report.fabrics[0] else ():
        path = folder / "patterns" / f"{pattern.key}-{n}.svg"
        path.parent.mkdir(parents=True, exist_ok=True)
        write_whole(path, chart.svg)
        found.append(File(str(path), f"chart of {pattern.key}", "", None, chart.description))
    return found


def _figure(file: File, folder: Path, *, small: bool = False) -> str:
    told = html.escape(file.description.split("\n", 1)[0])
    src = Path(file.path).relative_to(folder)
    return f'<figure{" class=small" * small}><img src="{src}" alt="{told}"><figcaption>{file.what}: {told}</figcaption></figure>'


if __name__ == "__main__":
    main()
