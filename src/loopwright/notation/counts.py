"""Counts printed at a row's end: "(24 sc)", "[18]", "— 36 dc.", "= 12 sts", "(24 dc and 12 ch-2 sps)"."""

from __future__ import annotations

import re
from collections import deque

from loopwright.model.tree import Count, Make, Num
from loopwright.notation.counts_along import along_row, made_of
from loopwright.notation.cursor import SIZE_SEPS, Cursor, thing_word
from loopwright.notation.scanner import scan
from loopwright.notation.told import of_the_whole
from loopwright.record import changed, record
from loopwright.source import Span
from loopwright.terms import Dialect

_LISTED = r"(?:\d+(?:\s*[(\[][\d,:;\s–-]+[)\]])?|[–—-]\s?[(\[]\d[\d,:;\s–-]*[)\]])"
_END = re.compile(  # possessive where blanks meet blanks: a line full of them must not be tried in every way
    r"(?P<lead>\b(?:st(?:itch)?\s+count|stitch(?:es)?\s+total)\s*[:=–-]\s*|\b(?:(?:so that )?you(?:(?:['’]ll| will)?(?: \(?now\)?| should| still| again)* have|(?:['’]ll| will| should)? (?:finish|end)(?: up)? with|(?:['’]re| are) (?:now )?back (?:to|at|with))|(?:this (?:will )?)?giv(?:es|ing)? you|this (?:round|row|rnd) (?:makes|has|gives)|which (?:gives|makes|leaves|will (?:give|make|leave))(?: you)?|for a total of|there (?:will be|are|should be)|so that the \d{1,3}(?:st|nd|rd|th) (?:row|round|rnd) (?:has|will have|contains)|(?:again|still)(?=\s\d)|you will find (?:that )?you (?:have )?ma[dk]e|(?:and )?that(?:['’]s| gives(?: us| you)?| makes)(?=\s\d)|(?:so )?(?:now )?we(?:['’]ve| have) (?:now )?got(?=\s\d)|making|having)\b|(?:(?<= end)|(?<=ound)|(?<=ross)|(?<=each)),|(?:(?<= turn)|(?<=nworked)|(?<= once)|(?<= twice)|(?<= times)|(?<=more))\s(?=\d{1,4}(?: ?[(\[][\d, ]{1,80}[)\]])? (?:sts|stitches)\b)|(?:(?<=from \*)|(?<=\* across)|(?<=\* around)|(?<=\* to end))\s(?=\d{1,4} (?:sts?|stitches|sc|hdc|dc|tr|htr)\b(?: (?:and|&) \d{1,4} [^.;()*]{2,24})?\.?\s*$)|(?<=[;,.] turn)(?=\s\d)|(?:(?<=turn)|(?<=ross)|(?<=ound))(?=\d{1,4}(?: ?[(\[][\d, ]{1,80}[)\]])? (?:sts|stitches|[shd]{1,2}c|h?tr)\b)|(?:(?<=[ .,;]join)(?=\s\d{1,4}\s(?:sts|stitches|[shd]{1,2}c|h?tr)\.?\s*$)|(?<=[ .,;]sl st)(?=\s\d{2,4}\s(?:[shd]{1,2}c|h?tr)\.?\s*$))|,(?=\s\d{1,4}\s(?:sts|stitches)\.?\s*$)|,(?=\s*\d{1,4}(?:\s*\([\d, ]+\))?\s+[a-z]{1,4}\.?(?:\s[a-z]\.?)?,\s*(?:(?:cut|fasten|break|attach)\b|,|$))|,(?=\s\d{1,4}\s(?:sc|hdc|dc|tr|htr)\.\s+ch\s?[1-4]\b,?\s+(?:and\s+)?turn\b)|[(\[{<]|[—–]|--|(?<=[\s.;:])-\s|=|:\s|\.\s+|;\s+)\s*+(?:=\s*+)?(?P<in>(?:total(?:\s+of)?:?\s*)?(?:[–—-]\s?[,:;/]\s*){0,12}(?:" + _LISTED + r"|\{[^{}\n]+\})(?:[^()\[\].;—]|\.(?=\s?[a-z])|;(?=\s?\d{1,4}[ -])|[(\[]\d[\d,:;\s–-]*[)\]]){0,80}?)\s*+"
    r"(?:\.?\s*+[)\]}>]){0,2}+\s*+[.,;]?+\s*+(?P<after>(?:(?:(?<=[)\]])|(?<=[)\]],)),?\s{0,3}(?:ss|sl\.?\s?st|slip\s?st(?:itch)?)\s+(?:to\s+(?:join|close)|(?:to|in|into)\s+(?:the\s+)?(?:first|1st|top)\b[^,.;()*]{0,30}))?+(?:(?:,\s{3,}|[,.]?\s*(?:ch\s*\d+|[1-9]\s*ch\b\.?(?=\s*(?:,|and\b)?\s*turn\b)|(?:and\s+)?turn|join|no\s+(?:join|turn)|(?:fasten|end) off|(?:cut|attach|break|drop)\b[^,.;()]{0,30}|do not (?:turn|join)))*)[.;]?)\s*$",
    re.IGNORECASE,
)

