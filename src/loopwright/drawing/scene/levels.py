"""How finely a fabric is drawn: the finest level that fits a number of triangles."""

from __future__ import annotations

from loopwright.drawing.scene.body import Body
from loopwright.drawing.scene.yarn import Links
from loopwright.record import record

BUDGET = 400_000
"""Triangles a scene may have unless told otherwise: what an ordinary laptop's browser turns smoothly (common practice, no source)."""


HALVES = 2
"""A facet is half of the gap between two stitches."""


@record
class Level:
    """A level of detail. `sides` of a strand's section, `steps` along a post and along a top loop, `strands` of each; 0: no yarn."""

    name: str
    about: str
    sides: int = 0
    post_steps: int = 0
    top_steps: int = 0
    strands: int = 0
    layers: int = 1

    def triangles(self, tied: Links, body: Body) -> int:
        """How many triangles the fabric takes at this level, the rims left out."""
        quads = int((body.faces[:, 3] >= 0).sum())
        sheet = (len(body.faces) + quads) * (1 if self.layers == 1 else HALVES * self.layers)
        if not self.sides:
            return sheet
        post = (self.post_steps - 1) * self.sides * 2 * self.strands
        top = (self.top_steps - 1) * self.sides * 2 * self.strands
        return sheet + len(tied.posts) * post + len(tied.tops) * top


LEVELS = (
    Level("yarn", "every stitch as two strands of yarn, post and top loops", sides=6, post_steps=5, top_steps=4, strands=2),
    Level("strand", "every stitch as a post and a top loop", sides=5, post_steps=3, top_steps=3, strands=1),
    Level("facets", "every stitch as a flat facet with two sides", layers=2),
    Level("plain", "one smooth sheet, its two sides alike"),
)


def level_for(tied: Links, body: Body, budget: int, name: str | None = None) -> Level:
    """The level of that name, else the finest within the budget of triangles, else the plainest. Raises ValueError for no level's name."""
    if name is not None:
        for level in LEVELS:
            if level.name == name:
                return level
        raise ValueError(f"'{name}' is no level of detail; there are {', '.join(level.name for level in LEVELS)}")
    return next((level for level in LEVELS if level.triangles(tied, body) <= budget), LEVELS[-1])
