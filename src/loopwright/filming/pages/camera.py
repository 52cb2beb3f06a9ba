"""The page that stands beside the camera: one shot at a time in large letters, one big button, times of the shots for the log."""

from __future__ import annotations

import json
from html import escape

from loopwright.filming.shots import Plan
from loopwright.shipped import shipped_text

_KEYS = "Space or →: done. ←: back. R: once more. W: a word went wrong. C: copy the log."


def camera(plan: Plan, faces: str = "") -> str:
    """The page: works without a network, by touch and by keys. `faces`: rules that bring the type, CSS."""
    shots = [
        {
            "label": s.label, "kind": s.kind, "say": s.say, "show": s.show, "screen": s.screen, "count": s.count, "s": s.length_s,
            "section": plan.sections[s.section].title if s.section >= 0 else "",
        }
        for s in plan.shots
    ]
    data = json.dumps({"title": plan.title, "size": plan.size, "shots": shots}, ensure_ascii=False).replace("<", "\\u003c")
    style = faces + shipped_text("loopwright.filming.pages", "camera.css")
    script = shipped_text("loopwright.filming.pages", "camera.js")
    title = escape(plan.title)
    return (
        '<!doctype html>\n<html lang="en"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1">'
        f'<title>{title}, beside the camera</title><style>{style}</style></head><body><main class="cam">'
        f'<header><h1>{title}</h1><p id="where"></p></header>'
        '<div class="corner" role="status"><b id="label"></b><span id="count"></span></div>'
        '<section class="say" aria-live="polite"><h2>Say</h2><p id="say"></p><h2>Show</h2><p class="do" id="show"></p>'
        '<h2>On the picture</h2><p class="do" id="screen"></p></section>'
        '<ol class="shots" id="times" aria-label="Times of the shots so far"></ol>'
        '<div class="go"><button id="done" class="act ink"></button><div class="r"><button id="more" class="act">Once more</button>'
        f'<button id="wrong" class="act">A word went wrong</button></div><div class="r small"><button id="back">Back</button>'
        f'<button id="save">Save the log</button><button id="clear">Begin again</button></div><p class="keys">{escape(_KEYS)}</p></div>'
        '</main>'
        f'<script type="application/json" id="plan">{data}</script><script>{script}</script></body></html>\n'
    )
