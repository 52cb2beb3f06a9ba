"""Words that make no stitch, taken out of a row before it is read: colours, hook movements said twice, cautions, stops.

The text keeps its length: what is taken out becomes spaces, so every span stays true.
Common practice, no source: the forms were met in printed books and leaflets.
"""

from __future__ import annotations

import re
from functools import cache, lru_cache

from loopwright.notation.movements import named
from loopwright.notation.scanner import words

_STITCH = r"(?:s\.?\s?c|d\.?\s?c|tr\.?(?:\s?c)?|d\.?\s?tr|h\.?\s?d\.?\s?c|s\.?\s?s|sl|ch|chs?|sts?|trc|sdc|dtr|sps?|spaces?|loops?|shells?|more)\b"
_COUNTED_STOP = re.compile(rf"(?<![\d.])\d{{1,3}}(?P<stop>\.)(?=\s*{_STITCH})", re.IGNORECASE)
_STOP = re.compile(r"\d\.")
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
_BREAKS = re.compile(rf"\b(?i:cut|drop|break|fasten off|attach|join|pull|pick up|change to|changing to|rejoin)\s+(?!Rnd|Row|Round){_NAME}(?=[\s,;.)]|$)")
_CHANGES = re.compile(rf",?\s{{0,3}}\b(?i:chang(?:e|ing)\s+to|switch(?:ing)?\s+to)\s+{_NAME}\s+(?:in|on|with|at)\s+(?:the\s+)?last\s+(?:st|stitch|sc|hdc|dc|tr|yo|yarn\s+over)\b")
_NAMED_SIZES = re.compile(
    r"(?P<first>\b\d{1,5})(?P<noun>(?:\s+[a-z][a-z.]*){0,2}\.?\s*)(?P<others>(?:\s*\((?:\d[\w/.\s-]{0,8}(?:mos?|yrs?|months?|years?)|(?:medium|large|small|size)[\w\s]{0,8})\.?\s*(?:--|—|–|-)[^()]{1,20}\)){1,8})",
    re.IGNORECASE,
)
_SPELT = {"rpt": "rep"}  # as long as what they stand for
_SAME_LENGTH = re.compile(r"\b(?:rpt)\b", re.IGNORECASE)
_WITHIN = re.compile(r"(?:(?<=\bst)|(?<=\bsts))\.(?=\s+(?:at|each|evenly|before|only)\b)|(?<=\brep)\.(?=\s+(?:with|at|to|from|between|the|last|\d))")  # a stop that ends no sentence
_ASIDES = (
    r"\((?:when|note|starting|beginning|always|about|approximately|see|leave|or\s+(?:to\s+)?desired)[^()]{0,200}\)",
    r",?\s{0,3}(?:being|taking)\s+(?:very\s+)?care(?:ful)?\s+not\s+to\s+twist(?:\s+(?:the\s+)?(?:chain|ch|work|it|sts)\b)?",
    r"\(?this brings thread[^().;]{0,60}\)?",
    r"\((?:make|MAKE)\s+\d+\)",
    r"\b(?:place|use)\s+(?:a\s+)?markers?\s+(?:at|to|for)[^.;]{0,50}[.;]?",
    r"\bdo not turn unless otherwise (?:said|indicated)",
    r",?\s{0,3}\bmark(?:ing)?\s+(?:the\s+)?(?:beg(?:inning)?|first st(?:itch)?|start|end)\s+of\s+(?:the\s+|each\s+)?(?:rnd|round|row)s?\b", r"(?<!\bas )\bfor (?:the )?(?:thumb|armhole|leg|opening)(?:\s+(?:hole|opening))?\b",
    r"\bacross\s+(?:the\s+)?(?:back|front|sleeve)s?\b(?=\s+to\s+(?:the\s+)?(?:next|first|last))", r"\bskip(?:ping)?\s+(?:all\s+)?(?:the\s+)?sleeve\s+(?:sts|stitches)\b,?(?=\s*[sdht][\w.]{1,4}\s+in\s+(?:the\s+)?next\s+(?:ch|corner))",
    r"(?<=work) in (?=(?:s\.?c|d\.?c|h\.?d\.?c|h?tr)\b\s+(?:evenly|(?:all\s+)?around))",
    r"\b(?:start(?:ing)?|beginning)\s+(?=(?:in|from|at|with)\s+(?:the\s+)?(?:2nd|3rd|4th|second|third|fourth)\s+ch)",
    r"\bpull(?:ing)?\s+\w*\s*through both loops on hook",
    r"\bleaving (?:a|an)\b[^.;]{0,60}",
    r"(?<=\d)\s*x?\s*hook(?=,)",
    r"\bcut (?:yarn|thread|cotton|wool)\b[^.;,\w]{0,3}(?:leaving[^.;]{0,80})?", r"(?<=only) of each (?:st|sc|dc|tr|stitch) throughout\b",
    r"\b(?:with|having)\s+(?:the\s+)?(?:RS|WS|(?:right|wrong)\s+side)\s+(?:of\s+(?:the\s+)?work\s+)?(?:facing|toward)(?:\s+you)?,?",
    r"\bwith (?:size\s+)?[A-Z]\s+hook,?",
    r"\bwith\s+(?:a\s+)?(?:double|single|two|three)\s+strands?(?:\s+(?:held\s+)?together)?(?:\s+and\s+(?:size\s+)?\w+\s+hook)?(?=\s*[,;]|\s+(?:ch|chain|make|work)\b),?",
    r"\((?:an?\s+|\d+\s+|this\s+(?:is|makes)\s+)?(?:\w+\s+)?(?:inc|dec|increases?|decreases?|inc point)\.?(?:\s+rows?|\s+made)?\)(?!\s*[x×*]?\s*\d)",
    r",?\s{0,3}(?:but\s+)?do not work (?:inc|dec)\w*\s+directly (?:above|over)\s+(?:the\s+)?previous (?:inc|dec)\w*",
    r"\b(?:the\s+)?(?:back|bottom|rear)\s+(?:bumps?|ridges?|humps?)\s+of\s+(?=(?:the\s+)?(?:\d+(?:st|nd|rd|th)?|second|third|each|next|first)\b)",
    r"\bto complete (?:the )?(?:last |first )?\w+",
    r"(?<=[\w),;.] )leave\s+(?:an?|the)\s+(?:\w+\s+)?tail\b[^.;,]{0,40}", r"(?<=[\w),;.] )(?:and\s+)?(?:hide|weave\s+in)\s+(?:the\s+|all\s+)?(?:tails?|ends?)\b[^.;]{0,30}", r"\bcinch(?:ed)?\s+(?:closed|shut|tight(?:ly)?|the\s+(?:top|hole))\b",
    r"\bcontinuing\s+(?:on\s+)?from\s+the\s+[^,;.]{1,30},", r"(?<=[a-z])\s(?:around|across|along)\s+(?:the\s+)?(?:first|left|right|1st)\s+(?:leg|arm|ear|foot|sleeve|piece)\b(?=\s*[,;.(])",
    r"(?<=[a-z])(?<!\bst)(?<!\bstitch)(?<!\bsc)(?<!\bhdc)(?<!\bdc)\s(?:around|across|along)\s+(?:the\s+)?(?:second|other|2nd)\s+(?:leg|arm|ear|foot|sleeve|piece)\b(?=\s*[,;.(])",
    # which part of the piece is meant: the rows and stitches before it tell where
    r"\bat\s+the\s+(?:lower|upper|top|bottom)\s+(?:right|left)[- ](?:hand\s+)?corner\b(?=\s*,)", r"(?<=each row)\s+along\s+the\s+(?:long\s+|short\s+)?side\b(?=\s*[,;.])",
    (r"\b(?:back\s+to|of|down|up)\s+the\s+(?:(?:right|left|face|neck)\s+)?(?:bonnet|hat|fronts?|back|neck|body|sleeve|yoke|face|bag|mitt|mitten|sock|shawl)(?:\s+edge)?\b"
     r"(?!\s+(?:loops?|lps?|posts?|of|bumps?|ring|\d)\b)(?=\s*[,;.]|\s+(?:rows?|rnds?)?\s*$)"),
    r"(?<!\bas )(?<!\bgiven )(?<!tions )(?<!\bsteps )\bfor (?:the )?(?:other |left |right )?(?:(?-i:[A-Z][a-z]+)|underarm|neck|sleeve|front|back|picot)\b",
    r"(?<=\.)\s[^,;.—]*\bthe cord\b[^.]*\.", r"(?<=[,;.])[^,;.—]*\bthe cord\b[^,;.]*",
    r";\s*the\s+(?:\d\s+)?(?:plain|treble|trebles|double|single|chain|long)\b[^.;*]*",
    r",?\s{0,3}\bincluding (?!(?:rows?|rnds?|rounds?)\b)[^,;.()]*(?:\.(?=\s*\)))?,?", r"\bas before\b(?=[^.;]*\b(?:in|under|over|on)\b)",
    r"\bcluster (?:st )?(?=shells?\b)",
    r"(?:\ban?\s+)?\b\d+[- ]?(?:d\.? ?c\.?|tr\.?(?: ?c\.?)?|s\.? ?c\.?|petal|d\.? ?tr)[ -]\s?(?=(?:cluster|group|popcorn|scallop|fan|bobble|puff)s?\b)",
    r"\(\d+ \w{1,10}(?: \w)? (?:dec|inc)\w* (?:in |on )?(?:each|every|this)[^()]{0,20}\)",
    r"(?<=[.)])\s[^.()]{0,60}\b(?:every|each)\s+(?:[sdh]{1,2}c\s+|tr\s+)?(?:rnd|row|round)\s+in\s+(?:this|the\s+same)\s+(?:way|manner)\b[^.()]*",
    r",?\s{0,3}\b(?:working|making) (?:the )?last (?!\w+ (?:in|into) (?:the )?(?:turning|beg) (?:ch|chain)[ -](?:sp|space|loop)\b)(?:[^.;(\[\n]|\.(?=[a-z])|(?<=[a-z])\.(?=\s+[a-z])|(?<=ch)\.(?!\s*[(\[]))*", r"(?<=[a-z*])[’']s\b(?=\s|[,;.])", r"\b(?:in|at) (?:the )?back of (?:the )?work\b(?=\s+between)",
    r"\bspacing (?:the )?sts evenly,?", r"\bworking (?:over|along|on|across|down) (?:the )?(?:(?:raw|long|short|side|row|top|bottom|front|back) )?(?:sides?|edges?|ends?)(?: of (?:each row|the \w+))?,?",
    r"\bwork(?:ing)? in (?:s\.? ?c|d\.? ?c|tr|h\.? ?d\.? ?c)\.?(?: throughout)?,?(?=\s+(?:work|dec|inc)\b)",
    r",?\s{0,3}\b(?:and\s+)?(?:work|cont(?:inue)?)(?:ing)?\s+on\s+(?:these|this\s+set\s+of)\s+(?:\d{1,3}\s+)?(?:sts?\b\.?|stitches)(?:\s+only)?(?=\s*[,.;:]|\s*$)",
    r"\bkeeping\s+(?:(?:the|to|in|continuity|of|side|edges?)\s+){0,4}(?:patt(?:ern)?|rib|stripes?)\b\.?\s*(?:correct|straight|as\s+(?:set|established|before))?(?:\s+throughout)?\s*,?",
    r"\bloosely\b", r"\bincl\b\.?", r"\((?:the\s+)?(?:top|[2-5](?:nd|rd|th)\s+ch|third\s+ch|fourth\s+ch)\s+of\s+(?:the\s+)?(?:beg\w*\s+|turning\s+|t-?)?ch(?:ain)?[- ]?\d?\)", r"^\s*(?:to\s+)?shap(?:e|ing)\s+(?:the\s+)?[a-z]+(?:\s+[a-z]+)?\s*\.\s?[—–](?=\s*\w)", r",\s+i\.\s?e\.[^;()\n]{0,40}$",
    r"\b(?:sl(?:ip)?\.?\s?st(?:itch)?|ss|sew|join|seam)\s+(?:the\s+)?row\s+\d{1,3}\s+to\s+(?:the\s+)?(?:foundation|first|starting|beginning|beg|row)\b[^.;()]*",
    r",\s{0,3}the\s+last\s+(?:ss|sl\s?st|sc|dc|st|tr|loop)\s+(?:falling|coming|worked|being\s+worked|made)\s+(?:in|into|on)\s+(?:the\s+)?first\s+(?:ss|sl\s?st|sc|dc|st|tr|ch)\b",
    (r"(?:(?<=below)|(?<=skipped st)|(?<=skipped [sd]c)|(?<=skipped stitch)),?\s{1,3}(?:working\s+)?(?:in\s+front\s+of|behind)\s+(?:the\s+|both\s+)?"
     r"(?:(?:working|new)\s+)?(?:ch(?:ain)?s?(?:-\d)?(?:[- ]?(?:sps?|spaces?|loops?))?|rows?|work)\b"),
    r"\bblock\s+(?:(?:the|your|it|out|finished|each|piece)\s+){0,3}(?:\w+\s+)?to\s+(?:(?:the|given|finished|its|these|shown)\s+)*(?:sizes?|measurements?|dimensions|shape|schematic)\b[^.;\n]{0,40}",
    r"\bclos(?:e|ing)\s+(?:up\s+)?(?:the\s+)?(?:last\s+|remaining\s+|small\s+)?(?:hole|opening|gap)\b[^.;()\n]{0,40}",
    r",?\s{0,3}\b(?:working|crossing|going) (?:in front of|behind|in back of|over) (?:the |last |previous |first |two |2 ){0,3}[a-z ]{1,20}?(?: just)? (?:made|worked|completed),?",
)
_ASIDE = re.compile("|".join(_ASIDES), re.IGNORECASE)