_MID = re.compile(  # "… 20 d.c. in row. Ch. 4. Turn."
    r"(?<=[.,;)] )(?P<in>" + _LISTED + r"\s+[a-z][a-z.]{0,8}(?:\s[a-z]\.?)?)\s+in\s+(?:the\s+)?(?:row|round|rnd|all)\b\.?(?=[^*]{0,90}$)(?!.*\b(?:next|each)\b)", re.IGNORECASE,
)
_DASH_LAST, _NOUN = re.compile(r"[a-z]\s{1,20}(?P<dash>[–-]\s(?=\d))[^–-]*$", re.IGNORECASE), r"(?:sts?|stitches|sc|hdc|dc|tr|htr|dtr)"
_GOES_IN = re.compile(r"\d\s+[a-z]{1,3}\.?(?:\s?[a-z]\.?)?\s+in\s+(?:the\s+)?(?:next|last|first|same|remaining)\b(?!\s+(?:row|rnd|round)\b)", re.IGNORECASE)
_LISTED_BEFORE = re.compile(r"\b\d\s+(?:[shd]{1,2}\s?c|h?tr(?:\s?c)?)$", re.IGNORECASE)
_PLAIN, SHORT = re.compile(r"\(\d{1,4}(?: (?:sts|sc|hdc|dc|tr|htr))?\)"), 12
_ONE_PLAIN = re.compile(r"(?P<n>\d{1,4})(?: (?P<noun>sts|sc|hdc|dc|tr|htr))?")  # as nearly all are: told without being scanned
_BRACKET = re.compile(r"[)\]]")
_OUTSIDE = re.compile(rf"(?<!\w)(?<!\bnext )(?<!\beach )(?<!\bfirst )(?<!\blast )(?<!\bof )(?<!\bin )[(\[]\s*(?P<n>\d{{1,4}})\s*[)\]]\s*(?P<noun>{_NOUN})\s*\.?\s*$", re.IGNORECASE)  # "(13) sts"
_DASHED = re.compile(r"(?<=[\s.;])-\s?(?P<in>\d{1,4}(?:\s+[a-z]{2,9})?)\s?-$", re.IGNORECASE)  # "-18 sc-"
_REMARK = re.compile(rf"[(\[]\s*(?P<in>{_LISTED}(?:\s+[a-z][a-z.]{{0,8}}(?:\s[a-z]{{1,2}}\.?)?)?(?:\s+on\s+(?:the\s+)?(?:last|\d{{1,3}}(?:st|nd|rd|th))\s+(?:rnd|row|round))?)\s*[)\]](?:\s++(?=(?-i:[A-Z][a-zA-Z]))|\s*+\.\s*+(?:[.,]\s*+){{0,2}}(?<=\s)(?=[A-Z])|\s*[;,]\s+(?=(?:join|sl\.?\s?st|slip\s?st|ss|fasten|break|cut)\b)|\s*[–—]\s*+(?=[A-Za-z]|$)|\s*-\s++(?=[A-Za-z]|$))", re.IGNORECASE)
_SUM = re.compile(r"[.;]\s+\d{1,4}\s+[a-z]{2,4}\s*(?:\+\s*\d{1,4}\s+[a-z]{2,4}\s*)*=\s*(?P<in>\d{1,4}(?:\s+[a-z]{2,4})?)\s*\.\s+(?=[A-Z])", re.IGNORECASE)  # "30 sc + 6 dec = 36 sts. Stuff."
_TOLD = re.compile(rf"(?<=[.;)])\s(?P<in>{_LISTED}\s+(?:sts|stitches|(?:[sdh]{{1,2}}c|[dh]?tr)(?=\s*\.\s+(?i:do\s+not\s+turn|join|fasten|break|cut|end\s+off)\b)))\s*\.\s+(?=[A-Z])")  # "…; rep from * to end. 18 sts. Fasten off and draw up."
_THINGS = re.compile(r"[(\[]\s*(?P<in>\d{1,4}\s[^()\[\]*;.]{1,24}(?:,|\band\b|&|\+)\s*\d{1,4}\s[^()\[\]*;.]{1,60})[)\]]\s*+\.?\s*+(?=(?:finish|fasten|tie|end|cut|break|change)\b)", re.IGNORECASE)  # "(6 sc and 6 ch-3 sps) Finish off and hide the ends."
_TOTAL = re.compile(rf"(?:[,;:(–—-]|\bfor\s+a|\bmaking\s+a)\s*total\s+of\s+(?P<in>{_LISTED}(?:\s+[a-z]{{2,9}})?)\)?\s*[.;,]\s+(?=[a-z])", re.IGNORECASE)  # "… on each side - total of 120 sc. Sl st to first sc."
_A_SUM = re.compile(r"[\d\s+]*(?:[a-z]{2,10}[\s+]*[\d\s+]*){0,6}=", re.IGNORECASE)  # "30 sc + 6 inc = "
_CHAIN_BEFORE = re.compile(r"\bch$", re.IGNORECASE)  # "ch. 1 = 12 sc": the chain is none of the sum
_GOING_ON = re.compile(r"(?:work|cont(?:inue|\.)?)\s+in\s+(?:rounds|rnds|rows|a\s+spiral)\b(?![^;]*\b(?:each|next|into|every)\b)[^*;]*$", re.IGNORECASE)  # "(30 dc). Work in rounds of dc for 2 ins."
_FINISHED = re.compile(r"(?:(?:do\s+not\s+turn|(?:sl\.?\s?st|slip\s?st(?:itch)?|ss)\s+(?:in|into|to)\b[^.;*()]{1,50}|join\b[^.;*()]{0,70}|(?:break|fasten|cut|end|finish|tie)\s+(?:off|yarn|thread)\b[^.;()]{0,30})(?:[.;,]\s+|\.?$))+$", re.IGNORECASE)  # "(72 sc). Sl st in next sc. Break off."
_TALK = re.compile(  # "(20) These decreases come at the front.", "(24 sc). Finish off. Weave the tail through each sc."
    r"\s*(?:(?:these|those|they|your|this\s+(?:is|will|should|makes|forms))\b(?:(?!\b(?:work|ch|skip|sk|next|each|rep|repeat)\b)[^;*\d]){3,160}"
    r"|(?:finish|fasten|tie)\s+off\b[^.;*]{0,60}\.\s+(?:weave|thread|place|sew|gather|insert|run|stuff)\b[^;*]{0,200}"
    r"|(?:finish|fasten|tie|end|cut|break)\s+(?:off|(?:the\s+)?(?:yarn|thread))\s*(?:,|and|&)\s*(?:then\s+)?(?:weave|hide|sew|work|tuck|secure|leave)\b[^;*]{0,80}|(?:change|switch)\s+colou?rs?\b[^.;*]{0,40}\.?\s*)$", re.IGNORECASE,  # "(30 sc) Finish off and hide the ends."
)
_ENDS = re.compile(r"\b(?:turn|join|fasten off|ch\s*\d)\b", re.IGNORECASE)
_ALONE = re.compile(
    rf"\s*(?P<open2>[(\[]\s*)?(?P<lead>(?:st(?:itch)?\s+count|total(?:\s+(?:sts|stitches))?)\s*[:=]\s*|=\s*|(?:the\s+)?model\s+(?:shown\s+)?has\s+|there\s+(?:are|should\s+be|will\s+be)\s+)?(?P<open>[(\[])?\s*(?P<in>\d{{1,4}}(?:\s*[(\[][\d,:;\s–-]+[)\]])?(?:\s+(?P<noun>{_NOUN}))?)(?:\s+(?:in\s+all|altogether|around|on\s+(?:the\s+)?(?:row|rnd|round)))?\s*\.?\s*[)\]]?\s*\.?\s*",
    re.IGNORECASE,
)
_AT_EACH = ("at each end", "each end", "on each end", "at each edge", "each edge", "at each side", "each side", "on each side", "on every side", "on each of the 4 sides", "on each of the four sides", "between corners on each side")
_NO_THINGS = frozenset("more times next first last each once twice around evenly every".split())
_WORKED = re.compile(r"\b(?:in|into|each|on|over|around|across|under|to)\b", re.IGNORECASE)  # "3 chain, 11 treble in the round, join" makes them
LONGEST_COUNT, LONGEST_REMARK, COUNT_BEGINS = 60, 200, frozenset("0123456789([=sStTmM")  # of a line that is nothing but a count; of a remark with its count
LONGEST_NUMBER, SHORTEST = 16, 3  # characters of a row that is nothing but a number; letters of an abbreviation
_NUMBER_ALONE = re.compile(r"(?P<n>\d{1,4})(?:\s*[(\[=]\s*(?P=n)\s*[)\]]?)?\.?")
_EARLIER = re.compile(rf"[(\[]\s*(?P<in>\d{{1,4}}\s+{_NOUN})\s*[)\]]\s*$", re.IGNORECASE)  # "(49 sts) (7 points)"
_REMARKS = re.compile(r"\(\d+ (?:bl|blk|block|sp|space|mesh)(?:e?s)?(?:\s+made)?\)", re.IGNORECASE)
_MESHES = re.compile(r"\b\d{1,3} (?:bl|blk|block|sp|space|mesh)(?:e?s)?\b", re.IGNORECASE)
_ALL = re.compile(r"\b(?:each|every|across|around|to\s+end|remaining|tog|2tog|last\s+\d*\s*[a-z]+)\b[^.;:(]{0,40}$", re.IGNORECASE)  # nothing is left to be worked
_BRACED = re.compile(r"\{\s*\d[^{}\n]*\}$")  # "{40, 42, 44}": no blank has such a name
_ENDED = re.compile(r"(?:\bturn|from\s\*(?:\s(?:across|around))?|\* to end|\b(?:ss|sl\.?\s?st|join)\b[^.;]{0,40}\b(?:to|in|into)\b[^.;]{0,40})\s*$", re.IGNORECASE)  # nothing is worked after it
_POINTED = re.compile(  # "(8.4 sc)": a count with a slip in it is one all the same, and no stitches to be made
    r"[(\[]\s*\d+\.\d+(?:\s*[(\[][\d,.\s]+[)\]])?(?!\s*(?:cm|mm|m|in|ins|inch|inches|g|oz|yds?)\b|\s*[\"″”%])[^()\[\]\n]{0,40}[)\]]\s*[.;]?\s*$", re.IGNORECASE,
)


