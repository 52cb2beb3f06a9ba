"""The plan as a page to print."""

from __future__ import annotations

from collections.abc import Iterator
from html import escape

from loopwright.filming.shots import Plan, Shot
from loopwright.filming.table import clock
from loopwright.shipped import shipped_text


def printed(plan: Plan, faces: str = "") -> str:
    """The page. `faces`: rules that bring the type, CSS."""
    style = faces + shipped_text("loopwright.filming.pages", "printed.css")
    size = "" if plan.size == "one size" else f", size {plan.size} on camera"
    head = f"{escape(plan.title)}: plan for the film"
    body = "".join(_parts(plan))
    return (
        f'<!doctype html>\n<html lang="en"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1">'
        f"<title>{head}</title><style>{style}</style></head><body><main><h1>{escape(plan.title)}</h1>"
        f'<p class="lead">Plan for the film{escape(size)}. {len(plan.shots)} shots, about {_minutes(plan.length_s)} on camera. '
        f"{escape(' '.join(plan.notes))}</p>{body}</main></body></html>\n"
    )


def _parts(plan: Plan) -> Iterator[str]:
    if plan.swaps:
        yield "<h2>Pieces to have ready</h2><ul>"
        for s in plan.swaps:
            count = "" if s.count is None else f", {s.count} sts"
            yield f"<li>{escape(s.section)}: worked to the end of {escape(s.label)}{count} <span>({_minutes(s.work_s)} to make)</span></li>"
        yield "</ul>"
    section = -2
    for shot in plan.shots:
        if shot.section != section:
            if section != -2:
                yield "</tbody></table>"
            section = shot.section
            title = plan.sections[section].title if section >= 0 else ("Before" if shot.number == 1 else "Last")
            yield f"<h2>{escape(title)}</h2><table><thead><tr><th>Shot</th><th>Say</th><th>Show</th><th>On the picture</th><th>Count</th>"
            yield "<th>Length</th></tr></thead><tbody>"
        yield _shot(plan, shot)
    yield "</tbody></table>" if plan.shots else ""


def _shot(plan: Plan, shot: Shot) -> str:
    label = plan.sections[shot.section].rows[shot.row].label if shot.row >= 0 else ""
    count = "" if shot.count is None else str(shot.count)
    return (
        f"<tr><td><b>{shot.number}</b><br>{escape(label or shot.kind)}</td><td>{escape(shot.say)}</td><td>{escape(shot.show)}</td>"
        f'<td>{escape(shot.screen)}</td><td class="n">{count}</td><td class="t">{clock(shot.length_s)}</td></tr>'
    )


def _minutes(seconds: float) -> str:
    minutes = max(1, round(seconds / 60))
    return f"{minutes} min" if minutes < 60 else f"{minutes // 60} h {minutes % 60:02} min"
