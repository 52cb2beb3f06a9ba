"""Words that make no stitch, taken out of a row before it is read: colours, hook movements said twice, cautions, stops.

The text keeps its length: what is taken out becomes spaces, so every span stays true.
Common practice, no source: the forms were met in printed books and leaflets.
"""

from __future__ import annotations

import re
from functools import lru_cache

from loopwright.notation.asides import without_asides
from loopwright.notation.both_terms import own_terms
from loopwright.notation.bygone import bygone
from loopwright.notation.lookalikes import plain_letters
from loopwright.notation.movements import named
from loopwright.notation.plainer import patches, plainer, worn

_STITCH = r"(?:s\.?\s?c|d\.?\s?c|tr\.?(?:\s?c)?|d\.?\s?tr|h\.?\s?d\.?\s?c|s\.?\s?s|sl|ch|chs?|sts?|trc|sdc|dtr|sps?|spaces?|loops?|shells?|more)\b"
_COUNTED_STOP = re.compile(rf"(?<![\d.])\d{{1,3}}(?P<stop>\.)(?=\s*{_STITCH})", re.IGNORECASE)
_STOP = re.compile(r"\.(?<=\d\.)")  # looks for the stop first: numbers are many
MANY = 4  # stops after numbers that are no slip
_LABELLED = re.compile(r"^[ \t]*(?:(?:rows?|rnds?|rounds?|rds?|r)[ .]*)?\d{1,3}(?:\.?\s*[-–—~&]\s*r?\d{1,3})?\.(?!\d)", re.IGNORECASE | re.MULTILINE)  # "5. Sc", "R5-10. Ch 1"
_MORE_STOPS = re.compile(
    r"(?P<word>\b(?:(?:miss|dec|inc)(?=\.\s*\d)|(?:miss|skip) \d(?=\.\s)|\d{1,2}(?:st|nd|rd|th)(?=\.\s*[a-z])|sts?(?=\.\s*(?:to|in|of|from|on|only|before|at|and|group)\b)"
    r"|[sd]\.\s?c(?=\.\s*(?:to|group|of|before|in|and)\b)))\.",
    re.IGNORECASE,
)
_NAME = r"(?:(?:[A-Z][\w’']+\.?|[A-Z])(?:\s+(?:and\s+)?(?=[A-Z]))?){1,4}"
_COLOUR = re.compile(
    rf"\b(?:[Ww]ith|[Uu]sing)\s+(?:(?:[Cc]olou?r|[Yy]arn|[Ss]hade)\s+)?(?:(?:double|single|two)\s+strands?\s+of\s+)?(?!RS|WS|Ch\b|Sc\b|Dc\b|Row|Rnd|Round){_NAME}(?:\s+(?:and|hook|size)\s+(?:Size\s+)?[A-Z\d]\s+hook)?(?=\s*(?:[,;.)]|$)|\s+(?:ch|chain|make|work|\*|loosely|\d|and|repeat|embroidery|crochet|(?:[sd]c|hdc|d?tr|htr|sl st|ss)\b))"
)
_BREAKS = re.compile(rf"\b(?i:cut|drop|break|fasten off|end off|finish off|attach|join|pull|pick up|change to|changing to|rejoin)\s+(?!Rnd|Row|Round){_NAME}(?=[\s,;.)]|$)")
_CHANGES = re.compile(rf",?\s{{0,3}}\b(?i:chang(?:e|ing)\s+to|switch(?:ing)?\s+to)\s+{_NAME}\s+(?:in|on|with|at)\s+(?:the\s+)?last\s+(?:st|stitch|sc|hdc|dc|tr|yo|yarn\s+over)\b")
_IN_COLOUR = re.compile(  # "MUZZLE - in Cream, ch 5"
    r"(?:^\s{0,8}|(?<=[-–—:.;]\s))[Ii]n\s(?!(?:Rnd|Row|Round|Blo|Flo|Next|Each|Every|First|Last|Same|Corner|Ring|Cent(?:er|re)|Back|Front|The|This|Any|Both|Second|Third|Pattern|Loop)\b)[A-Z][a-z]{2,}(?:\s[A-Z][a-z]+)?(?=\s?,\s*(?:ch|chain|make|work|begin|start|\d)\b)"
)
_NAMED_SIZES = re.compile(
    r"(?P<first>\b\d{1,5})(?P<noun>(?:\s+[a-z][a-z.]*){0,2}\.?\s*)(?P<others>(?:\s*\((?:\d[\w/.\s-]{0,8}(?:mos?|yrs?|months?|years?)|(?:medium|large|small|size)[\w\s]{0,8}|x{0,2}[sml])\.?\s*(?:--|—|–|-|:)[^()]{1,20}\)){1,8})",
    re.IGNORECASE,
)
_SPELT = {"rpt": "rep"}  # as long as what they stand for
_SAME_LENGTH = re.compile(r"\b(?:rpt)\b", re.IGNORECASE)
_WITHIN = re.compile(  # a stop that ends no sentence
    r"\.(?:(?:(?<=\bst\.)|(?<=\bsts\.))(?=\s+(?:at|each|evenly|before|only|to end|from|of|across|around)\b)"
    r"|(?:(?<=\bsp\.)|(?<=\bsps\.))(?=\s+(?:of|between|at|in|on|made|formed)\b)|(?<=\brep\.)(?=\s+(?:with|at|to|from|between|the|last|\d)))"
)