def stopped_style(text: str) -> bool:
    """Whether a pattern writes a full stop after its numbers: "4. d.c. in next 6. sts."."""
    return len(_STOP.findall(text)) >= MANY and all(len(_COUNTED_STOP.findall(t)) >= MANY for t in (text, _LABELLED.sub("", text)))


def quiet(text: str, terms: str = "us") -> str:
    """The text with what makes no stitch turned into spaces, line by line; same length, same line ends."""
    stopped = stopped_style(text)
    return "\n".join((_kept if len(line) < KEPT else _quiet_line)(line, terms, stopped) if line else line for line in text.split("\n"))


_BULLET = re.compile(r"\s*[•·◦▪►✦★☆✓☐▢□-]\s+(?=(?:rows?|rnds?|rounds?|rds?|r)\s*\d|\d{1,3}[.):])", re.IGNORECASE)  # a list of rows


# which part a row is of, said before "row 1": the rows before it tell that. Common practice, no source.
_OF_PART = re.compile(
    r"(?<![\w-])(?:armhole|neck(?:line|band)?|collar|shoulder|sleeve|cuff|yoke|body|hem|brim|crown|heel|gusset|toe|foot|leg|thumb|edging|edge|border|trim|button ?band|band|flap|strap|handle)"
    r"(?=\s+(?:rows?|rnds?|rounds?)\s+\d)", re.IGNORECASE,
)


