"""One picture per round, and a picture of the whole fabric. Needs numpy."""

from loopwright.drawing.rounds.drawn import RoundDrawing, RoundOptions
from loopwright.drawing.rounds.fabric import FabricPicture, fabric_picture
from loopwright.drawing.rounds.rounds import round_drawings

__all__ = ["FabricPicture", "RoundDrawing", "RoundOptions", "fabric_picture", "round_drawings"]
