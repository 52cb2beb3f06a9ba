"""`loopwright draw`: charts, schematics, pictures of the fabric and its solid shape, into a folder."""

from __future__ import annotations

import json
import sys
from dataclasses import asdict

from loopwright.cli import ends
from loopwright.cli.terminal import watched
from loopwright.workshop.draw import Sheet, draw
from loopwright.workshop.files import open_source, output_folder
from loopwright.workshop.measure import Wanted, measure_source


def run(name: str, wanted: Wanted, sheet: Sheet, folder: str, *, as_data: bool) -> int:
    """Draws a pattern; 1 when a finding is an error. Raises what `ends.refusal` words."""
    source = open_source(name)
    measured = measure_source(source, wanted)
    output_folder(folder)
    with watched() as progress:
        measured, files = draw(measured, wanted.with_progress(progress), sheet, folder)
    if as_data:
        data = {"version": 1, "title": measured.document.title, "files": [asdict(f) for f in files], "notes": list(measured.notes)}
        json.dump(data, sys.stdout, ensure_ascii=False)
        sys.stdout.write("\n")
    else:
        print("\n".join(f"{f.what:<10} {f.size:<12} {f.path}" for f in files) or "nothing was drawn")
        print("".join(f"note: {note}\n" for note in measured.notes), end="")
    return ends.found(source, measured.findings, silent=as_data)