@record
class Printed:
    """Counts stated at a row's end; `stop`: where the row's words end before them; `after`: what still follows them.

    `sure` is false where the words may as well be an instruction ("…; 10 sc").
    """

    counts: tuple[Count, ...]
    stop: int
    after: Span
    sure: bool = True


def printed(text: str, start: int, end: int, dialect: Dialect, sizes: int) -> Printed:
    """The counts stated at the end of text[start:end]."""
    apart = _set_apart(text, start, end, dialect, sizes)
    if apart is not None:
        return apart
    m = _plainly(text, start, end) or next(iter(deque(_END.finditer(text, max(start, end - 160), end), maxlen=1)), None)
    if m is None and (remarked := _remarked(text, start, end, dialect, sizes)) is not None:
        return remarked
    if m is None:
        slip = _POINTED.search(text, max(start, end - 80), end)
        return Printed((), slip.start() if slip else end, Span(end, end))
    m = _nearest(text, m, end)
    if text[max(start, m.start() - 12) : m.start()].rstrip().lower().endswith(("until", "till")):
        return Printed((), end, Span(end, end))
    bracket = m["lead"] in "([{<"
    if not bracket and _is_filet(text, start, m) or not bracket and re.search(r"(?<!of )(?<!in )(?<!end )(?<!turning )(?<!beg )(?<!beginning )(?<!starting )(?<!the )(?<!each )(?<!remaining )(?<!rem )(?<!other )(?<!every )(?<!last )(?<!next )(?<!first )(?<!same )(?<!1st )(?<!2nd )(?<!3rd )(?<!4th )(?<!5th )(?<!\d )(?<!\d-)\bch(?:ain)?\s*$", text[start : m.start()], re.IGNORECASE):
        return Printed((), end, Span(end, end))
    if bracket and re.search(r"(?:\d[)\]]?,?|[{}])\s*$", text[start : m.start()]) and sizes > 1:
        return Printed((), end, Span(end, end))
    if not bracket and not re.search("[a-z]", m["in"], re.IGNORECASE) and re.search(r"\b(?:rows?|rnds?|rounds?)\s*\d+\s*$", text[start : m.start()], re.IGNORECASE):
        return Printed((), end, Span(end, end))  # "rep rows 5 – 8"
    if not bracket and _GOES_IN.search(m["in"]) is not None or m["lead"] == "," and m["in"][1:2] == " " and _LISTED_BEFORE.search(text, max(start, m.start() - 16), m.start()) is not None:
        return Printed((), end, Span(end, end))  # "; 1 s c in last 8 sts. Ch 3, turn.", "1 s c, 4 d c, 1 s c, cut Red"
    sure = bracket or m["lead"].strip() not in (".", ";", ":", "") or re.search(r"\b(?:sts?|stitches|total)\b|^\d+\s*$", m["in"], re.IGNORECASE) is not None
    sure = sure or m["lead"].strip() in (":", ",") and _ALL.search(text[start : m.start()]) is not None
    sure = sure or _ENDED.search(text[start : m.start()]) is not None
    begin = m.start("in") + m["in"].rfind("=") + 1  # "6 sc + 6 inc = 18 sts"
    found = _counts(text, begin, m.end("in"), dialect, sizes)
    if bracket and not found and "side" in m["in"] and m["in"].rstrip(". ").endswith(_AT_EACH):
        return Printed((), m.start(), Span(*m.span("after")))  # "(8 tr on each side)": of which there are so many as nobody says
    if bracket and _REMARKS.search(text, start, m.start()) and _REMARKS.match(text, m.start(), end):
        return Printed((), end, Span(end, end))  # "dc in next 2 ch (1 bl), … dc in next 3 ch (1 bl)": what those make
    chains = not bracket and all(c.noun == "ch" for c in found) and (m["lead"].strip() in ("", ",") or re.search(r"\bturn\b", m["after"], re.IGNORECASE))
    if not found or chains:
        return Printed((), end, Span(end, end))  # "…; 3 ch., turn", "…, 5 ch, ss to first dc": chains to be made
    if bracket and (earlier := _EARLIER.search(text, max(start, m.start() - 24), m.start())) is not None and text[start : earlier.start()].strip() and (both := _counts(text, *earlier.span("in"), dialect, sizes)) and both[-1].noun != found[0].noun:
        return Printed((*both, *found), earlier.start(), Span(*m.span("after")), sure)
    return Printed(found, m.start(), Span(*m.span("after")), sure)


