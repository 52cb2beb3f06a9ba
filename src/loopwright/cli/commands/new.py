"""`loopwright new`: a design to begin from, or a design made out of a plain one-size pattern."""

from __future__ import annotations

import json
import sys
import textwrap
from pathlib import Path

from loopwright.cli.terminal import coloured
from loopwright.findings import Finding, render_text
from loopwright.findings.registry import hints, message, severity
from loopwright.grading import GaugeError
from loopwright.source import Source, Span
from loopwright.workshop.designs import find, shipped
from loopwright.workshop.files import CannotSave, open_source, write_whole
from loopwright.workshop.propose import CannotPropose, MadeDesign, Wanted, as_json, evidence, propose_design


def run(starting_point: str | None, out: str | None, *, force: bool, as_data: bool) -> int:
    """Writes a shipped design; without one lists them. 2 when there is none of that name."""
    if starting_point is None:
        print(_listed(as_data=as_data))
        return 0
    design = find(starting_point)
    if design is None:
        print(f"loopwright: there is no starting point {starting_point}: see the list with  loopwright new", file=sys.stderr)
        return 2
    if as_data:
        json.dump({"version": 1, "name": design.name, "title": design.title, "text": design.text}, sys.stdout, ensure_ascii=False)
        sys.stdout.write("\n")
    return _deliver(design.text, out, force=force, silent=as_data)


def run_from(pattern: str, wanted: Wanted, out: str | None, *, force: bool, as_data: bool) -> int:
    """Makes a design out of a plain pattern; 1 when the design has errors, 2 when none can be made."""
    source = open_source(pattern)
    try:
        made = propose_design(source, wanted)
    except CannotPropose as e:
        print(f"loopwright: {e}", file=sys.stderr)
        return 2
    except GaugeError as e:
        found = Finding(e.code, Span(0, 0), e.facts)
        way = 'give it with --gauge "17 hdc and 13 rnds = 10 cm"' if e.code == "G001" else "; ".join(hints(found))
        print(f"loopwright: {message(found)}; {way}", file=sys.stderr)
        return 2
    if as_data:
        json.dump(as_json(made), sys.stdout, ensure_ascii=False)
        sys.stdout.write("\n")
    else:
        print(evidence(made), file=sys.stdout if out else sys.stderr)
        print(file=sys.stdout if out else sys.stderr)
    code = _deliver(made.text, out, force=force, silent=as_data)
    return max(code, _findings(made))


def _findings(made: MadeDesign) -> int:
    """Prints what was found on the way, and in the design once it was graded; 1 for errors."""
    sys.stdout.flush()
    design = Source.of(made.text, made.sized.source.name)
    errors = [f for f in made.sized.findings if severity(f) == "error"]
    if made.findings:
        print(render_text.text(made.source, made.findings, colour=coloured(sys.stderr)), file=sys.stderr)
    if errors:
        print(render_text.text(design, errors, colour=coloured(sys.stderr)), file=sys.stderr)
    return int(bool(errors) or any(severity(f) == "error" for f in made.findings))


def _deliver(text: str, out: str | None, *, force: bool, silent: bool) -> int:
    """To a file, never over another one unless told; or to standard output."""
    if out is None:
        if not silent:
            sys.stdout.write(text)
        return 0
    path = Path(out)
    if path.exists() and not path.is_dir() and not force:
        raise CannotSave(f"{path} is there already: choose another name with -o, or replace it with --force")
    write_whole(path, text)
    if not silent:
        print(f"written: {path}\nnext:    loopwright grade {path}")
    return 0


def _listed(*, as_data: bool) -> str:
    designs = [d for d in shipped() if not d.as_worked]
    if as_data:
        points = [{"name": d.name, "title": d.title, "about": d.about} for d in designs]
        return json.dumps({"version": 1, "starting_points": points}, ensure_ascii=False)
    wide = max((len(d.name) for d in designs), default=0)
    lines = ["Starting points (loopwright new NAME -o my-design.txt):", ""]
    for d in designs:
        lines += textwrap.wrap(f"{d.about}.", 110, initial_indent=f"  {d.name:<{wide}}  ", subsequent_indent=" " * (wide + 4))
    return "\n".join([*lines, "", "Out of a pattern of your own: loopwright new --from PATTERN --worked-in SIZE -o my-design.txt"])
