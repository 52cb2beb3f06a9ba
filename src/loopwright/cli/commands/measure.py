"""`loopwright measure`: how big, how it lies, how much yarn, how long; and its shape."""

from __future__ import annotations

import json
import sys

from loopwright.cli import ends
from loopwright.cli.terminal import watched
from loopwright.workshop.files import open_source, output_folder
from loopwright.workshop.measure import Measured, Wanted, measure_source


def run(name: str, wanted: Wanted, shapes_in: str | None, *, have: str | None, other_yarn: str | None, as_data: bool) -> int:
    """Measures a pattern; 1 when a finding is an error. Raises what `ends.refusal` words."""
    source = open_source(name)
    measured = _with_yarn(measure_source(source, wanted), have, other_yarn)
    written: list[dict[str, str]] = []
    if shapes_in is not None:
        from loopwright.workshop.shapes import with_shapes, write_shapes

        output_folder(shapes_in)
        with watched() as progress:
            measured = with_shapes(measured, wanted.with_progress(progress))
        written = write_shapes(measured, shapes_in)
    if as_data:
        from loopwright.workshop.measure_json import as_json

        json.dump({**as_json(measured), **({"files": written} if wanted.shape else {})}, sys.stdout, ensure_ascii=False, allow_nan=False)
        sys.stdout.write("\n")
    else:
        from loopwright.workshop.measure_table import text

        print(text(measured), end="")
        print("".join(f"written: {file['path']}\n" for file in written), end="")
    return ends.found(source, measured.findings, silent=as_data)


def _with_yarn(measured: Measured, have: str | None, other_yarn: str | None) -> Measured:
    """What yarn at hand makes, and how many balls of another yarn it takes, where that was asked for."""
    if have is None and other_yarn is None:
        return measured
    from loopwright.workshop.yarn_at_hand import with_other_yarn, with_yarn_at_hand

    measured = measured if have is None else with_yarn_at_hand(measured, have)
    return measured if other_yarn is None else with_other_yarn(measured, other_yarn)