def _plainly(text: str, start: int, end: int) -> re.Match[str] | None:
    """ "(12 sc)" at the end, as nearly all rows have it: what looking for counts from further off would find, in less time."""
    at = text.rfind("(", max(start, end - SHORT), end) if text.endswith(")", start, end) else -1
    return _END.match(text, at, end) if at >= 0 and _PLAIN.fullmatch(text, at, end) is not None else None


def _nearest(text: str, m: re.Match[str], end: int) -> re.Match[str]:
    """What stands nearest to the end, where what was found as a count holds words of the row too."""
    if m["lead"].strip() in (",", ":") and ":" in m["in"] or m["lead"].startswith(".") and "--" in m["in"]:
        m = _END.search(text, m.start("in"), end) or m  # "…; rep from * to end, 2 ch, join: 16 popcorns", "dec. 1 sc at each end of next row--60 sc."
    if m["lead"].lower() in ("having", "making") and " - " in m["in"]:
        m = _END.search(text, m.start("in"), end) or m  # "same as Rnd 3, having 2 dc between incs - 48 dc"
    if m["lead"].strip() in (";", ".", ",") and (dash := _DASH_LAST.search(m["in"])) is not None:
        m = _END.match(text, m.start("in") + dash.start("dash"), end) or m  # "…; 10 sc up the other side; 6 sc to the marker – 30 sc"
    if "=" in m["in"] and (_A_SUM.match(m["in"]) is None or _CHAIN_BEFORE.search(text, 0, m.start()) is not None):
        m = _END.match(text, m.start("in") + m["in"].rindex("="), end) or m  # "ss to form ring. 1 ch, 16 dc into ring = 16 dc"
    if m["lead"].strip() == ":" and (behind := _END.search(text, m.start() + 1, end)) is not None and behind["lead"] in "([{<" and not text[m.start() : behind.start()].rstrip()[-1:].isdigit():
        return behind  # "in back loops: 12 sc (12)"
    return m