_L = r"(?:[A-H]|MC|CC)"
_PATCH = re.compile(
    rf"[(\[]\s?(?P<a>{_L})\s?[)\]]\s*[x×]\s*(?P<n>\d{{1,3}})\b|\b(?P<b>{_L})\s*[x×]\s*(?P<m>\d{{1,3}})\b"
    rf"|(?:(?<=[,;:*] )|(?<=[(\[*]))(?P<c>{_L})\s(?P<k>\d{{1,3}})(?=\s*(?:[,;.)\]]|$))|(?P<kind>\b[a-z]{{2,4}}\s+)?\b(?P<j>\d{{1,3}})\s+(?:sts?\s+)?(?:in|with)\s+(?P<d>{_L})\b(?=\s*(?:[,;.)\]]|$))",
)
_LED_TO_PATCHES = re.compile(r"\b(?:sc|hdc|dc|tr|htr)\s+(?:in\s+each\s+st(?:itch)?\s+)?(?:across|around)?\s*[:–—-]\s*(?=\d{1,3}\s+[A-HMC])")


@cache
def _worn() -> re.Pattern[str]:
    """Colours told with the stitches, "12 sc in gold", "change to B in last st", "B: sc 3"; MC, which is a magic ring too, behind no "in"."""
    colours = "|".join(sorted(map(re.escape, words()["colours"]), key=len, reverse=True))
    name = rf"(?:(?:colou?r|yarn|shade)\s+)?(?:{_L}|CC\d|(?i:{colours}))(?:\s+(?:yarn|colou?r))?"
    last = r"(?:\s+(?:in|on|with|at)\s+(?:the\s+)?last\s+(?:st|stitch|sc|hdc|dc|tr|yo|yarn\s+over)\b)?"
    return re.compile(
        rf"(?<=\w)\s(?:in(?!\s+MC\b)|with|using)\s+{name}(?=\s*(?:[,;.)\]*]|$))|(?<=[:.;]\s)(?:[Ww]ith|[Uu]sing)\s+{name}\s*,"
        rf"|(?<!\w)(?i:chang(?:e|ing)|switch(?:ing)?)\s+(?:back\s+)?to\s+{name}{last}(?=\s*(?:[,;.)\]]|$))|(?<=[,;:.*]\s){_L}:(?=\s)",
    )