def stopped_style(text: str) -> bool:
    """Whether a pattern writes a full stop after its numbers: "4. d.c. in next 6. sts."."""
    return len(_STOP.findall(text)) >= MANY and all(len(_COUNTED_STOP.findall(t)) >= MANY for t in (text, _LABELLED.sub("", text)))


_STEP = re.compile(r"^[ \t]*step[ \t]+\d{1,3}[ \t]*:", re.IGNORECASE | re.MULTILINE)
_A_STEP = re.compile(r"\bstep (?P<n>\d{1,3})\b", re.IGNORECASE)
_ROW = re.compile(r"^[ \t]*(?:row|rnd|round|r)\s*\d", re.IGNORECASE | re.MULTILINE)


def quiet(text: str, terms: str = "us") -> str:
    """The text with what makes no stitch turned into spaces, line by line; same length, same line ends."""
    if "tep" in text and len(_STEP.findall(text)) >= MANY and _ROW.search(text) is None:
        text = _A_STEP.sub(r"Row \g<n> ", text)  # each step is a row, and named as one
    stopped = stopped_style(text)
    return "\n".join((_kept if len(line) < KEPT else _quiet_line)(line, terms, stopped) if line else line for line in text.split("\n"))


_BULLET = re.compile(r"\s*(?:[•·◦▪►✦★☆✓☐▢□-]\s+(?=(?:rows?|rnds?|rounds?|rds?|r)\s*\d|\d{1,3}[.):]|(?:next|last|first)\s+(?:rows?|rnds?|rounds?)\b)|\*{1,2}(?=(?:rows?|rnds?|rounds?)\s?\d{1,3}\s?:)|\d{1,3}(?:\s?[-–]\s?\d{1,3})?[.)]\s+(?=(?:rows?|rnds?|rounds?)\s*\d))", re.IGNORECASE)  # a list of rows


# "Cuff, Round 2:", "V-neck dec row:": what a row is of, at the head of its line. Common practice, no source.
_NAMED_PART = re.compile(
    r"[ \t]*(?!(?i:rep(?:eat)?|work|as|for|follow|through|to|from|after|before|until|last|next|every|each|same|like|end|ending|continue|cont|with|and|then|rows?|rnds?|rounds?|beg|begin|start|on|in|at|all|of|if|note|next|foundation|set|set-up|setup|edging|border|final|work)\b)"
    r"[A-Z][\w’'-]*(?:\s[A-Za-z][\w’'-]*){0,2}(?:,\s+(?=(?i:rows?|rnds?|rounds?)\s*\d)|\s+(?:[-–—]\s+)?(?=(?i:rows?|rnds?|rounds?)\s*\d{1,3}\s*(?:\(\d{1,3}(?:,\s?\d{1,3})*\)\s*)?[:)])|\s+(?=(?i:dec|inc|decrease|increase)(?:rease)?\s+(?i:row|rnd|round)\s*:))"
)
# which part a row is of, said before "row 1": the rows before it tell that. Common practice, no source.
_OF_PART = re.compile(
    r"(?<![\w-])(?:armhole|neck(?:line|band)?|collar|shoulder|sleeve|cuff|yoke|body|hem|brim|crown|heel|gusset|toe|foot|leg|thumb|edging|edge|border|trim|button ?band|band|flap|strap|handle)"
    r"(?=\s+(?:rows?|rnds?|rounds?)\s+\d)", re.IGNORECASE,
)


def _quiet_line(text: str, terms: str, stopped: bool) -> str:
    text = own_terms(plain_letters(text), terms)
    if (bullet := _BULLET.match(text)) is not None:
        text = " " * bullet.end() + text[bullet.end() :]
    text = text.replace("\u2011", "-") if "\u2011" in text else text  # a hyphen that breaks no line
    if (part := _NAMED_PART.match(text)) is not None:
        text = " " * part.end() + text[part.end() :]
    text = named(bygone(text, terms), terms)
    low = text.lower()
    if " row" in low or " rnd" in low or " round" in low:
        text = _OF_PART.sub(lambda m: " " * len(m.group()), text)
    text = plainer(text)
    if stopped:
        text = _unstopped(text)
    text = worn().sub(lambda m: _blank(m, False), patches(_NAMED_SIZES.sub(_listed, text)))
    text = _SAME_LENGTH.sub(lambda m: _SPELT[m.group().lower()], text)
    text = _COLOUR.sub(lambda m: _blank(m, False), text)
    text = _IN_COLOUR.sub(lambda m: _blank(m, False), text) if "n " in text else text
    text = _WITHIN.sub(" ", text)
    text = _CHANGES.sub(lambda m: _blank(m, False), text) if "chang" in low or "switch" in low else text
    text = _BREAKS.sub(lambda m: _blank(m, True), text)
    said = text
    return without_asides(said, lambda m: m.group() if _names_an_increase(said, m) else _blank(m, False))