def _set_apart(text: str, start: int, end: int, dialect: Dialect, sizes: int) -> Printed | None:
    """Counts told apart from the words: "20 d.c. in row. Ch. 4. Turn.", "(13) sts", "-18 sc-", "18 sts. Fasten off.", "6 sc + 6 inc = 18 sts."."""
    mid = _MID.search(text, start, end)
    if mid is not None and _WORKED.search(text, start, mid.start()) and (stated := _counts(text, mid.start("in"), mid.end("in"), dialect, sizes)):
        return Printed(stated, mid.start("in"), Span(mid.end(), end))
    outside = _OUTSIDE.search(text, max(start, end - 40), end) if text[end - 1 : end] not in (")", "]") and _BRACKET.search(text, max(start, end - 14), end) else None
    if outside is not None and not text[start : outside.start()].rstrip()[-1:].isdigit() and (told := _counts(text, outside.start("n"), outside.end("n"), dialect, sizes)):
        return Printed(tuple(changed(c, noun=_named(outside["noun"], dialect)) for c in told), outside.start(), Span(end, end))
    if text[end - 1 : end] == "-" and (dashed := _DASHED.search(text, max(start, end - 40), end)) is not None and (told := _counts(text, *dashed.span("in"), dialect, sizes)):
        return Printed(told, dashed.start(), Span(end, end))
    for sign, told_so in ((("sts.", "stitches.", "c. ", "r. "), _TOLD), (("=",), _SUM), (("otal of",), _TOTAL), ((" off",), _THINGS)):
        if any(s in text[start:end] for s in sign) and (said := _remarked(text, start, end, dialect, sizes, told_so)) is not None:
            return said
    return None


