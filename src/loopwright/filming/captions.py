"""Captions out of the planned words, fitted to the film: WebVTT and SRT.

Limits of lines and speed: `captioned`. WebVTT: https://www.w3.org/TR/webvtt1/. SRT has no standard: a number, a line of times with a comma,
the words, an empty line.
"""

from __future__ import annotations

from collections.abc import Iterable

from loopwright.filming import speech
from loopwright.filming.captioned import GAP_S, LONGEST_S, blocks, least
from loopwright.filming.timed import Timed, TimedShot
from loopwright.record import record

_TOLD, _MOST_NOTES = 60, 3


@record
class Cue:
    """A caption: when, and its lines."""

    start_s: float
    end_s: float
    lines: tuple[str, ...]

    @property
    def text(self) -> str:
        """Its words on one line."""
        return " ".join(self.lines)


@record
class Captions:
    """The cues, and the shots whose words had not all room in their time, in words."""

    cues: tuple[Cue, ...]
    notes: tuple[str, ...]


def captions(film: Timed, said: Iterable[str] | None = None) -> Captions:
    """Captions of a film. `said`: the words shot by shot in the same order, in other terms or another language; the plan's own if None."""
    words = [s.shot.say for s in film.shots] if said is None else list(said)
    cues: list[Cue] = []
    notes = []
    for s, text in zip(film.shots, words, strict=True):
        found, lost = _fitted(s, text)
        cues.extend(found)
        if lost:
            notes.append(f"shot {s.shot.number} ({s.shot.label}) lacks: {lost if len(lost) <= _TOLD else lost[: _TOLD - 1] + '…'}")
    if len(notes) > _MOST_NOTES:
        notes = [*notes[:_MOST_NOTES], f"and {len(notes) - _MOST_NOTES} more shots"]
    lead = "captions: the film is shorter than the words there"
    return Captions(tuple(cues), tuple(f"{lead}: {n}" for n in notes))


def _fitted(s: TimedShot, text: str) -> tuple[list[Cue], str]:
    """Cues as fast as the words are spoken, quicker where the shot is short, none faster than may be read."""
    found_blocks = blocks(text)
    room = s.end_s - s.start_s
    fewest = [least(b) for b in found_blocks]
    natural = [min(LONGEST_S, max(speech.seconds(" ".join(b)), m)) for b, m in zip(found_blocks, fewest, strict=True)]
    lost = ""
    while found_blocks and sum(fewest) + GAP_S * (len(found_blocks) - 1) > room:
        lost = " ".join([*found_blocks.pop(), lost]).strip()
        natural.pop()
        fewest.pop()
    spare = room - sum(fewest) - GAP_S * max(0, len(found_blocks) - 1)
    wish = sum(n - m for n, m in zip(natural, fewest, strict=True))
    share = min(1.0, spare / wish) if wish > 0 else 0.0
    found, at = [], s.start_s
    for b, n, m in zip(found_blocks, natural, fewest, strict=True):
        end = at + m + (n - m) * share
        found.append(Cue(round(at, 3), round(end, 3), tuple(b)))
        at = end + GAP_S
    return found, lost


def vtt(cues: Iterable[Cue], *, language: str = "en", kind: str = "captions") -> str:
    """WebVTT. "-->" and the signs of its marks are written as the standard asks."""
    parts = [f"WEBVTT\n\nNOTE {kind}, {language}"]
    for i, c in enumerate(cues, 1):
        words = "\n".join(x.replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;") for x in c.lines)
        parts.append(f"{i}\n{_time(c.start_s, '.')} --> {_time(c.end_s, '.')}\n{words}")
    return "\n\n".join(parts) + "\n"


def srt(cues: Iterable[Cue]) -> str:
    """SRT."""
    parts = [f"{i}\n{_time(c.start_s, ',')} --> {_time(c.end_s, ',')}\n" + "\n".join(c.lines) for i, c in enumerate(cues, 1)]
    return "\n\n".join(parts) + ("\n" if parts else "")


def _time(seconds: float, point: str) -> str:
    ms = round(seconds * 1000)
    return f"{ms // 3_600_000:02}:{ms // 60_000 % 60:02}:{ms // 1000 % 60:02}{point}{ms % 1000:03}"
