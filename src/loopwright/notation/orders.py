"""Rows told by other rows: "rep Rows 2 and 3 twice", "as Row 5", "work even 6 rows", "continue so, dec 6 sts each rnd to 54 sts"."""

from __future__ import annotations

import re
from dataclasses import replace
from typing import Literal

from loopwright.model.tree import Num, RowOrder
from loopwright.notation.altered import altered, loops_less
from loopwright.notation.scanner import words as tables
from loopwright.source.expressions import Expression
from loopwright.terms import Dialect

MOST = 5000  # rows, or times
MOST_STITCHES = 99_999
_ROWS = r"(?:rows?|rnds?|rounds?|rds?)\b\.?"
IN_WORDS = rf"(?:{'|'.join(sorted(set(tables()['numbers']) - {'another'}, key=len, reverse=True))})(?![a-z])"  # "eighteen" before "eight"
_N = rf"(?:\d{{1,9}}(?:\s*[(\[][\d\s,:;–-]+[)\]]){{0,3}}|\{{[^{{}}\n]+\}}|{IN_WORDS})"
_ORDINALS = "|".join(tables()["ordinals"])
_ORD = rf"(?:\d{{1,9}}(?:st|nd|rd|th|d)|(?:{_ORDINALS})\b)"
_JOIN = r"(?:-|–|—|to|through|thru|and|&|,)"
_LEAD = re.compile(r"(?:(?:colou?r|yarn|shade)\s+[A-H\d]\s*[,:]\s*|(?:change|switch)\s+to\s+[\w ]{1,24}[.,]\s*|(?:with|using|(?:work(?:ing)?\s+)?in(?:to)?|take)\s+[\w ]{1,24},\s*|then,?\s+|now,?\s+|next,?\s+|always\s+|and\s+|for\s+(?:the\s+)?(?!next\b)[a-z]{3,12},?\s+(?=work\b)|(?:MC|CC\d?|colou?r\s+[A-H\d])\s*[-–—]\s*|(?:re)?(?:join|attach)\b[^.;(*\d]{0,60}[.;,]\s*(?=(?:rep(?:eat)?|work|as|same\s+as)\.?\s+(?:rows?|rnds?|rounds?)\s*\d))+", re.IGNORECASE)
_THEN_AS = re.compile(rf"\s{{0,3}},?\s{{0,3}}\bthen\s+(?:(?:work\s+)?as\s+(?:for\s+|in\s+)?)?(?={_ROWS}\s*\d)", re.IGNORECASE)  # "as for Row 2, then as for Row 3"
_WHICH = re.compile(
    rf"""(?:the\s+|these\s+|this\s+(?=last\b)|from\s+|of\s+|for\s+)*(?:
      (?:{_ROWS}|r(?=\d))\s*(?P<a>\d{{1,9}})(?P<rest>(?:\s*{_JOIN}\s*(?:(?:{_ROWS}|r(?=\d))\s*)?\d{{1,9}}(?!\d|\s*(?:more|times?\b|x\b(?!\s?\d)|×|sts?\b|stitches\b|[shdt]{{1,2}}c\b|tr\b)))*)
    | (?P<o>{_ORD})(?P<orest>(?:\s*{_JOIN}\s*(?:the\s+)?{_ORD})*)(?:\s+(?:pattern\s+|patt\s+)?{_ROWS}|(?=\s*(?:,|\.?\s*$)))
    | (?:last|these|previous|preceding|foregoing|above)\s+(?P<n>{_N}\s+)?(?:pattern\s+|patt\s+|pat\s+)?{_ROWS}
    | (?P<this>this|patt(?:ern)?|pat)\s+{_ROWS} | (?P<every>every)\s+{_ROWS}
    | (?P<op>dec|inc)(?:\.|r\.?|reas(?:e|ing))?\s+(?:row|rnd|round|rd)\b(?!\s*\d+\s*(?:$|[.,;]))
    )""",
    re.IGNORECASE | re.VERBOSE,
)
_VERB = re.compile(r"(?:work\s+)?(?P<rep>repeat\s+the\s+pattern\s+of|cont(?:inue|\.)?\s+rep(?:eat)?\.?|rep(?:eat)?\.?|(?:the\s+)?(?:same\s+)?as(?:\s+given|\s+worked|\s+written)?(?:\s+for|\s+in)?|like|work(?:\s+as)?(?:\s+for)?|continue\s+(?:to\s+repeat|repeating|with(?=\s+(?:rows?|rnds?|rounds?)\b)|alternating(?:\s+between)?)|keep\s+(?:on\s+)?(?:repeating|doing|working)|alternate(?:\s+between)?)\s+", re.IGNORECASE)
_TIMES = Expression(rf"\s*+[,:(–-]?+\s*+(?:[x×]\s?+(?=\d))?+(?:alternately|by turns|in turn|continuously|alternating)?\s*+,?+\s*+(?:for\s+)?(?P<other>an?other\s+|a\s+further\s+)?(?P<n>{_N}|once|twice|thrice)(?!\d|\s*(?:sts?\b|stitches\b|[shdt]{{1,2}}c\b))\s*(?P<x>times|x\b|×)?\s*(?P<more>more|again)?(?:\s+times)?(?P<rows>\s*(?:more\s+)?{_ROWS})?", re.IGNORECASE)
_UNTIL_ROWS = Expression(
    rf"(?:until|till|for(?:\s+a\s+total\s+of)?|to)\s+(?:there\s+are\s+|(?:your|the|this)\s+[a-z]{{3,12}}\s+(?:has|have)\s+|you(?:\s+have|['’]ve)\s+(?:got\s+|worked\s+|completed\s+|made\s+|done\s+)?|a\s+total\s+of\s+){{0,2}}"
    rf"(?P<next>(?:the\s+)?next\s+|another\s+|a\s+further\s+)?(?P<n>{_N})\s*(?:in\s+all\s+|(?P<further>more\s+|further\s+))?\s*{_ROWS}"
    rf"|(?:until|till|through|thru|up\s+to(?:\s+and\s+including)?)\s+(?:the\s+end\s+of\s+)?(?:{_ROWS}|r)\s*(?P<upto>\d{{1,4}})", re.IGNORECASE)