def _is_filet(text: str, start: int, m: re.Match[str]) -> bool:
    """ "1 bl; 10 sps, 1 bl, 9 sps", "(2 bls made); 4 sps": meshes to be made, which look like counts."""
    return len(_MESHES.findall(m["in"])) > 2 or m["lead"].strip() == ";" and _MESHES.match(m["in"]) is not None and _REMARKS.search(text, start, m.start()) is not None


def _remarked(text: str, start: int, end: int, dialect: Dialect, sizes: int, told: re.Pattern[str] = _REMARK) -> Printed | None:
    """ "… (12). Start stuffing.": a count with a remark behind it, in which nothing is worked."""
    for m in reversed(list(told.finditer(text, max(start, end - LONGEST_REMARK), end))):
        if sizes > 1 and text[m.start()] in "([" and text[start : m.start()].rstrip()[-1:].isdigit():
            continue  # the other sizes' numbers
        counts = _counts(text, m.start("in"), m.end("in"), dialect, sizes)
        going_on = _GOING_ON.match(text, m.end(), end) is not None or of_the_whole(text[m.end() : end])
        talk = counts and _TALK.match(text, m.end(), end) is not None
        if talk or counts and _FINISHED.match(text, m.end(), end) is not None:
            return Printed(counts, m.start(), Span(end if talk else m.end(), end))
        if counts and (going_on or not any(t.kind in ("kind", "star", "times", "close") for t in scan(text, m.end(), end, dialect))):
            ends = _ENDS.search(text, m.end(), end)
            return Printed(counts, m.start(), Span(ends.start(), end) if ends else Span(end, end))
    return None


def number_alone(text: str, start: int, end: int, sizes: int) -> tuple[tuple[Make, ...], tuple[Count, ...]] | None:
    """ "15-19) 12": so many stitches, as they come, and their count; None where a row tells more than a number."""
    m = _NUMBER_ALONE.fullmatch(text, start, end) if sizes == 1 and text[start : start + 1].isdigit() and end - start < LONGEST_NUMBER else None
    if m is None:
        return None
    span = Span(*m.span("n"))
    n = Num((int(m["n"]),), None, span)
    return (Make("st", n, span=span),), (Count(n, None, span=span),)


def only_count(line: str, start: int, dialect: Dialect, sizes: int) -> tuple[Count, ...]:
    """The counts of a line that holds nothing else, "[12 sc]", "12 sts", "Stitch count: 12"; none where it holds more."""
    m = _ALONE.fullmatch(line) if len(line) < LONGEST_COUNT else None
    if m is None or not (m["lead"] or m["open"] or m["noun"]):
        return ()
    blank = " " * start  # so that the counts stand where they stand
    return _counts(blank + line, start + m.start("in"), start + m.end("in"), dialect, sizes)


def _named(noun: str, dialect: Dialect) -> str | None:
    """The noun of a count, None for stitches."""
    return dialect.kind_of(noun.lower())