def _patches(text: str) -> str:
    """Stitches counted by colours, "A x 3, (B) x 5", "3 in A, 5 in B", as "3 A, 5 B"; filled up with spaces to the same length."""
    text = _LED_TO_PATCHES.sub(lambda m: " " * len(m.group()), text)
    if len(_PATCH.findall(text)) < 2:
        return text

    def told(m: re.Match[str]) -> str:
        if m["kind"]:
            return f"{m['kind']}{m['j']}".ljust(len(m.group()))
        n, colour = next((m[n], m[c]) for n, c in (("n", "a"), ("m", "b"), ("k", "c"), ("j", "d")) if m[n])
        return f"{n} {colour}".ljust(len(m.group()))

    return _PATCH.sub(told, text)


_EVERY = re.compile(r"\bevery(?=\s+(?:ch|st|sc|dc|hdc|tr|htr|stitch|chain|sp|space)\b)", re.IGNORECASE)
_EQUALS = re.compile(
    r"\(\s*(?:(?:the\s+)?(?:\d\s+)?(?:skipped\s+|missed\s+)?(?:\d\s+)?ch(?:s|ains?)?\s*)?=\s*(?:the\s+)?(?P<what>(?:first\s+|1st\s+|1\s+|one\s+|a\s+)?(?:h?dc|d?tr|htr|sc|st))\b[^()]{0,25}\)",
    re.IGNORECASE,
)