_INC_NAMED = re.compile(r"\((?:called\s+|raglan\s+|corner\s+)?inc(?:\s+made)?\)", re.IGNORECASE)
_INC_ALONE, _SO_OFTEN = re.compile(r"\((?:inc|dec)\)", re.IGNORECASE), re.compile(r"\s*(?:rep(?:eat)?\b|[x×*]\s*\d|\*?\s?a?round\b|\*?\s?across\b|all\b|in\b|\d{1,3}\s*(?:x|times)\b|times\b)", re.IGNORECASE)
_BY_ITSELF = re.compile(r"(?:\b(?:[sdh]{1,2}c|h?tr|sts?)\s(?:in\s(?:the\s|each\sof\s)?(?:next\s)?)?\d{1,2}(?:\s(?:sts?|stitches|[sdh]{1,2}c|h?tr))?|(?<!\w)\d{1,2}\s?(?:[sdh]{1,2}c|h?tr|sts?))\s?,\s?$", re.IGNORECASE)  # "sc in next 3 sts, (inc)"
_WITH_CHAIN = re.compile(r"\bch\b[^.;(*]{0,30}$", re.IGNORECASE)


def _names_an_increase(text: str, m: re.Match[str]) -> bool:
    """ "in next dc make dc, ch 1 and dc (inc made)": what an increase is made of here, with a chain in it; "(inc) x 6": one to be made."""
    if _INC_ALONE.fullmatch(m.group()) is not None and (_SO_OFTEN.match(text, m.end()) is not None or _BY_ITSELF.search(text, max(0, m.start() - 40), m.start()) is not None):
        return True
    return _INC_NAMED.fullmatch(m.group()) is not None and _WITH_CHAIN.search(text, max(0, m.start() - 40), m.start()) is not None


KEPT = 2_000  # longer lines are not kept: none of a pattern is, and they would fill the memory
_kept = lru_cache(maxsize=4096)(_quiet_line)


def _listed(m: re.Match[str]) -> str:
    """ "22 sts. (1 yr.--26 sts.) (2 yrs.--30 sts.)" as "22 (26, 30) sts.", filled up with spaces to the same length."""
    values = re.findall(r"(?:--|—|–|-|:)\s*(?:ch\.?\s*)?(\d{1,5})(?![\d/-])[^()]*\)", m["others"], re.IGNORECASE)
    if len(values) != m["others"].count("("):
        return m.group()
    made = f"{m['first']} ({', '.join(values)}){m['noun']}"
    return made.ljust(len(m.group()))[: len(m.group())] if len(made) <= len(m.group()) else m.group()


def _blank(m: re.Match[str], keep_verb: bool) -> str:
    """Spaces for what was found; the verb of "attach Red" stays, its colour goes."""
    found = m.group()
    if not keep_verb:
        return re.sub(r"[^\n]", " ", found)
    verb = re.match(r"(?:fasten off|end off|finish off|pick up|change to|changing to|\w+)", found, re.IGNORECASE)
    kept = verb.group() if verb and verb.group().lower() in ("attach", "join", "rejoin") else ""
    return kept + " " * (len(found) - len(kept))


def _unstopped(text: str) -> str:
    """Takes the stops after numbers and abbreviations away; one that ends a place before a new number becomes a comma."""

    def after_chain(m: re.Match[str]) -> str:
        return m["place"] + m["ch"] + ("," if m["next"] or m["place"] and m["number"] else " ")

    label = _LABELLED.match(text)  # its stop is no number's: it stays
    head, text = (text[: label.end()], text[label.end() :]) if label else ("", text)
    text = re.sub(
        rf"(?P<place>(?:\b(?:of|next|each|last|same|\d{{1,3}})\s+)?)(?P<ch>\bch)\.(?=\s*(?:(?P<number>\d{{1,3}})(?P<next>\.\s*{_STITCH})?|,|to\b|from\b|of\b|as\b|[.\]]))",
        after_chain, text, flags=re.IGNORECASE,
    )
    text = _MORE_STOPS.sub(r"\g<word> ", text)
    return head + _COUNTED_STOP.sub(lambda m: m.group()[:-1] + " ", text)