def _counts(text: str, start: int, end: int, dialect: Dialect, sizes: int) -> tuple[Count, ...]:
    if sizes == 1 and (plain := _ONE_PLAIN.fullmatch(text, start, end)) is not None:
        noun = dialect.kind_of(plain["noun"]) if plain["noun"] and plain["noun"] != "sts" else None
        if noun is not None or plain["noun"] in (None, "sts"):
            return (Count(Num((int(plain["n"]),), span=Span(*plain.span("n"))), noun, span=Span(start, end)),)
    if _BRACED.match(text, start, end):
        start, end = start + 1, end - 1
    cur = Cursor(scan(text, start, end, dialect), dialect, sizes)
    if (for_sizes := _flat(cur)) is not None:
        return (for_sizes,)
    found: list[Count] = []
    while not cur.done:
        cur.skip("total", "of", ":", "and", ",", "=", "there", "are", "is", "you", "have", "in", "all", "made", "&", "+", "around", "now", "each")
        if cur.done or found and _remark_follows(cur):
            break
        at = cur.at
        if found and _one_thing(cur):
            continue
        n = _stitches_glued(cur) or cur.number()
        if n is None and found and (chains := _chains(cur)) is not None:
            found.append(Count(chains, "ch", span=cur.span_from(at)))
            continue
        if n is None:
            return tuple(found) if _says_nothing(cur, at) else ()
        if cur.low() == "half" and cur.kind(1 + (cur.low(1) == "-")) == "kind":
            cur.at += 2 + (cur.low(1) == "-")  # "2 half-shells": not counted by themselves
            continue
        named, noun = cur.at, _noun(cur)
        length = _length(cur, named, noun)
        made_of(cur)
        if any(map(cur.accept_words, _AT_EACH)):
            continue
        if noun == "?" and _of_her_own(cur, begun=bool(found)):
            continue
        if noun in ("?", "row") or _is_worked(cur, noun):
            return tuple(found) if noun == "?" and _says_nothing(cur, at) else ()
        _where(cur, noun)
        found.append(Count(n if n.values else Num((), n.blank), noun, span=cur.span_from(at), length=length))
    return along_row(found)


def _remark_follows(cur: Cursor) -> bool:
    """Whether a remark on the counts so far may follow: "- 46 on each side", ", the ch counted". Takes the ";" before the count of another row."""
    if cur.low() == ";" and cur.kind(1) == "num" and cur.kind(2) in ("kind", "end"):
        cur.at += 1  # "(42 dc; 48 dc)", of two rows
    return cur.low() in ("-", "–", "—", ";", ".", ":", "with") or any(cur.low(i) in ("counted", "counting", "included", "including", "being") for i in range(6))


def _where(cur: Cursor, noun: str | None) -> None:
    """ "in all", "on 7th rnd", "remain"; "7 ch-1 sps in pineapple": takes where they were counted."""
    cur.skip("in", "row", "rnd", "round", "all", "the", "blo", "flo", "this", "on", "made", "total", "last", "remain", "remaining", "left", ".")
    if cur.kind() == "ord" and cur.low(-1) == "on" and cur.low(1) in ("row", "rnd", "round"):
        cur.at += 2
    while noun == "ch-sp" and cur.low(-1) in ("in", "the") and cur.kind() == "word":
        cur.at += 1


def _says_nothing(cur: Cursor, at: int) -> bool:
    """Whether what stands behind a count, "6 corners", "46 on each side", only tells more of it: nothing is worked there."""
    told = {t.low for t in cur.tokens[at:]}
    return not told & {"in", "into", "next", "skip", "sk", "miss", "rep", "repeat", "*", "turn", "join", "more", "less", "fewer", "instead"} and not any(t.kind in ("star", "times", "open") for t in cur.tokens[at:])


def _length(cur: Cursor, named: int, noun: str | None) -> int | None:
    """Of how many chains the spaces are that a noun names from `named` on; "12 groups of 3 dc": of how many stitches the groups."""
    each = cur.token(1)
    if noun == "group" and cur.low() == "of" and each is not None and isinstance(each.value, int):
        return each.value
    told = (int(t.value) for t in cur.tokens[named : cur.at] if t.kind == "num" and isinstance(t.value, int))
    return next(told, None) if noun == "ch-sp" else None


def _one_thing(cur: Cursor) -> bool:
    """ "and a 3-dc half shell at each edge" behind another count: told, not counted; the chain in "and a ch-3" is left standing."""
    if not cur.accept("a", "an") or cur.kind() == "kind" and cur.token().value == "ch":  # type: ignore[union-attr]
        return False
    while not cur.done and cur.low() != ",":
        cur.at += 1
    return True


def _is_worked(cur: Cursor, noun: str | None) -> bool:
    """ "1 sc in next": whether what was just counted is worked somewhere, and so is no count; spaces never are."""
    if noun == "ch-sp":
        return False
    if cur.low() in ("in", "on") and (cur.kind(1) == "ord" or cur.low(1) == "last") and cur.low(2) in ("row", "rnd", "round"):
        return False
    if cur.low() == "in" and _into_stitches(cur):
        return True
    if cur.low() in ("in", "on") and cur.low(1) not in ("row", "rnd", "round", "all", "the", "this", "total", "last", "each"):
        return True
    return cur.low() == "in" and cur.low(1) == "each" and cur.low(2) not in ("size", "sizes")