_ONE_MORE = re.compile(r"\b(?:making|working)\s+2\s+(?:[sdh]{1,2}c|tr|sts?)\s+in\s+one\s+(?:st|stitch|[sdh]{1,2}c|tr|of\s+them)\b[^.,;()]*", re.IGNORECASE)
_WORTH = re.compile(  # "4 ch (1 tr, 1 ch),", "ch 4 (dc + ch 1),"
    r"(?P<ch>\b[2-7]\s?ch(?:ain)?s?|\bch(?:ain)?\s?[2-7])\s\((?P<what>(?:1 )?(?:h?dc|d?tr|htr)(?:\s?(?:,|\+|and)\s?(?:[1-9] ch|ch [1-9]))?)\)(?=\s*,)", re.IGNORECASE,
)
_OTHERS = re.compile(r"\b(?:in|into|under|on)\s+each\s+of\s+the\s+others\b", re.IGNORECASE)
_AS_ONE = re.compile(r"\(\s*as\s+(?:the\s+)?(?P<what>(?:an?\s+|1\s+|one\s+|first\s+|1st\s+)?(?:h?dc|d?tr|htr|sc|st))\b[^()]{0,40}\)", re.IGNORECASE)
_EVENLY_SO_MANY = re.compile(r"(?<=\bdec )(?P<n>\d{1,2}) (?:sc|dc|tr|hdc|htr)(?= evenly\b)|(?<=\binc )(?P<m>\d{1,2}) (?:sc|dc|tr|hdc|htr)(?= evenly\b)", re.IGNORECASE)
_DEC_ONE = re.compile(
    r"\bdec(?:rease)?\s+(?:1|one)\s+(?P<kind>[sdh]{1,2}c|h?tr)\b(?!\s+(?:at|evenly|each|every|in|on|over|across|around|from|sts?|stitch|\d))", re.IGNORECASE,
)
_AND_EACH_CHAIN = re.compile(
    r"\bwork\s+(?:(?:across|around|to\s+end)\s+)?in\s+(?P<kind>[sdh]{1,2}c|h?tr)(?:\s+(?:across|around|to\s+end))?,\s*(?:making\s+|working\s+)?1\s+(?P=kind)\s+in(?:to)?\s+each\s+ch\b[^:;.(]*",
    re.IGNORECASE,
)
_COLOUR_OF_MANY = re.compile(r"(?<=\b(?:join|with)\s)(?:1st|2nd|3rd|4th|5th|first|second|third|fourth|fifth|another|next|new)\s+colou?r\b", re.IGNORECASE)


