"""Live edges of a piece: row ends down one side, the underside of the foundation, row ends up the other, stitches left free."""

from __future__ import annotations

from loopwright.model.fabric import Fabric


class Edges:
    """Finds the stitches that words like "along the row ends" mean, in a fabric that is being made."""

    def __init__(self, fabric: Fabric) -> None:
        self.fabric = fabric

    def resolve(self, start: int, wanted: list[tuple[int, str]], piece: int) -> None:
        """Gives parents to stitches (numbers counted from `start`) that go into an edge of the piece."""