_UNTIL_STS = Expression(rf"(?:until|till|to)\s+(?:there\s+are\s+|you\s+have\s+|about\s+|only\s+)?(?P<n>{_N})\s*(?:sts?\b|stitches|[a-z]{{1,3}}\.?\s?c\b|sc|hdc|dc|tr)", re.IGNORECASE)
_UNTIL_ANY = Expression(r"\b(?:until|till|for|to)\b(?!\s+(?:each|every)\b)\s+(?P<what>[^.;]{3,80})", re.IGNORECASE)
_STRAIGHT = r"(?:even|straight|without\s+(?:(?:any|further|more)\s+)?(?:shapings?|increas(?:e|es|ing)|decreas(?:e|es|ing)|inc|dec)\b)"
_STITCHES = r"(?:plain\s+)?(?:double|single|treble|half|dc|sc|d\.?\s?c|s\.?\s?c|h?tr|hdc)\b\.?[a-z ]{0,20}"
_OF = r"(?:sts?\b\.?|stitch(?:es)?\b|[sd]\.?\s?c\b\.?|hdc\b|[dh]?\.?\s?tr\b\.?|(?:trebles?|doubles?|long|plain)\b)(?:\s+crochets?\b)?"
_EVEN = re.compile(
    rf"(?:work(?:ing)?|continue|cont\.?|go on|keep)\s+(?:on\s+(?!these)|to\s+work\s+|working\s+)?(?:around\s+|across\s+)?(?:(?:on|over)\s+(?:these|those|the\s+remaining)\s+(?:{_N}\s+)?(?:sts?\b\.?|stitches)\s+)?{_STRAIGHT}(?:\s+(?:on|over)\s+(?:(?:the|these|those|rem(?:aining)?)\s+){{0,2}}(?:{_N}\s+)?(?:sts?\b\.?|stitches))?(?:\s+in\s+(?P<stitch>[\w ]{{1,20}}?))?(?P<tail>(?:\s+for)?\s+(?P<n>{_N})\s*(?:more\s+)?{_ROWS}|\s+(?:until|till|to|for)\b.*|\s*)\.?\s*$"
    rf"|work\s+(?:a\s+further\s+|another\s+)?(?P<m>{_N})\s*(?:more\s+|further\s+)?{_ROWS}\s+(?:more\s+)?(?:(?:of|in)\s+(?P<of>{_STITCHES})[;,]?\s*(?:turn)?|{_STRAIGHT}(?:\s+in\s+(?P<in>{_STITCHES}))?|in\s+(?:pattern|patt|pat)\b)\.?\s*$"
    rf"|work\s+(?:a\s+further\s+|another\s+)?(?P<h>{_N})\s*(?:more\s+|further\s+)?{_ROWS}\s+(?:more\s+)?(?:straight\s+)?(?:on|over)\s+(?:(?:these|those|the\s+remaining|all)\s+(?:(?:{_N})\s+)?|{_N}\s+){_OF}(?:\s+only)?(?:\s+for\s+(?:the\s+)?[a-z]{{3,12}})?(?:,?\s*(?:and|then)\s+(?:join|fasten|break|sew|turn)\b[^.;\d]{{0,80}})?\s*\.?\s*$"
    rf"|work\s+(?:a\s+further\s+|another\s+)?(?P<l>{_N})\s*(?:more\s+)?{_ROWS}\s*\.?\s*$"
    rf"|(?:work(?:ing)?|continue|cont\.?)\s+in\s+(?:the\s+)?(?:pattern|patt|pat)\b(?:\s+as\s+(?:set|established|before))?(?:\s+{_STRAIGHT})?(?P<on>(?:\s+for)?\s+(?P<j>{_N})\s*(?:more\s+)?{_ROWS}|\s+(?:until|till)\b.*)\.?\s*$"
    rf"|(?P<k>{_N})\s*{_ROWS}\s+(?:even|straight|(?:more\s+)?of\s+(?P<made>{_STITCHES}))\.?\s*$",
    re.IGNORECASE,
)
_CONTINUE = re.compile(
    rf"(?:continue|cont\.?|go on|keep on|proceed)\b[^.(]{{0,70}}?\b(?P<op>inc|dec)(?:reas)?(?:e|ing)?\.?\s+(?P<n>{_N})\s+(?:sts?|stitches|sc|hdc|dc)?\s*(?:for\s+(?:the\s+)?[a-z]{{3,8}}\s+)?"
    rf"(?:(?:in|on)\s+)?(?:next\s+and\s+)?(?:each|every)\s+(?:foll(?:owing|\.)?\s+)?(?P<alt>alt(?:ernate|\.)?\s+|other\s+|2nd\s+|even\s+|odd\s+)?{_ROWS}"
    rf"(?:[^.(]{{0,40}}?(?:until|to)\b[^.({{\d]{{0,30}}?(?P<until>{_N})(?![\d½¼¾/.]|[\s-]*(?:inch|ins?\b|cm\b|mm\b|[\"”″])))?",
    re.IGNORECASE,
)
_IN_THIS_WAY = r"(?:,?\s*in\s+(?:this|the\s+same|like)\s+(?:way|manner)\b)?"
_CHANGING = Expression(
    rf"(?:(?:then|and)\s+)?(?:(?:continue|cont|go\s+on|keep\s+on|proceed)\b\.?[^.(;*\d]{{0,60}}?[\s,])?\s*(?P<op>inc|dec)(?:reas)?(?:e|ing)?\b\.?\s+(?P<n>{_N})\s*(?:{_OF})?\s*(?:evenly\b)?{_IN_THIS_WAY}"
    rf"\s*,?\s*(?:(?:in|on)\s+)?(?P<next>next\s+and\s+)?(?:each|every)\s+(?:foll(?:owing|\.)?\s+)?(?P<alt>(?:alt(?:ernate|\.)?|other|2nd|second)\s+)?{_ROWS}{_IN_THIS_WAY}"
    rf"\s*,?\s*(?:until|till)\s+(?:there\s+(?:are|will\s+be)\s+|you\s+have\s+|only\s+)?(?P<until>{_N})\s*(?:{_OF})?(?:\s+(?:remain(?:s|ing)?|rem|left|are|in\s+(?:the|each)\s+(?:round|row|rnd)|in\s+all)\b)*\s*(?=[.,;(]|$)", re.IGNORECASE)