def _plainer(text: str) -> str:
    """ "every ch" as "each ch", "(= first dc from now on)" as "(counts as first dc)"; filled up with spaces to the same length."""
    text = _ONE_MORE.sub(lambda m: "increasing 1 st evenly".ljust(len(m.group())), _EVERY.sub("each ", text))
    text = _WORTH.sub(lambda m: f"{m['ch']}(={m['what']})", text)
    text = _OTHERS.sub(lambda m: "in each sp".ljust(len(m.group())), text)
    text = _AS_ONE.sub(lambda m: f"(counts as {m['what']})".ljust(len(m.group())) if len(m.group()) >= len(m["what"]) + 12 else f"(= {m['what']})".ljust(len(m.group())), text)
    text = _EVENLY_SO_MANY.sub(lambda m: f"{m['n'] or m['m']} st".ljust(len(m.group())), text)
    text = _AND_EACH_CHAIN.sub(lambda m: f"{m['kind']} in each st and in each ch".ljust(len(m.group())), text)
    text = _DEC_ONE.sub(lambda m: f"{m['kind']}2tog".ljust(len(m.group())), text)
    text = _COLOUR_OF_MANY.sub(lambda m: "yarn".ljust(len(m.group())), text)

    def counts(m: re.Match[str]) -> str:
        made = f"(counts as {m['what']})"
        return made.ljust(len(m.group())) if len(made) <= len(m.group()) else f"(= {m['what']})".ljust(len(m.group()))

    return _EQUALS.sub(counts, text)


def _quiet_line(text: str, terms: str, stopped: bool) -> str:
    if (bullet := _BULLET.match(text)) is not None:
        text = " " * bullet.end() + text[bullet.end() :]
    text = _OF_PART.sub(lambda m: " " * len(m.group()), named(text, terms))
    text = _plainer(text)
    if stopped:
        text = _unstopped(text)
    text = _worn().sub(lambda m: _blank(m, False), _patches(_NAMED_SIZES.sub(_listed, text)))
    text = _SAME_LENGTH.sub(lambda m: _SPELT[m.group().lower()], text)
    text = _COLOUR.sub(lambda m: _blank(m, False), text)
    text = _WITHIN.sub(" ", text)
    text = _CHANGES.sub(lambda m: _blank(m, False), text)
    text = _BREAKS.sub(lambda m: _blank(m, True), text)
    said = text
    return _ASIDE.sub(lambda m: m.group() if _names_an_increase(said, m) else _blank(m, False), said)


_INC_NAMED = re.compile(r"\((?:called\s+)?inc(?:\s+made)?\)", re.IGNORECASE)
_WITH_CHAIN = re.compile(r"\bch\b[^.;(*]{0,30}$", re.IGNORECASE)


def _names_an_increase(text: str, m: re.Match[str]) -> bool:
    """ "in next dc make dc, ch 1 and dc (inc made)": what an increase is made of here, with a chain in it; else it is one as any other."""
    return _INC_NAMED.fullmatch(m.group()) is not None and _WITH_CHAIN.search(text, max(0, m.start() - 40), m.start()) is not None


KEPT = 2_000  # longer lines are not kept: none of a pattern is, and they would fill the memory
_kept = lru_cache(maxsize=4096)(_quiet_line)


def _listed(m: re.Match[str]) -> str:
    """ "22 sts. (1 yr.--26 sts.) (2 yrs.--30 sts.)" as "22 (26, 30) sts.", filled up with spaces to the same length."""
    values = re.findall(r"(?:--|—|–|-)\s*(?:ch\.?\s*)?(\d{1,5})(?![\d/-])[^()]*\)", m["others"], re.IGNORECASE)
    if len(values) != m["others"].count("("):
        return m.group()
    made = f"{m['first']} ({', '.join(values)}){m['noun']}"
    return made.ljust(len(m.group()))[: len(m.group())] if len(made) <= len(m.group()) else m.group()


def _blank(m: re.Match[str], keep_verb: bool) -> str:
    """Spaces for what was found; the verb of "attach Red" stays, its colour goes."""
    found = m.group()
    if not keep_verb:
        return re.sub(r"[^\n]", " ", found)
    verb = re.match(r"(?:fasten off|pick up|change to|changing to|\w+)", found, re.IGNORECASE)
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
