"""What colours the stitches of a scene are drawn in, by what is asked of them."""

from __future__ import annotations

import re
import tomllib
from collections.abc import Mapping
from functools import cache
from typing import Literal

import numpy as np
from numpy.typing import NDArray

from loopwright.drawing.scene.body import Body, Floats
from loopwright.drawing.scene.yarn import stitch_of_node
from loopwright.drawing.tones import tone, usual
from loopwright.model.fabric import Fabric
from loopwright.record import record
from loopwright.shipped import shipped_text

By = Literal["yarn", "row", "kind", "strain", "side"]
Colour = tuple[int, int, int]
Bytes = NDArray[np.uint8]


@record
class Painted:
    """Colours of the stitches (stitches, 3), of the wrong side (stitches, 3), and what each colour stands for."""

    right: Bytes
    wrong: Bytes
    legend: tuple[tuple[str, Colour], ...]


@cache
def _table() -> dict[str, list[Colour]]:
    text = shipped_text("loopwright.drawing.scene", "colours.toml")
    raw = tomllib.loads(text)
    del raw["schema"]
    return {key: [hexed(v) for v in ([value] if isinstance(value, str) else value)] for key, value in raw.items()}


def hexed(text: str) -> Colour:
    """A colour written #rrggbb. Raises ValueError where it is not."""
    if not re.fullmatch(r"#[0-9a-fA-F]{6}", text):
        raise ValueError(f"'{text}' is no colour: write it as #rrggbb")
    return int(text[1:3], 16), int(text[3:5], 16), int(text[5:7], 16)


def named(name: str) -> Colour | None:
    """The colour of a name of CSS ("teal", "light blue") or of #rrggbb; None where it says no colour ("MC", "A")."""
    from PIL import ImageColor  # noqa: PLC0415 -- only where a pattern names colours

    for word in (name, name.replace(" ", "").replace("-", "")):
        if word.isalnum() or re.fullmatch(r"#[0-9a-fA-F]{6}", word):
            try:
                red, green, blue = ImageColor.getrgb(word)[:3]
            except ValueError:
                continue
            return red, green, blue
    return None


def muted(colours: Bytes) -> Bytes:
    """The wrong side's tone: a little darker and half as bright in colour, so that the sides are told apart and still belong together."""
    grey = colours.astype(np.float64) @ np.asarray([0.2126, 0.7152, 0.0722])
    return _bytes(0.80 * (0.5 * colours + 0.5 * grey[:, None]))


def paint(fabric: Fabric, body: Body, by: By = "yarn", palette: Mapping[str, Colour] | None = None) -> Painted:
    """The colour of every stitch.

    `by`: "yarn": the yarn's own colour, from `palette` by the colour's name in the pattern, else by what the name says, else one of our
    own. "row": dark to light from the first row to the last, every other row a shade lighter. "kind": one colour per kind of stitch,
    the most frequent first. "strain": purple where stitches are squeezed, white at rest, orange where they are stretched. "side": blue
    for the right side, vermilion for the wrong one. The sets for "kind", "strain", "side" are safe for colour-blind readers.
    """
    if by == "side":
        right, wrong = _table()["right"][0], _table()["wrong"][0]
        sides = [np.tile(np.asarray(colour, dtype=np.uint8), (len(fabric), 1)) for colour in (right, wrong)]
        return Painted(sides[0], sides[1], (("right side", right), ("wrong side", wrong)))
    if by == "strain":
        colours, legend = _by_strain(body)
        return Painted(colours, colours, legend)
    make = {"yarn": _by_yarn, "row": _by_row, "kind": _by_kind}
    if by not in make:
        raise ValueError(f"'{by}' is no way to colour a scene; there are yarn, row, kind, strain and side")
    colours, legend = make[by](fabric, palette or {})
    return Painted(colours, muted(colours), legend)


def _by_yarn(fabric: Fabric, palette: Mapping[str, Colour]) -> tuple[Bytes, tuple[tuple[str, Colour], ...]]:
    chosen: list[Colour] = []
    for at, name in enumerate(fabric.colours):
        own = tone(name)
        known = palette.get(name) or (hexed(own) if own else named(name) if name else None)
        chosen.append(known or (hexed(usual(at - 1)) if name else _table()["undyed"][0]))
    used = np.frombuffer(bytes(fabric.colour), dtype=np.uint8)
    legend = tuple((fabric.colours[i] or "yarn", chosen[i]) for i in sorted(set(used.tolist())))
    return np.asarray(chosen, dtype=np.uint8)[used], legend


def _by_row(fabric: Fabric, _: Mapping[str, Colour]) -> tuple[Bytes, tuple[tuple[str, Colour], ...]]:
    last = max(len(fabric.rows) - 1, 1)
    number = np.arange(len(fabric.rows))
    ramp = _ramp("rows", number / last)
    ramp += np.where(number % 2 == 1, 0.22, 0.0)[:, None] * (255 - ramp)
    colours = _bytes(ramp)
    rows = np.asarray(fabric.row, dtype=np.int64)
    legend = tuple((fabric.rows[i].label or f"row {i + 1}", _plain(colours[i])) for i in sorted({0, len(fabric.rows) - 1}) if fabric.rows)
    return colours[rows], legend


def _by_kind(fabric: Fabric, _: Mapping[str, Colour]) -> tuple[Bytes, tuple[tuple[str, Colour], ...]]:
    apart = _table()["apart"]
    used = np.frombuffer(bytes(fabric.kind), dtype=np.uint8)
    times = np.bincount(used, minlength=len(fabric.kinds))
    order = [int(i) for i in np.argsort(-times, kind="stable") if times[i]]
    colours = np.zeros((max(len(fabric.kinds), 1), 3), dtype=np.uint8)
    for place, kind in enumerate(order):
        colours[kind] = apart[min(place, len(apart) - 1)]  # the rest share the last, a grey
    return colours[used], tuple((fabric.kinds[k], _plain(colours[k])) for k in order)


def _by_strain(body: Body) -> tuple[Bytes, tuple[tuple[str, Colour], ...]]:
    """A stitch's strain is the mean over the pairs at its top."""
    count = len(body.points)
    nodes = body.pairs.T.reshape(-1)
    times = np.bincount(nodes, minlength=count)
    total = np.bincount(nodes, np.tile(body.strain, 2), count)
    mean = np.divide(total, times, out=np.zeros(count), where=times > 0)
    seen = mean[stitch_of_node(body) >= 0]
    limit = max(float(np.quantile(np.abs(seen), 0.98)) if len(seen) else 0.0, 0.02)
    stitch = np.where(body.node_of >= 0, mean[body.node_of], 0.0)
    colours = _bytes(_ramp("strain", 0.5 + 0.5 * stitch / limit))
    words = ((f"{limit:.0%} shorter or more", -1.0), ("at rest", 0.0), (f"{limit:.0%} longer or more", 1.0))
    return colours, tuple((word, _plain(_bytes(_ramp("strain", np.asarray([0.5 + 0.5 * s])))[0])) for word, s in words)


def _ramp(name: str, share: Floats) -> Floats:
    """Colours (…, 3) as floats between the places of a table, from nought to one; beyond it the last."""
    places = np.asarray(_table()[name], dtype=np.float64)
    at = np.linspace(0, 1, len(places))
    return np.stack([np.interp(share, at, places[:, channel]) for channel in range(3)], axis=-1)


def _bytes(colours: Floats) -> Bytes:
    return np.clip(np.rint(colours), 0, 255).astype(np.uint8)


def _plain(colour: Bytes) -> Colour:
    return int(colour[0]), int(colour[1]), int(colour[2])