_IN_THE_MIDDLE = Expression(
    rf"(?:(?:work\s+)?(?:as|like|the\s+same\s+as)\s+(?:the\s+)?{_ORD}(?:\s+{_ROWS})?|(?:work|continue|cont|go\s+on|keep\s+on|proceed)\b\.?(?:\s+(?:thus|so|in\s+this\s+(?:way|manner))\b)?)\s*,?\s*(?:(?:and|but|always)\s+)*"
    rf"(?P<op>inc|dec)(?:reas)?(?:e|ing)?\b\.?\s*(?:always\s+)?(?:(?P<n>{_N})\s*(?:{_OF})?\s*)?(?:always\s+)?(?:in|at|on)\s+the\s+(?:same\s+)?(?:middle|centre|center)\b[^.;,\d]{{0,30}}"
    rf"(?:,?\s*(?:until|till|to|up\s+to)\s+(?:the\s+)?(?P<upto>\d{{1,3}})(?:st|nd|rd|th)\s+{_ROWS}[^.;]{{0,40}})?\s*[.,;]?\s*$", re.IGNORECASE)
_BETWEEN = re.compile(
    rf"(?:continue|cont\.?|go on|keep on|rep(?:eat)?\.?|work|like|(?:same\s+)?as|inc(?:reas)?(?:e|ing)?)\b[^.(*]{{0,60}}?\b(?:having|with|working|allowing|leaving)\s+(?:1|one|two|three|\d{{1,2}})\s+(?:more\s+)?(?:sts?\b|stitch(?:es)?\b|(?:trebles?|doubles?|singles?)\b(?:\s+crochets?)?|h?[sdt]\.?\s?c\b\.?|tr\b\.?)?\s*(?:more\s+)?"
    rf"(?:sts?\s+|stitch\s+|[sd]\.?\s?c\.?\s+)?(?:more\s+)?(?:on\s+each\s+side\s+)?(?:between|before\s+(?:each|every|the)\s+(?:inc|dec)|after\s+(?:each|every|the)\s+(?:inc|dec))[^.(]{{0,140}}?(?:\buntil\b\D{{0,30}}(?P<until>{_N})|$|[.(;])",
    re.IGNORECASE,
)
_TWO_ROWS = re.compile(rf"(?:rep(?:eat)?\.?|work)\s+(?:as\s+)?{_ROWS}\s*\d+\s*{_JOIN}\s*\d", re.IGNORECASE)  # they change in turn
_SO_ON = re.compile(rf"(?:continue|cont\.?|go on|keep on)\s+(?:increasing|decreasing|to increase|to decrease|inc|dec|in\s+(?:this|the same|same|like)\s+(?:manner|way)|as established|thus|so|so on|like this)\b[^.(*]{{0,110}}?(?:\b(?:until|to)\b\D{{0,30}}(?P<until>{_N})\s*(?:sts?\b|stitches|sc|hdc|dc|remain|left)|$|[.(;])", re.IGNORECASE)
_EVENLY_TOLD = Expression(rf"\b(?P<op>inc|dec)(?:reas)?(?:e|ing)?\.?\s+(?P<n>{_N})\s+(?:sts?|stitches|[sd]\.?\s?c\.?|hdc|tr)\s+evenly\b", re.IGNORECASE)
_UNTIL_NTH = re.compile(rf"\buntil\s+(?:the\s+)?(?P<n>\d{{1,3}})(?:st|nd|rd|th)\s+{_ROWS}\s+(?:is|are|has\s+been|have\s+been)\b", re.IGNORECASE)  # "until 14th rnd is completed"
_FINISH = re.compile(r"(?<=[a-z\d])\.\s+(?:(?:do\s+not\s+(?:fasten|break|cut|join|turn)|leave|sl\.?\s?st|s\.?\s?s\.?|slip|join|fasten|break|cut|finish|end\s+off|(?:ch(?:ain)?\.?\s*[1-9],?\s*|[1-9]\s*ch(?:ain)?,?\s*)?turn)(?![a-z])(?:[^.]|\.(?=\s?c\.)){0,120}+(?:\.\s*+|$))+$", re.IGNORECASE)
_ENDED_SO = re.compile(r"(?<=[a-z])\s?[,;]\s+(?:and\s+|then\s+)?(?:(?:sl\.?\s?st|ss|slip\s+st(?:itch)?)\s+(?:to|in|into)\b|join\b|turn\b|do\s+not\s+(?:join|turn)\b|ch\s?[1-4],?\s*(?:and\s+)?turn\b|(?:fasten|end|finish)\s+off\b|break\b|cut\b)[^()*\d]{0,80}$", re.IGNORECASE)  # "work even, join"
_ELSEWHERE = re.compile(r"\s+of\s+(?:the\s+)?(?P<section>[a-z]{3,})\b(?<!row)(?<!round)", re.IGNORECASE)
_COUNTS = {"once": 1, "twice": 2, "thrice": 3}