def _into_stitches(cur: Cursor) -> bool:
    """ "2 sc in last sc", "in the next st": whether a stitch or a space is named, and no row."""
    at = 1 + (cur.low(1) in ("the", "this"))
    if cur.low(at) in ("next", "same"):
        return True
    at += cur.low(at) in ("last", "first", "end") or cur.kind(at) == "ord"
    return cur.kind(at) == "kind" or thing_word(cur.low(at)) not in (None, "row")


def _of_her_own(cur: Cursor, *, begun: bool) -> bool:
    """ "(12 sc and 4 buttonholes)": whether what was just counted is something that is no stitch, and stands among stitches."""
    word = cur.tokens[cur.at - 1]
    things = word.kind == "word" and len(word.low) > SHORTEST and word.low not in _NO_THINGS
    return things and (begun and cur.done or word.low.endswith("s") and cur.low() in ("and", ",", "+", "&") and cur.kind(1) == "num")


def _flat(cur: Cursor) -> Count | None:
    """ "(28, 32, 36 sts)", "36/40/44": a number for each size and nothing else; nothing taken where it is not."""
    if cur.sizes < 2:
        return None
    values: list[int | None] = []
    start = cur.at
    for i in range(cur.sizes):
        t = cur.token()
        if t is None or i and not cur.accept(*SIZE_SEPS):
            break
        t = cur.token()
        dash = t is not None and t.text in ("-", "–", "—")
        if t is None or not dash and (t.kind != "num" or not isinstance(t.value, int)):
            break
        values.append(None if dash else t.value)
        cur.at += 1
    at = cur.at
    noun = _noun(cur) if len(values) == cur.sizes and cur.low() not in SIZE_SEPS else "?"
    if noun == "?" or not cur.done and cur.low() != "." or all(v is None for v in values):
        cur.at = start
        return None
    return Count(Num(tuple(values), None, Span(cur.tokens[start].start, cur.tokens[at - 1].end)), noun, span=cur.span_from(start))


def _chains(cur: Cursor) -> Num | None:
    """ "ch 6" behind another count: "(22 sc, ch 6)"."""
    if cur.kind() != "kind" or cur.token().value != "ch":  # type: ignore[union-attr]
        return None
    cur.at += 1 + (cur.low(1) == "-")
    return cur.number()


def _stitches_glued(cur: Cursor) -> Num | None:
    """ "21st" as a count means 21 stitches, though it looks like an ordinal."""
    t = cur.token()
    if t is None or t.kind != "ord" or not t.text.lower().endswith("st") or not t.text[0].isdigit():
        return None
    cur.at += 1
    return Num((int(t.value),), span=Span(t.start, t.end))


_WHICH = frozenset("solid open closed filled whole complete full outer inner side long short large small big little middle underarm corner".split())


def _noun(cur: Cursor) -> str | None:
    cur.at += cur.low() == "," and cur.kind(1) == "kind" and cur.kind(2) in ("sep", "end", "close")  # "11, tr2tog, 1 tr": a slip
    if cur.done or cur.low() in (",", "and"):
        return None
    cur.skip(*_WHICH)
    if cur.done:
        return None
    t = cur.take()
    if t.kind == "num" and cur.kind() == "kind" and cur.token().value == "ch" and cur.low(1) == "-" and thing_word(cur.low(2)):  # type: ignore[union-attr]
        cur.at += 3
        return "ch-sp"  # "21 1ch-sps"
    if t.kind == "num" and cur.low() == "-" and cur.kind(1) == "kind" and cur.token(1).value == "ch":  # type: ignore[union-attr]
        cur.at += 2
        cur.at += int(thing_word(cur.low()) is not None)
        return "ch-sp"  # "4 2-ch sps"
    if t.kind == "kind":
        if t.value == "ch" and (cur.low() == "-" or cur.kind() == "num"):
            cur.at += cur.low() == "-"
            cur.number()  # "1 ch 6 (7) loop" of two sizes
            cur.skip(*_WHICH, "corner")
            if cur.kind() == "kind" and cur.token().value == "picot":  # type: ignore[union-attr]
                cur.at += 1
                return "picot"
            if cur.kind() == "word" and thing_word(cur.low()) is None and len(cur.low()) > SHORTEST and cur.low().endswith("s") and cur.low() not in _NO_THINGS:
                cur.at += 1
                return "ch-sp"  # "2 ch-8 handles"
        named = thing_word(cur.low())
        if named:
            cur.at += 1
            return "ch-sp" if t.value == "ch" and named in ("sp", "loop") else named if named == "group" else str(t.value)
        return str(t.value)
    named = thing_word(t.text)
    if named is not None:
        return None if named == "st" else "ch-sp" if named in ("sp", "loop") else named
    return "?"
