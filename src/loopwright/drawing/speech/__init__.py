"""What drawings say: in English here; in any other language by a speech that the caller gives."""

from loopwright.drawing.speech.english import English, in_english
from loopwright.drawing.speech.speech import Speech
from loopwright.drawing.speech.things import Again, Each, Made, Thing

__all__ = ["Again", "Each", "English", "Made", "Speech", "Thing", "in_english"]