_SO_MANY_AS = re.compile(rf"(?:work|make|crochet|do)\s+(?P<lead>a\s+further\s+|another\s+)?(?P<n>{_N})\s+(?:more\s+|further\s+)?{_ROWS}\s+(?:the\s+same\s+)?(?:as|like|repeating)\s+(?=(?:for\s+)?(?:{_ROWS}|r\d|(?:the\s+)?{_ORD}\s*(?:{_ROWS}|\.?\s*$)))", re.IGNORECASE)
_IN_BRACKETS = re.compile(rf"[\[(]\s*((?:{_ROWS}|r(?=\d))\s*\d[^\[\]()]{{0,30}})[\])]", re.IGNORECASE)
_AS_SECTION = re.compile(
    rf"(?:(?:work|make|repeat|rep|crochet|follow|do)\s+)?(?:(?:the\s+)?(?:same\s+)?(?:instructions|directions|steps)\s+(?:as\s+)?(?=for|of|from)|(?:exactly\s+|just\s+)?(?:the\s+)?same\s+(?:way\s+)?as|as\s+given|as\s+written|as)(?:\s*\b(?:for|of|from|given\s+for))?\s+(?:the\s+)?"
    rf"(?P<section>[a-z]{{3,20}}(?:\s+(?!to\b|until\b|up\b|but\b|through\b|for\b)[a-z\d]{{1,20}}){{0,2}}?)"
    rf"(?:\s+(?:until|up\s+to|to|through)\s+(?:and\s+including\s+|the\s+end\s+of\s+)?{_ROWS}\s*(?P<upto>\d{{1,4}})"
    rf"|\s+(?:until|for)\s+(?:the\s+first\s+)?(?P<many>{_N})\s+{_ROWS}(?:\s+(?:are|have\s+been)\s+(?:completed?|worked|made|done))?)?\s*(?:(?:,\s*|\s+)(?:but|except|reversing|only|using|leaving|without)\b[^.\d]{{0,80}})?\.?\s*", re.IGNORECASE)
