"""What was said in a lesson becomes a draft of the written pattern: captions → words with times → rows → text."""

from loopwright.listening.draft import Doubt, Draft, Timed, listen

__all__ = ["Doubt", "Draft", "Timed", "listen"]
