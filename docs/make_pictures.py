# ruff: noqa: INP001 (a script, no package)
"""Every drawing of every design on one page, DIR/index.html: python docs/make_pictures.py [DIR]."""

from __future__ import annotations

import html
import sys
from pathlib import Path

from loopwright.source import Source
from loopwright.workshop.draw import File, Sheet, draw
from loopwright.workshop.files import write_whole
from loopwright.workshop.measure import Wanted, measure_source

DESIGNS = Path(__file__).parents[1] / "designs"
STYLE = (
    "body{font:16px/1.5 system-ui;margin:1rem;max-width:70rem}figure{margin:1rem 0}"
    "img{max-width:100%;border:1px solid #8884;background:#fff}"
)


def main() -> None:
    """Draws each design in its middle size, and lays the pictures on one page."""
    folder = Path(sys.argv[1] if len(sys.argv) > 1 else "pictures")
    parts: list[str] = []
    for path in sorted(DESIGNS.glob("*.txt")):
        source = Source.of(path.read_text(encoding="utf-8"), path.name)
        names = [m.size for m in measure_source(source).sizes]
        wanted = Wanted(sizes=[names[len(names) // 2]] if names != ["one size"] else None, shape=True, budget_s=30)
        measured, files = draw(measure_source(source, wanted), wanted, Sheet(), str(folder / path.stem))
        parts.append(f"<h2>{html.escape(measured.document.title or path.stem)}</h2>")
        parts += [_figure(f, folder) for f in files if not f.path.endswith(".glb")]
        sys.stdout.write(f"{path.stem}: {len(files)} files\n")
    page = f'<!doctype html><html lang="en"><meta charset="utf-8"><title>Drawings</title><style>{STYLE}</style>{"".join(parts)}</html>'
    write_whole(folder / "index.html", page)


def _figure(file: File, folder: Path) -> str:
    told = html.escape(file.description.split("\n", 1)[0])
    return f'<figure><img src="{Path(file.path).relative_to(folder)}" alt="{told}"><figcaption>{file.what}: {told}</figcaption></figure>'


if __name__ == "__main__":
    main()