_ROW_ALONE = re.compile(rf"(?:the\s+)?{_ORD}", re.IGNORECASE)  # "as the 2nd": the row of that number
_THIS_WAY = re.compile(r"(?:cont(?:inue)?\.?|keep\s+going|carry\s+on|go\s+on|work|repeat)\s+(?:to\s+work\s+|working\s+)?(?:in\s+)?(?:this\s+(?:way|manner|fashion)|the\s+same\s+(?:way|manner)|like\s+this|this\s+row|as\s+set)\b", re.IGNORECASE)
_AT_CENTRE = Expression(r"\b(?:work|mak)ing\s+(?:always\s+)?(?:[23]|two|three)\s(?:[a-z]+|[a-z]\.\s?c)\.?\s(?:in|at|on|into)\s+(?:the\s+)?(?:cent(?:re|er)|middle|corner)\b", re.IGNORECASE)
_UNTIL_BETWEEN = Expression(
    rf"(?:continue|cont|go\s+on|keep\s+on|proceed|work|repeat|increase)\b\.?[^.(*]{{0,80}}?\b(?:until|till)\s+(?:there\s+(?:are|be|is)\s+|you\s+have\s+)(?P<n>{_N})\s*(?:plain\s+)?(?:{_OF})\s*(?:in\s+)?between\s+(?:the\s+|each\s+|every\s+|two\s+)?(?:inc|widen)", re.IGNORECASE)
_SAME_AGAIN = re.compile(r"(?:work\s+)?(?:(?:exactly\s+)?the\s+same(?:\s+(?:again|as\s+(?:before|the\s+last)))?|as\s+before|ditto|do\.)\s*\.?\s*$", re.IGNORECASE)  # "2nd row: The same."
_LIKE_THE_LAST = re.compile(
    rf"(?:work|make|crochet)\s+(?P<n>{_N})\s+(?:more\s+|further\s+|other\s+)?{_ROWS}\s+(?:more\s+)?(?:(?:exactly\s+)?(?:like|as|the\s+same\s+as)\s+the\s+last(?:\s+(?:one|{_ROWS}))?|(?:all\s+)?in\s+(?:the\s+same|this|like)\s+(?:manner|way)|the\s+same|the\s+same\s+way)\s*\.?\s*$", re.IGNORECASE)
_MORE_EACH = Expression(
    rf"work(?:ing)?\s+(?P<n>{_N})\s+more\s+{_OF}\s+(?:in|on)\s+(?:each|every)\s+(?:of\s+these\s+)?{_ROWS}(?:\s+than\s+in\s+the\s+(?:last|one\s+before))?\s*\.?\s*$", re.IGNORECASE)
_ON_SIDES = Expression(
    rf"(?:cont(?:inue)?\.?|go\s+on|work|repeat)\s+(?:to\s+work\s+)?(?:in\s+)?(?:thus|so|this\s+(?:way|manner|round|rnd)|the\s+same\s+(?:way|manner)|last\s+(?:round|rnd)|as\s+set)\s*,?\s*until\s+there\s+are\s+(?P<n>\d{{1,4}})\s*{_OF}\s+(?:on|along)\s+each\s+of\s+the\s+(?P<sides>{_N})\s+sides\b(?:\s+between\s+(?:the\s+)?corners?(?:\s+(?:sps?|spaces?|ch))?)?\s*\.?\s*$", re.IGNORECASE)
_NO_SECTIONS = frozenset("row rows rnd rnds round rounds rd rds st sts repeat above before below follows following established set usual given desired directed required needed shown this that these those written previously".split())
_FIRST_OF = Expression(
    rf"work\s+(?:the\s+)?(?:1st|first)\s+(?P<n>{_N})\s+{_ROWS}\s*(?:the\s+)?(?:same\s+)?as\s+(?:for\s+|on\s+|in\s+|of\s+)?(?:the\s+)?(?:cent(?:er|re)\s+of\s+)?(?:the\s+)?"
    r"(?P<section>[a-z]{3,20}(?:\s+(?:motif|square|block|piece|flower))?)\s*\.?\s*$", re.IGNORECASE)
_ROWS_OF = Expression(
    rf"work\s+(?:the\s+)?(?P<first>{_ORD})(?P<rest>(?:\s*{_JOIN}\s*(?:the\s+)?{_ORD})*)\s+{_ROWS}\s*(?:the\s+)?(?:same\s+)?as\s+(?:given\s+|worked\s+)?(?:for|on|in|of)\s+(?:the\s+)?(?P<section>[a-z]{{3,20}}(?:\s+[a-z]{{3,20}})?)\s*\.?\s*$",
    re.IGNORECASE)
