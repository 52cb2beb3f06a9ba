"""Asides within rows that ask for no stitch: yarn cut, markers placed, which part is meant. Each with words of which one is in all that it finds.

Common practice, no source: the forms were met in printed books and leaflets, and on pages of today.
Where an aside says which part of the piece is meant ("for thumb", "across sleeve"), the rows and stitches before it tell where the work goes on.
"""

from __future__ import annotations

import re
from collections.abc import Callable

from loopwright.source.expressions import Expression

_ASIDES: tuple[tuple[tuple[str, ...], str], ...] = (
    (("(",), r"\((?:when|note|starting|beginning|always|about|approximately|see|leave|or\s+(?:to\s+)?desired)[^()]{0,200}\)"),
    (("twist",), r",?\s{0,3}(?:being|taking)\s+(?:very\s+)?care(?:ful)?\s+not\s+to\s+twist(?:\s+(?:the\s+)?(?:chain|ch|work|it|sts)\b)?"),
    (("this brings thread",), r"\(?this brings thread[^().;]{0,60}\)?"),
    (("counts as ", "count as "), r"(?<=[.;])\s{0,3}\(?(?:this|these|the)\s[^.;()]{0,40}\bcounts?\s+as\s+(?:a|one|the|last)\s+(?:\w+\s+)?(?:ch-?\s?\d+\s)?(?:loops?|lps?|sps?|spaces?)\b\.?\)?"),
    (("(make",), r"\((?:make|MAKE)\s+\d+\)"),
    (("marker",), r"\b(?:place|use)\s+(?:a\s+)?markers?\s+(?:at|to|for)[^.;]{0,50}[.;]?"),
    (("unless otherwise",), r"\bdo not turn unless otherwise (?:said|indicated)"),
    (("mark",), r",?\s{0,3}\bmark(?:ing)?\s+(?:the\s+)?(?:beg(?:inning)?|first st(?:itch)?|start|end)\s+of\s+(?:the\s+|each\s+)?(?:rnd|round|row)s?\b"),
    (("thumb", "armhole", "leg", "opening", "handle", "strap"), r"(?<!\bas )\bfor (?:the |an? )?(?:thumb|armhole|leg|opening|handle|strap)(?:\s+(?:hole|opening))?\b"),
    (("across",), r"\bacross\s+(?:the\s+)?(?:back|front|sleeve)s?\b(?=\s+to\s+(?:the\s+)?(?:next|first|last))"),
    (("sleeve",), r"\bskip(?:ping)?\s+(?:all\s+)?(?:the\s+)?sleeve\s+(?:sts|stitches)\b,?(?=\s*[sdht][\w.]{1,4}\s+in\s+(?:the\s+)?next\s+(?:ch|corner))"),
    (("work in ",), r"(?<=work) in (?=(?:s\.?c|d\.?c|h\.?d\.?c|h?tr)\b\s+(?:evenly|(?:all\s+)?around))"),
    (("start", "beginning"), r"\b(?:start(?:ing)?|beginning)\s+(?=(?:in|from|at|with)\s+(?:the\s+)?(?:2nd|3rd|4th|second|third|fourth)\s+ch)"),
    (("starting at ", "beginning at "), r"\b(?:starting|beginning)\s+at\s+(?:the\s+)?(?:[a-z]+\s+){0,2}(?:edge|end|cent(?:er|re)|bottom|top|seam|tip|point|waist(?:line)?|underarm|neck(?:line)?|crown|toe|heel)(?:\s+of\s+(?:the\s+)?(?:bottom|sole|back|front|crown|top|toe|heel|hat|bag|piece|motif|flower))?\s*(?:,|(?=with\b))"),
    (("throughout",), r"\brep(?:eat)?\.?\s+(?:this\s+row|last\s+row|row\s+\d{1,2}|\d{1,2}(?:st|nd|rd|th)\s+row)\s+throughout\s*[.;](?=\s*[A-Za-z])"),
    (("instead of",), r"\(\s*instead of [^()]{1,30}\)"),
    (("mark",), r"[,;]?\s{0,3}\b(?:carry|carrying|use|using|run|running)\s+(?:a\s+)?(?:[a-z-]+\s+){0,2}(?:thread|yarn|strand|cord|pin)\b[^.;()*]{0,60}\bmark(?:ing)?\s[^.;()*]{0,40}"),
    (("joining", "turning"), r",\s{0,3}(?:and\s+)?(?:joining|turning)\s+(?:at\s+(?:the\s+)?end\s+of\s+)?(?:each|every)\s+(?:rnd|round|row)\b(?:\s+with\s+(?:a\s+)?(?:sl\s?st|ss))?(?=\s*(?:[.;]|$))"),
    (("beginning with", "starting with", "beginning round with"), r"(?<=[a-z]),\s{1,3}(?:beginning|starting)\s+(?:(?:the\s+|each\s+)?(?:round|row|rnd)\s+)?with\s+(?:\d\s*ch|ch[ -]?\d)\s+(?:for|as|to\s+(?:stand|count)\s+(?:for|as))\s+(?:the\s+)?(?:first|1st)\s+[a-z]{1,3}(?:\s?c)?\b(?:\s+and(?=\s+ending))?"),
    (("care",), r",?\s{0,3}\b(?:being|taking)\s+(?:very\s+)?care(?:ful)?\s+(?:not\s+to|that\s+no)\s+[^.;()*]{0,40}\b(?:inc|dec)(?:s|r|rease[sd]?|reasings?)?\b[^.;()*]{0,60}"),
    (("(cent", "(middle", "(corner"), r"\((?:the\s+)?(?:cent(?:er|re)|middle|corner)\s+(?:[a-z]{1,6}\s+){0,2}(?:of|at)\s+(?:the\s+|each\s+)?(?:corner|shell|group|petal|scallop|side)s?\)"),
    (("along",), r"(?:(?<=sps)|(?<=spaces)|(?<=loops)|(?<=lps))\s+along\s+(?:the\s+|each\s+)?(?:side|edge)\b"),
    (("without ",), r"(?<=plain),\s{0,3}without\s+(?:any\s+)?(?:further\s+)?(?:inc|dec)reas(?:e|es|ing|ings)\b(?=\s*[.;]|\s*$)"),
    (("inserting",), r"\binserting\s+(?:the\s+)?hook\s+from\s+(?:the\s+)?(?:back|behind|rear)\b(?:\s+(?:to\s+(?:the\s+)?front|of\s+(?:the\s+)?work))?,?(?=\s+(?:work|make|\d))"),
    (("on hook",), r"\bpull(?:ing)?\s+\w*\s*through both loops on hook"),
    (("leaving a",), r"\bleaving (?:a|an)\b[^.;]{0,60}"),
    (("hook",), r"(?<=\d)\s*x?\s*hook(?=,)"),
    (("cut ",), r"\bcut\s+(?:off|away)\s+(?:the\s+|any\s+)?(?:remaining|rem|excess|extra|surplus|unused|left-?over)\s+ch(?:ain)?s?\b"),
    (("center ", "centre "), r"\bfor\s+(?:the\s+)?cent(?:er|re)\s+(?:front|back)\b"),
    (("end of ",), r"\bat\s+(?:the\s+)?end\s+of\s+(?:the\s+|this\s+|each\s+)?row\s*,?(?=\s*ch\b)"),
    (("if any",), r",?\s{0,3}\bif\s+any\b(?=\s*(?:[.;]|$))"),
    (("multiple of",), r",?\s{0,3}\b(?:and\s+)?having\s+(?:a\s+|any\s+)?multiple\s+of\s+\d{1,3}(?:\s+(?:sts?|stitches|[sd]\s?c|tr|loops?|sps?)\b)?(?:\s*(?:plus|\+)\s*\d{1,2})?"),
    (("keeping",), r"\bkeeping\s+(?:the\s+)?(?:[a-z]+\s+)?(?:edge|side|end)s?\s+(?:straight|even)\s*,?"),
    (("cut ",), r"\bcut (?:yarn|thread|cotton|wool)\b[^.;,\w]{0,3}(?:leaving[^.;]{0,80})?"),
    (("throughout",), r"(?<=only) of each (?:st|sc|dc|tr|stitch) throughout\b"),
    (("with", "having"), r"\b(?:with|having)\s+(?:the\s+)?(?:RS|WS|(?:right|wrong)\s+side)\s+(?:of\s+(?:the\s+)?work\s+)?(?:facing|toward)(?:\s+you)?,?"),
    (("hook",), r"\bwith (?:size\s+)?[A-Z]\s+hook,?"),
    (("using", "with"), r"\b(?:using|with)\s+(?:(?:a|the|an|size|no\.?|double|single|two|strands?|of|steel|[\w./-]{1,12})\s+){1,6}?(?:hook|yarn|wool|cotton|thread)\b,?(?=\s+(?:ch|chain|make|work|commence|begin|\d))"),
    (("colour", "color", "shade"), r"(?:\b(?:using|with)\s+|(?<=\boff )|(?<=\bdrop ))(?:the\s+)?(?:1st|2nd|3rd|4th|5th|first|second|third|fourth|main|contrast(?:ing)?|next|new|another)\s+(?:colou?r|shade)\b,?"),
    (("last ",), r"(?:(?<=\bend)|(?<=\bend,)|(?<=across)|(?<=across,))\s{1,3}(?:the\s+)?last\s+(?:\w{1,3}\.?\s?\w?\.?)\s+(?:in|into|on)\s+[^,;()]*?(?=[,;()]|\.\s|\.?$)"),
    (("double", "doubled"), r"\b(?:using|with)\s+(?:the\s+)?(?:wool|yarn|cotton|thread)\s+(?:held\s+)?doubled?\b,?(?=\s+(?:ch|chain|make|work)\b)"),
    (("strand",), r"\b(?:with|using)\s+(?:a\s+)?(?:double|single|two|three|[234])\s+strands?(?:\s+of\s+(?:yarn|wool|cotton|thread))?(?:\s+(?:held\s+)?together)?(?:\s+and\s+(?:size\s+)?\w+\s+hook)?(?=\s*[,;]|\s+(?:ch|chain|make|work)\b),?"),
    (("inc", "dec"), r"\((?:an?\s+|\d+\s+|this\s+(?:is|makes)\s+)?(?:\w+\s+)?(?:inc|dec|increases?|decreases?|inc point)\.?(?:\s+rows?|\s+made)?\)(?!\s*[x×*]?\s*\d)"),
    (("do not work ",), r",?\s{0,3}(?:but\s+)?do not work (?:inc|dec)\w*\s+directly (?:above|over)\s+(?:the\s+)?previous (?:inc|dec)\w*"),
    (("bump", "ridge", "hump"), r"\b(?:the\s+)?(?:back|bottom|rear)\s+(?:bumps?|ridges?|humps?)\s+of\s+(?=(?:the\s+)?(?:\d+(?:st|nd|rd|th)?|second|third|each|next|first)\b)"),
    (("to complete ",), r"\bto complete (?:the )?(?:last |first )?\w+"),
    (("leave",), r"(?<=[\w),;.] )leave\s+(?:an?|the)\s+(?:\w+\s+)?tail\b[^.;,]{0,40}"),
    (("hide", "weave"), r"(?<=[\w),;.] )(?:and\s+)?(?:hide|weave\s+in)\s+(?:the\s+|all\s+)?(?:tails?|ends?)\b[^.;]{0,30}"),
    (("cinch",), r"\bcinch(?:ed)?\s+(?:closed|shut|tight(?:ly)?|the\s+(?:top|hole))\b"),
    (("continuing",), r"\bcontinuing\s+(?:on\s+)?from\s+the\s+[^,;.]{1,30},"),
    (("leg", "arm", "ear", "foot", "sleeve", "piece"), r"(?<=[a-z\d])\s(?:around|across|along)\s+(?:the\s+)?(?:first|left|right|1st)\s+(?:leg|arm|ear|foot|sleeve|piece)\b(?=\s*[,;.(])"),
    (("leg", "arm", "ear", "foot", "sleeve", "piece"), r"(?<=[a-z\d])(?<!\bst)(?<!\bstitch)(?<!\bsc)(?<!\bhdc)(?<!\bdc)\s(?:around|across|along)\s+(?:the\s+)?(?:second|other|2nd)\s+(?:leg|arm|ear|foot|sleeve|piece)\b(?=\s*[,;.(])"),
    (("corner",), r"\bat\s+the\s+(?:lower|upper|top|bottom)\s+(?:right|left)[- ](?:hand\s+)?corner\b(?=\s*,)"),
    (("each row",), r"(?<=each row)\s+along\s+the\s+(?:long\s+|short\s+)?side\b(?=\s*[,;.])"),
    (("bonnet", "hat", "front", "back", "neck", "body", "sleeve", "yoke", "face", "bag", "mitt", "sock", "shawl"), r"\b(?:back\s+to|of|down|up)\s+the\s+(?:(?:right|left|face|neck)\s+)?(?:bonnet|hat|fronts?|back|neck|body|sleeve|yoke|face|bag|mitt|mitten|sock|shawl)(?:\s+edge)?\b(?!\s+(?:loops?|lps?|posts?|of|bumps?|ring|\d)\b)(?=\s*[,;.]|\s+(?:rows?|rnds?)?\s*$)"),
    (("for ",), r"(?<!\bas )(?<!\bgiven )(?<!tions )(?<!\bsteps )(?<!hook )\bfor (?:the )?(?:other |left |right )?(?:(?-i:[A-Z][a-z]+)|underarm|neck|sleeve|front|back|picot)\b"),
    (("the cord",), r"(?<=\.)\s[^,;.—]*\bthe cord\b[^.]*\."),
    (("the cord",), r"(?<=[,;.])[^,;.—]*\bthe cord\b[^,;.]*"),
    ((";",), r";\s*the\s+(?:\d\s+)?(?:plain|treble|trebles|double|single|chain|long)\b[^.;*]*"),
    (("including ",), r",?\s{0,3}\bincluding (?!(?:rows?|rnds?|rounds?)\b)(?:[^,;.()]|(?<=\bch)\.(?=\s[a-z]))*(?:\.(?=\s*\)))?,?"),
    (("counting ",), r",?\s{0,3}\bcounting (?:the )?(?:(?:turning|starting|beginning|first|beg|start|\d)\s*-?\s*)?(?:ch(?:ain)?s?|tch|t-ch)\b(?:[^,;.()]|(?<=\bch)\.(?=\s[a-z]))*"),
    (("as before",), r"\bas before\b(?=[^.;]*\b(?:in|under|over|on)\b)"),
    (("cluster ",), r"\bcluster (?:st )?(?=shells?\b)"),
    (("cluster", "group", "popcorn", "scallop", "fan", "bobble", "puff"), r"(?:\ban?\s+)?\b\d+[- ]?(?:d\.? ?c\.?|tr\.?(?: ?c\.?)?|s\.? ?c\.?|petal|d\.? ?tr)[ -]\s?(?=(?:cluster|group|popcorn|scallop|fan|bobble|puff)s?\b)"),
    (("inc", "dec"), r"\(\d+ \w{1,10}(?: \w)? (?:dec|inc)\w* (?:in |on )?(?:each|every|this)[^()]{0,20}\)"),
    (("way", "manner"), r"(?<=[.)])\s[^.()]{0,60}\b(?:every|each)\s+(?:[sdh]{1,2}c\s+|tr\s+)?(?:rnd|row|round)\s+in\s+(?:this|the\s+same)\s+(?:way|manner)\b[^.()]*"),
    (("you still have", "you have"), r"(?:(?<=\.\s)|^)\s*(?:check|count)\b[^.;()*\d]{0,40}\bthat\s+you\s+(?:still\s+)?have\b[^.;()*]{1,30}\.?"),
    (("with your last", "with the last"), r",?\s{0,3}\bwith\s+(?:your|the)\s+last\s+[a-z]{1,9}\s+(?:going|falling|coming|being\s+worked|worked|made)\s+(?:in|into|on|over)\s[^.;()]*"),
    (("working", "making"), r",?\s{0,3}\b(?:working|making) (?:the )?last (?!\w+ (?:in|into) (?:the )?(?:turning|beg) (?:ch|chain)[ -](?:sp|space|loop)\b)(?:[^.;(\[\n]|\.(?=[a-z])|(?<=[a-z])\.(?=\s+[a-z])|(?<=ch)\.(?!\s*[(\[]))*"),
    (("'s", "’s"), r"(?<=[a-z*])[’']s\b(?=\s|[,;.])"),
    (("back of ", "back between"), r"\b(?:in|at) (?:the )?back(?: of (?:the )?work)?\b(?=\s+between)"),
    (("sts evenly",), r"\bspacing (?:the )?sts evenly,?"),
    (("working ",), r"\bworking (?:over|along|on|across|down) (?:the )?(?:(?:raw|long|short|side|row|top|bottom|front|back) )?(?:sides?|edges?|ends?)(?: of (?:each row|the \w+))?,?"),
    (("work",), r"\bwork(?:ing)? in (?:s\.? ?c|d\.? ?c|tr|h\.? ?d\.? ?c)\.?(?: throughout)?,?(?=\s+(?:work|dec|inc)\b)"),
    (("these", "this"), r",?\s{0,3}\b(?:and\s+)?(?:work|cont(?:inue)?)(?:ing)?\s+on\s+(?:these|this\s+set\s+of)\s+(?:\d{1,3}\s+)?(?:sts?\b\.?|stitches)(?:\s+only)?(?=\s*[,.;:]|\s*$)"),
    (("keeping",), r"\bkeeping\s+(?:(?:the|to|in|continuity|of|side|edges?)\s+){0,4}(?:pat(?:t(?:ern)?)?|rib|stripes?)\b\.?\s*(?:correct|straight|as\s+(?:set|established|before))?(?:\s+throughout)?\s*,?"),
    (("loosely",), r"\bloosely\b"),
    (("incl",), r"\bincl\b\.?"),
    (("(",), r"\((?:the\s+)?(?:top|[2-5](?:nd|rd|th)\s+ch|third\s+ch|fourth\s+ch)\s+of\s+(?:the\s+)?(?:beg\w*\s+|turning\s+|t-?)?ch(?:ain)?[- ]?\d?\)"),
    (("first",), r"\((?:this\s+is\s+)?the\s+(?:same\s+)?(?:ch|st|stitch)\s+(?:of|as|with)\s+the\s+first\s+\w+\)"),
    (("shap",), r"^\s*(?:to\s+)?shap(?:e|ing)\s+(?:the\s+)?[a-z]+(?:\s+[a-z]+)?\s*\.\s?[—–](?=\s*\w)"),
    (("i.",), r",\s+i\.\s?e\.[^;()\n]{0,40}$"),
    (("row",), r"\b(?:sl(?:ip)?\.?\s?st(?:itch)?|ss|sew|join|seam)\s+(?:the\s+)?row\s+\d{1,3}\s+to\s+(?:the\s+)?(?:foundation|first|starting|beginning|beg|row)\b[^.;()]*"),
    (("last",), r",\s{0,3}the\s+last\s+(?:ss|sl\s?st|sc|dc|st|tr|loop)\s+(?:falling|coming|worked|being\s+worked|made)\s+(?:in|into|on)\s+(?:the\s+)?first\s+(?:ss|sl\s?st|sc|dc|st|tr|ch)\b"),
    (("below", "skipped"), r"(?:(?<=below)|(?<=skipped st)|(?<=skipped [sd]c)|(?<=skipped stitch)),?\s{1,3}(?:working\s+)?(?:in\s+front\s+of|behind)\s+(?:the\s+|both\s+)?(?:(?:working|new)\s+)?(?:ch(?:ain)?s?(?:-\d)?(?:[- ]?(?:sps?|spaces?|loops?))?|rows?|work)\b"),
    (("block",), r"\bblock\s+(?:(?:the|your|it|out|finished|each|piece)\s+){0,3}(?:\w+\s+)?to\s+(?:(?:the|given|finished|its|these|shown)\s+)*(?:sizes?|measurements?|dimensions|shape|schematic)\b[^.;\n]{0,40}"),
    (("(insert",), r"\(insert(?:ing)?\s+(?:your\s+|the\s+)?hook\s[^()]{0,120}\b(?:cent(?:er|re)|middle|V|not)\b[^()]{0,80}\)"),
    (("clos",), r"\bclos(?:e|ing)\s+(?:up\s+)?(?:the\s+)?(?:last\s+|remaining\s+|small\s+)?(?:hole|opening|gap)\b[^.;()\n]{0,40}"),
    (("in front of", "behind", "in back of", "over"), r",?\s{0,3}\b(?:working|crossing|going) (?:in front of|behind|in back of|over) (?:the |last |previous |first |two |2 ){0,3}[a-z ]{1,20}?(?: just)? (?:made|worked|completed),?"),
)
_EXPRESSIONS = tuple((words, Expression(text, re.IGNORECASE)) for words, text in _ASIDES)


def without_asides(text: str, instead: Callable[[re.Match[str]], str]) -> str:
    """A line with each aside put as `instead` says. As one alternation of all of them finds them: the leftmost, of equals the first; only those are tried that can be there."""
    low = text.lower()
    found = [(m.start(), i, m, e) for i, (words, e) in enumerate(_EXPRESSIONS) if any(w in low for w in words) and (m := e.search(text)) is not None]
    parts: list[str] = []
    at = 0
    while found:
        found.sort(key=lambda one: one[:2])
        _, _, first, _ = found[0]
        parts += [text[at : first.start()], instead(first)]
        at = first.end()
        found = [one if one[0] >= at else again for one in found if (again := _after(one, text, at)) is not None]
    return "".join([*parts, text[at:]])


def _after(one: tuple[int, int, re.Match[str], Expression], text: str, at: int) -> tuple[int, int, re.Match[str], Expression] | None:
    """An aside found, or the next of its kind where it begins before `at`."""
    if one[0] >= at:
        return one
    m = one[3].search(text, at)
    return None if m is None else (m.start(), one[1], m, one[3])
