"""Whole patterns in languages other than English: frames and plurals in Fluent, numbers and units as the language writes them."""

from loopwright.wording.languages.marked import Run, runs
from loopwright.wording.languages.unchecked import Unchecked, unchecked
from loopwright.wording.languages.voice import Heard, LanguageVoice, language_voice

__all__ = ["Heard", "LanguageVoice", "Run", "Unchecked", "language_voice", "runs", "unchecked"]