_EACH_ROW = rf"(?:{_ROWS}\s?\d{{1,4}}(?:\s*{_JOIN}\s*(?:{_ROWS}\s*)?\d{{1,4}}){{0,4}}|(?:the\s+)?\d{{1,4}}(?:st|nd|rd|th)(?:\s*{_JOIN}\s*(?:the\s+)?\d{{1,4}}(?:st|nd|rd|th)){{0,4}}\s+{_ROWS})"
ROWS_AGAIN = re.compile(
    rf"{_EACH_ROW}(?:\s+(?:(?:{_N}|once|twice|thrice)\s*(?:times?\s*)?(?:more|again)|again)\b"  # "Row 7 five times more"
    rf"|\s*[,:]?\s*(?:an?other\s+|a\s+further\s+)?(?:(?:{_N}(?:\s+more)?\s*(?:times?|x)|once|twice|thrice)(?:\s+(?:more|again))?|[x×]\s?\d{{1,3}})\s*(?:[.;,(]|$))", re.IGNORECASE)  # "Rows 4 and 5, 6 times."
_ONE_UP_TO = re.compile(r"(?P<verb>rep(?:eat)?\.?\s+)(?P<word>row|rnd|round)\s*(?P<a>\d{1,4})\s+(?:through|thru|to)\s+(?:row|rnd|round)\s*(?=\d)", re.IGNORECASE)


_REPEAT_ON = re.compile(rf"(?<=[a-z\d])[.;]\s+(?=(?:then\s+)?rep(?:eat)?\.?\s+(?:the\s+)?(?:{_ROWS}\s*\d|{_ORD}[\w\s,&]{{0,24}}{_ROWS}|(?:last|these|previous)\s+(?:{_N}\s+)?{_ROWS}))", re.IGNORECASE)


def in_turn(text: str, start: int, end: int, sizes: int, which: Dialect) -> int:
    """Where a second repeat of rows begins behind a first, "Rep 5th and 6th rows twice. Rep 5th row."; 0 where there are not two."""
    m = _REPEAT_ON.search(text, start, end) if text[start : start + 3].lower() == "rep" else None
    if m is None:
        return 0
    first = order(text[start : m.start()], sizes, which)
    return m.end() if first is not None and first.what == "repeat" and not first.until_text else 0


def order(words: str, sizes: int = 1, which: Dialect | None = None) -> RowOrder | None:
    """The order that the words of a row give, None when they give none. `which`: the terms that name a stitch ("work even in hdc")."""
    words = words.lstrip(" ,;.—–-")
    lead = _LEAD.match(words)
    said = words[lead.end() :] if lead else words
    if ROWS_AGAIN.match(said) is not None:
        said = f"rep {said}"
    if "then" in said:
        said = _THEN_AS.sub(" and ", said)
    if "(" in said or "[" in said:
        said = _IN_BRACKETS.sub(r"\1", said)
    if "rep" in said or "Rep" in said or "REP" in said:
        said = _ONE_UP_TO.sub(r"\g<verb>\g<word> \g<a> until \g<word> ", said)  # "repeat Row 2 through Row 10": until there are ten
    found = _even(said, sizes, which) or _this_way(said, sizes) or loops_less(said) or _continued(said, sizes) or _other_rows(said, sizes)
    return found if found is None or found.what == "even" else altered(found, said, which)


def _this_way(words: str, sizes: int) -> RowOrder | None:
    """ "Continue in this way until 90 rows have been worked": the last row again."""
    if _SAME_AGAIN.match(words) is not None:
        return RowOrder("repeat", last_n=1)
    if words[:8].strip(" .").lower() in ("even", "straight"):
        return RowOrder("even")
    if (like := _LIKE_THE_LAST.match(words)) is not None:
        return RowOrder("repeat", last_n=1, times=number(like["n"], sizes))
    if "sides" in words and (sides := _ON_SIDES.match(words)) is not None:
        many = [number(sides[name], 1) for name in ("n", "sides")]
        each, of = ((n.at(0) or 0) if n is not None else 0 for n in many)
        return RowOrder("repeat", last_n=1, until_sts=Num((each * of,))) if each * of else None
    so_on = _THIS_WAY.match(words)
    until = _UNTIL_ROWS.search(words[so_on.end() :]) if so_on is not None else None
    if until is None:
        return None
    if _AT_CENTRE.search(words) is not None:
        return RowOrder("continue", total_rows=number(until["n"], sizes))  # the rows grow on
    return RowOrder("repeat", last_n=1, more=bool(until["next"] or until["further"]), total_rows=number(until["n"] or until["upto"], sizes))


