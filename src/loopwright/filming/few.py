"""A row's instruction in few words for a card, and as it is spoken: without the marks of repeats."""

from __future__ import annotations

import re

from loopwright.filming.phrases import Phrases

_CHAIN = re.compile(r"^(?:ch (?P<n>\d+)|(?P<m>\d+) (?:ch|Lm|ml|lm|cad|l|c|corr|cat|pc|v)\b)\s*,\s+", re.IGNORECASE)
_RING = re.compile(r"^(?:join|mit|fermer|slut|cerrar|sluit|luk|fechar|chiudere)\b", re.IGNORECASE)
_TURNING = re.compile(r"\s*(?:Chain \d+|\d+ [^,]{1,25}),\s*", re.IGNORECASE)
_LONGEST_TURN = 4  # chains at the start of a row that are no stitch
_STARRED = re.compile(r"\*\s*(?P<inner>[^*]*?)\s*;[^;.*]*\*[^;.]*")
_BRACKETED = re.compile(r"\[(?P<inner>[^\[\]]+)\]\s*(?P<times>[^,;.]*)")
_NEXT_MANY = re.compile(r"\bin each of (?:the )?next (\d+) sts\b")
_NEXT_MADE = re.compile(r"\bin next (\d+) sts\b")
_AROUND = re.compile(r"\baround each of next (\d+) sts\b")
_NEXT_ONE = re.compile(r"\bin next st\b")
_ENDS = re.compile(r"(?:;\s*|,\s*)(?:join|turn|do not turn|mit 1 Km|die Runde schließen|fermer|slut)[^;]*$", re.IGNORECASE)
_ROUND = re.compile(r"\((?P<inner>[^()]*)\)")


def few_words(words: str, times: int, say: Phrases, made: int = 0) -> str:
    """As in "hdc in 3, 2 hdc in next, 8 times in all".

    `times`: rounds of the row's repeat; `made`: the same where the words are of one round alone.
    """
    text = words.strip()
    chain = _CHAIN.match(text)
    if chain and int(chain["n"] or chain["m"]) <= _LONGEST_TURN and not _RING.match(text[chain.end() :]):
        text = text[chain.end() :]
    text = _ENDS.sub("", text.rstrip(". "))
    starred = _STARRED.search(text)
    if starred:
        often = say("times", n=times) if times > 1 else ""
        text = text[: starred.start()] + _told(starred["inner"], often, alone=not text[: starred.start()].strip()) + text[starred.end() :]
    alone = len(_BRACKETED.findall(text)) == 1 and text.startswith("[")
    text = _BRACKETED.sub(lambda m: _told(m["inner"], m["times"].strip(), alone=alone), text)
    text = _NEXT_ONE.sub("in next", _NEXT_MADE.sub(r"in \1", _NEXT_MANY.sub(r"in \1", text)))
    text = _AROUND.sub(r"around next \1", text).replace("around next st,", "around next,")
    text = " ".join(text.split()).strip(" ,;.")
    if made > 1:
        text = f"{text}, {say('times', n=made)}"
    return text[:1].lower() + text[1:] if text[1:2].islower() and not text.startswith("V ") else text


def _told(inner: str, often: str, *, alone: bool) -> str:
    """What is repeated and how often; in brackets where something stands before it."""
    if not often:
        return inner
    return f"{inner}, {often}" if alone or "(" in inner else f"({inner}) {often}"


def without_marks(words: str, times: int, say: Phrases) -> str:
    """The instruction as one says it: what is repeated, then how often; no stars, no brackets."""
    text = words.strip()

    def often(m: re.Match[str]) -> str:
        lead = f"{say('this')} " if text[: m.start()].strip() and not _TURNING.fullmatch(text[: m.start()]) else ""
        return f"{lead}{m['inner']}. " + (say("that_times", n=times) if times > 1 else say("that_to_end"))

    text = _STARRED.sub(often, text)
    text = _BRACKETED.sub(lambda m: f"{m['inner']}, {say('that')} {m['times'].strip()}".rstrip(), text)
    text = _ROUND.sub(lambda m: f", {m['inner']}," if "," not in m["inner"] else f"{m['inner']},", text)
    text = text.replace("*", "").replace(";", ".")
    text = re.sub(r"\s*,\s*(?=[,.;])", "", re.sub(r"\s+", " ", text))
    text = re.sub(r"\s+([,.])", r"\1", text)
    text = re.sub(r",(?=\S)", ", ", re.sub(r"\.+", ".", text))
    parts = [p.strip() for p in re.split(r"(?<=[.!?])\s+", text) if p.strip(" .,")]
    return " ".join(p[:1].upper() + p[1:] for p in parts)