def number(text: str | None, sizes: int, most: int = MOST) -> Num | None:
    """A number in figures or words, a list per size, or a blank."""
    if not text:
        return None
    text = text.strip().lower()
    if text.startswith("{"):
        return Num((), " ".join(text[1:-1].split()))
    known = _COUNTS.get(text) or tables()["numbers"].get(text)
    if known:
        return Num((int(known),))
    values = tuple(min(int(v), most) for v in re.findall(r"\d{1,9}", text))
    return Num(values) if len(values) == sizes else Num(values[:1]) if values else None


def _even(words: str, sizes: int, which: Dialect | None) -> RowOrder | None:
    m = _EVEN.match(words) or (_EVEN.match(_FINISH.sub(".", words)) if ". " in words else None)
    if m is None and ("even" in words or "straight" in words or "without" in words):
        m = _EVEN.match(_ENDED_SO.sub("", _FINISH.sub("", words) if ". " in words else words))
    if m is None:
        return None
    times = number(m["n"] or m["m"] or m["h"] or m["l"] or m["j"] or m["k"], sizes)
    until = _UNTIL_ANY.search(m["tail"] or m["on"] or "") if times is None else None
    pattern = "pattern" if re.search(r"\bin\s+(?:the\s+)?(?:same\s+)?(?:pattern|patt|pat)\b", words, re.IGNORECASE) else None
    named = m["stitch"] or m["of"] or m["in"] or m["made"]
    stitch = which.kind_of(" ".join(named.replace(".", " ").split()).lower().removeprefix("plain ")) if which is not None and named and pattern is None else None
    rows = _UNTIL_ROWS.search(m["tail"] or m["on"] or "") if until is not None else None
    total = number(rows["n"] or rows["upto"], sizes) if rows is not None and rows.group().lower().startswith(("until", "till")) and not rows["next"] and not rows["further"] else None
    return RowOrder("even", times=times, until_text=until["what"].strip() if until else "", total_rows=total, kind=pattern or stitch)


def _alternate(said: str | None) -> Literal["", "other", "even", "odd"]:
    """Which rows "every even row", "every other row" are; "" where it is each of them."""
    low = (said or "").strip().lower()
    return "" if not low else "even" if low == "even" else "odd" if low == "odd" else "other"


def changing(words: str, sizes: int) -> RowOrder | None:
    """ "Cont. in this way, inc. 8 sts. on every round, until there are 96": so many more or fewer each time; None where the words tell another thing."""
    low = words.lower()
    m = _CHANGING.match(words) if ("until" in low or "till" in low) and ("every" in low or "each" in low) else None
    n = None if m is None else number(m["n"], 1)
    each = n.at(0) if n is not None else None
    if m is None or not each:
        return None
    delta = Num((-each if m["op"].lower() == "dec" else each,))
    return RowOrder("continue", delta=delta, alternate=_alternate(m["alt"]), at_once=bool(m["next"]), until_sts=number(m["until"], sizes, MOST_STITCHES))


def _in_the_middle(words: str) -> RowOrder | None:
    """ "As the 3rd, increasing always in the centre stitch": the change of the rows before goes on."""
    m = _IN_THE_MIDDLE.match(words) if "middle" in words or "centre" in words or "center" in words else None
    if m is None:
        return None
    each = number(m["n"], 1) if m["n"] else None
    n = each.at(0) if each is not None else None
    delta = Num((-n if m["op"].lower() == "dec" else n,)) if n else None
    return RowOrder("continue", delta=delta, total_rows=number(m["upto"], 1) if m["upto"] else None)


def _continued(words: str, sizes: int) -> RowOrder | None:
    if (told := changing(words, sizes) or _in_the_middle(words)) is not None:
        return told
    if words[:4].lower() == "work" and "more" in words and (each_time := _MORE_EACH.match(words)) is not None:
        return RowOrder("continue", delta=number(each_time["n"], 1))  # "work 12 more tr. in each rnd."
    if "between" in words and (between := _UNTIL_BETWEEN.match(words)) is not None:
        return RowOrder("continue", between=number(between["n"], 1))
    m = _CONTINUE.match(words)
    if m is None:
        going = (_BETWEEN.match(words) if _TWO_ROWS.match(words) is None else None) or _SO_ON.match(words)  # the change of the rows before goes on
        if going is None:
            return None
        if (nth := _UNTIL_NTH.search(words)) is not None:
            return RowOrder("continue", total_rows=number(nth["n"], 1))
        evenly = _EVENLY_TOLD.search(words) if "evenly" in words.lower() else None
        if evenly is not None and (many := number(evenly["n"], 1)) is not None and many.values:
            return RowOrder("continue", delta=Num(((many.values[0] or 0) * (-1 if evenly["op"].lower() == "dec" else 1),)), until_sts=number(going["until"], sizes))
        return RowOrder("continue", until_sts=number(going["until"], sizes))
    each = number(m["n"], 1)
    if each is None or not each.values:
        return None
    delta = Num((each.values[0] * (-1 if m["op"].lower() == "dec" else 1),)) if each.values[0] is not None else None
    return RowOrder("continue", delta=delta, alternate=_alternate(m["alt"]), until_sts=number(m["until"], sizes))


def _other_rows(words: str, sizes: int) -> RowOrder | None:
    many = _SO_MANY_AS.match(words)
    if many is not None:  # "work 5 more rows as Row 2"
        told = _other_rows(f"rep {words[many.end() :].removeprefix('for ')}", sizes)
        return None if told is None else replace(told, times=None, more=True, total_rows=number(many["n"], sizes))
    if words[:4].lower() == "work" and (begun := _FIRST_OF.match(words)) is not None and begun["section"].lower() not in _NO_SECTIONS:
        n = number(begun["n"], 1)  # "work 1st 2 rounds same as flower"
        return RowOrder("same-as", tuple(range(1, min(n.at(0) or 1, 500) + 1)) if n is not None else (), section=begun["section"].lower())
    if words[:4].lower() == "work" and (those := _ROWS_OF.match(words)) is not None and those["section"].lower() not in _NO_SECTIONS:
        return RowOrder("same-as", _listed([_ordinal(those["first"])], those["rest"] or ""), section=those["section"].lower())  # "work 1st row as for back"
    section = _AS_SECTION.fullmatch(words) or (_AS_SECTION.fullmatch(_FINISH.sub(".", words)) if ". " in words else None)
    if section is not None and not _NO_SECTIONS & set(section["section"].lower().split()) and _ROW_ALONE.fullmatch(section["section"]) is None:
        so_many = number(section["many"], 1) if section["many"] else None
        last = int(section["upto"]) if section["upto"] else (so_many.at(0) or 0) if so_many is not None else 0
        rows = tuple(range(1, min(last, MOST) + 1))
        return RowOrder("same-as", rows, section=" ".join(section["section"].lower().split()))
    verb = _VERB.match(words)
    if verb is None:
        return None
    which = _WHICH.match(words, verb.end())
    if which is None:
        return None
    repeats = verb["rep"].lower().startswith(("rep", "keep", "cont", "alt"))
    rows, last_n = _which(which, sizes)
    tail = words[which.end() :]
    elsewhere = _ELSEWHERE.match(tail)
    total = _UNTIL_ROWS.search(tail)
    sts = None if total else _UNTIL_STS.search(tail)
    times = None if total or sts else _TIMES.match(tail)
    until = None if total or sts or (times and times["n"]) else _UNTIL_ANY.search(tail)
    if not repeats and re.match(r"\s*(?:in|into|on|sts?\b|dc|sc)\b", tail, re.IGNORECASE):
        return None  # "work 2nd row sts": no order
    what: Literal["repeat", "same-as"] = "repeat" if repeats else "same-as"
    asks_rows = times is not None and bool(times["rows"]) and not times["x"]
    return RowOrder(
        what, rows, last_n, delta_kind=which["op"].lower() if which["op"] else None, section=elsewhere["section"] if elsewhere else None, times=None if times is None or asks_rows else number(times["n"], sizes), more=bool(times and (times["more"] or times["other"] or asks_rows) or total and (total["next"] or total["further"])),
        until_sts=number(sts["n"], sizes, MOST_STITCHES) if sts and repeats else None, until_text=until["what"].strip() if until else "",
        total_rows=number((total["n"] or total["upto"]) if total else times["n"] if asks_rows and times else None, sizes),
    )


def _which(m: re.Match[str], sizes: int) -> tuple[tuple[int, ...], int | None]:
    if m["a"]:
        return _listed([int(m["a"])], m["rest"] or ""), None
    if m["o"]:
        return _listed([_ordinal(m["o"])], m["orest"] or ""), None
    if m["op"]:
        return (), None
    many = number(m["n"], 1) if m["n"] else None
    return (), min((many.at(0) or 1) if many else 1, 500)


def _listed(rows: list[int], rest: str) -> tuple[int, ...]:
    """ "2", ", 3 and 4" -> 2, 3, 4;  "5", "-8" -> 5, 6, 7, 8."""
    for m in re.finditer(rf"(?P<j>{_JOIN})\s*(?:the\s+)?(?:(?:{_ROWS}|r(?=\d))\s*)?(?P<n>{_ORD}|\d{{1,9}})", rest, re.IGNORECASE):
        n = _ordinal(m["n"])
        if m["j"].lower() in ("and", "&", ","):
            rows.append(n)
        else:
            rows.extend(range(rows[-1] + 1, min(n, rows[-1] + 500) + 1))
    return tuple(rows[:500])


def _ordinal(text: str) -> int:
    digits = re.match(r"\d{1,9}", text)
    return min(int(digits.group()), 10_000_000) if digits else int(tables()["ordinals"].get(text.lower(), 1))
