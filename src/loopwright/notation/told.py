"""Lines before the first row that tell something and ask for no stitch: notes, definitions, measurements, lists of what is needed."""

from __future__ import annotations

import re

from loopwright.kept import of_short

_BLOCK = re.compile(
    r"(?:(?:pattern|designer|special|general|helpful)\s+)?notes?|(?:special\s+)?abbreviations?(?:\s+used)?|special\s+(?:stitch(?:es)?|sts?)|stitch(?:es)?(?:\s+(?:used|guide))?"
    r"|materials(?:\s+needed)?|supplies|you(?:\s+will|'ll)\s+need|what\s+you\s+need|gauge|tension|yarn|hook|notions"
    r"|(?:finished\s+)?(?:sizes?|measurements?|dimensions)|skill\s+level",
    re.IGNORECASE,
)
_ROW_LABEL = re.compile(r"(?:(?:\d{1,3}(?:st|nd|rd|th)|next|last|first|dec|inc)\s+|\d{1,3}\s*)?(?:rows?|rnds?|rounds?|r)(?:\b|(?=\d))\.?\s*\d*|\d{1,3}\s?[):]\s|foundation\b|set[- ]?up\b", re.IGNORECASE)
_DEFINES = re.compile(r"[\w() /.&-]{1,24}(?:\s+\([^)]*\))?\s*=\s*\S")
_HEADED = re.compile(
    r"(?:finished|actual|to fit|fits|approx\w*|skill|difficulty|level|gauge|tension|yarn|hook|stitch(?:es)? used|special stitch|special sts?\b|abbreviation|"
    r"measurement|dimension|material|notion|you will need|size)[\w &/()-]{0,30}:",
    re.IGNORECASE,
)
_OF_CHAINS = re.compile(
    r"(?:the\s+|all\s+|each\s+|any\s+|neither\s+(?:the\s+)?)?(?:turning|starting|beginning|start|beg)?\s*-?\s*(?:\d\s*-?\s*ch(?:ain)?s?|ch(?:ain)?s?\s*-?\s*\d?)\b[^.;]{0,60}"
    r"(?:\bcount(?:s|ed)?\b|=\s*(?:an?\s+|1\s+|one\s+|first\s+)?(?:dc|tr|htr|hdc|dtr|sc|st)\b"
    r"|\bstands?\s+(?:in\s+)?(?:for|as)\b|\b(?:is|are)\s+(?:not|never|always)\s+(?:an?|the|your|sts|stitches)\b)",
    re.IGNORECASE,
)
_WORKED = re.compile(r"\*|\b(?:in\s+(?:each|every|next|ring|the\s+ring|\dth|\dnd)|rep(?:eat)?|join|rows?\s*\d)\b", re.IGNORECASE)  # something is done
_OF_WORK = re.compile(
    r"\b(?:is|are)\s+(?:\w+ly\s+|then\s+|all\s+)?(?:worked|made|crocheted|multiples?|written|sewn|joined|closed|picked up|left|turned)\b", re.IGNORECASE
)


_MAKING_UP = re.compile(r"(?:(?:fold|lay|bring)\s+(?:out\s+)?(?:the|it|squares|motifs|pieces|each|both|your|work|piece|in\s+half|flat)|(?:cut|break)\s+(?:the\s+|off\s+)*(?:yarn|thread)[^.;]{0,20}\bclose\b|close\s+(?:up\s+)?(?:the|any|small)\b|where\s+(?:a|an|the|two))\b", re.IGNORECASE)
_CLOSED = re.compile(r"\b(?:\d{1,3}\s*(?:sc|hdc|dc|htr)\b|(?:sc|hdc|dc|htr)\s+\d{1,3}\b)|\b(?:sc|hdc|dc|htr)\b.*[(\[=]\s*\d{1,3}\s*(?:sts?|sc|dc)?\s*[)\]]?\.?$", re.IGNORECASE)  # it closes with stitches that count
_HOW_ON = re.compile(
    r"(?:you\s+will\s+)?(?:now\s+|from\s+(?:now|here)\s+on,?\s+)?(?:work|continue|begin(?:\s+working)?|working)\s+(?:back\s+and\s+forth\s+)?"
    r"(?:in\s+(?:continuous\s+)?(?:rows|rounds|rnds|spirals?)(?:\s+from\s+(?:now|here)\s+on)?"
    r"|(?:in|into|along|across|around)\s+(?:the\s+)?(?:row\s+ends?|ends?\s+of\s+(?:the\s+)?rows|sides?\s+of\s+(?:the\s+)?rows|row\s+edges?)(?:\s+of\s+(?:the\s+)?\w+)?)\s*[:.]?",
    re.IGNORECASE,
)
_SEWING = re.compile(
    r"(?:(?:now|then|next),?\s+)?(?:using\s+[^,.;]{1,30},\s*)?(?:"
    r"(?:ch\s*1,?\s*)?(?:turn,?\s*)?(?:match|align|line\s+up|butt)\b[^.;]*\b(?:sl\.?\s?st|slip\s?stitch|ss|sew|join|whip\s?stitch)\b|(?:(?:now|then|next),?\s+)?(?:using\b(?=[^.;]*\b(?:needles?|tails?|mattress|whip\s?st(?:itch)?|pins)\b)|(?:mattress\s+stitch|seam|graft|pin)\b)"
    r"|(?:bring|hold|place|match|with)\s+(?:the\s+|both\s+|two\s+|your\s+|first\s+and\s+)*(?:short|long|side|row|last|back)\s*(?:ends?|edges?|sides?|rows?)\s+(?:\w+\s+){0,3}together\b"
    r"|(?:sl(?:ip)?\.?\s?st(?:itch)?(?:es)?\.?|ss|join|(?:single\s+)?crochet|sc|dc)\s+(?![^.;]*(?:\b(?:next|each)\b|(?<!sl\s)(?<!slip\s)\b(?:sts|stitches)\b))(?:(?:to\s+join|in)\s+)?(?:the\s+|both\s+|two\s+|your\s+)*"
    r"(?:(?:short|long|side|back|row)\s+(?:ends?|edges?|seams?|sides?)|(?:brim|band|ribbing|rib|pieces?|panels?|squares?|motifs?|sides|edges|ends|seam)\b"
    r"|(?:first|last|final)\s+(?:and\s+(?:last|first|final)\s+)?rows?\b))",
    re.IGNORECASE,
)
_STILL_ON = re.compile(r"(?:(?:do\s+not|don[’']t)\s+(?:fasten\s+off|turn|(?:cut|break)\s+(?:the\s+)?yarn)\s*[.;,]\s*(?:and\s+)?)+", re.IGNORECASE)
_HEADING = re.compile(r"[A-Z][A-Za-z]+(?:[ /&-]{1,3}[A-Za-z]+){0,3}\s*:?")
_RINGS = frozenset(("mr", "mc", "ml"))  # pieces of today begin so, in a line of its own
_DOING = frozenset(
    "in into on over around across along each every next turn join fasten finish off repeat rep continue work make from to all until then ch chain "
    "skip miss sk leave attach cut break change with stuff place insert weave sew begin start finally end and mark do not as same ring st sts".split()
)


LONGEST_NAME = 120


_TERMS = re.compile(r"(?:written\s+in\s+|uses?\s+)?(?:US|UK|British|American)\s+(?:crochet\s+)?term(?:s|inology)\b", re.IGNORECASE)
_A_STITCH = re.compile(
    r"(?:(?:beg(?:inning)?|\w{1,12})[ -])?(?:v-?st|\w+[ -]st(?:itch)?|shell|cluster|cl|bobble|bo|popcorn|pc|puff|fan|picot|cable|spike)\s*(?:\([^)]*\))?:\s+\(?(?:\d|yo\b|ch\b|skip\b|sk\b|work\b|insert\b|\(|[shdt]{1,2}c\b|tr\b)",
    re.IGNORECASE,
)
_COLOURS = re.compile(
    r"(?:now\s+)?(?:change|switch|alternate)\s+(?:the\s+)?(?:yarns?|colou?rs?)\b[^;:]*"
    r"|(?:(?:and|then|join|attach|rejoin)\b[\s,.;]*)+",  # "Join B": what is left of it where colours are no words
    re.IGNORECASE,
)
# "dc = double crochet", "[ ] = work what is in brackets": what stands for what, in a list behind the rows
_GLOSS = re.compile(r"(?![^=]*\b(?:in|into|next|each|made|total)\b)[^=\d;:.]{1,28}=\s*[A-Za-z][^=\d]*")
_GLOSSES = re.compile(r"(?:(?:special\s+)?abbreviations?|stitch(?:es)?\s+(?:used|key)|key|legend|glossary)(?:\s+used)?\s*(?:\([^()]{1,30}\)\s*)?:.*=", re.IGNORECASE)
_SHORT_FOR = re.compile(r"[A-Za-z]{1,5}\.\s{1,3}(?:[A-Z][a-z]{2,9}\s?){1,4}\.?")  # "Ss. Slip Stitch"
_MEASURED = re.compile(r"(?:gauge|tension)\s*(?:[:–—-]|\bis\b)(?!.*\b(?:swatch|turn|next)\b)", re.IGNORECASE)
_OWN_TALK = re.compile(
    r"(?:i|we)(?:['’](?:m|ve|d|ll|re)|\s+(?:also\s+|just\s+|really\s+|only\s+)?(?:(?:always|usually|typically|often|generally)\s+[a-z]+|am|was|were|had|like[ds]?|love[ds]?|find|found|used|use|made|think|thought|tend|did|would|could|can|hope|wanted|decided|started|wrote|prefer(?:red)?|recommend))\b"
    r"(?!.*\b(?:row|rnd|round)\s*\d)(?!.*\brep(?:eat)?\s+from\b).*|(?:here\s+(?:are|is|['’]s)|here['’]s|thanks?\b|enjoy\b|let\s+me\s+know|please\b|feel\s+free|follow\s+me|tag\s+me|happy\s+(?:crocheting|hooking)|don['’]t\s+forget)(?!.*\b(?:row|rnd|round)\s*\d)(?!.*\brep(?:eat)?\s+from\b).*",
    re.IGNORECASE,
)


_NOTED = re.compile(r"(?:note|tip|hint)s?\s*[:–—-]\s+\S", re.IGNORECASE)
_TALK = re.compile(
    r"(?!.*\b(?:rep|repeat)\b)(?!.*\brows?\s*\d)(?:(?:now|next|here|from\s+(?:now|here)(?:\s+on)?|in\s+this\s+(?:row|round|rnd|section|part|step)|this\s+time),?\s+)?"
    r"(?:we|you)(?:['’](?:ll|re)|\s+(?:are|will|can|may|want|need))\b.*",
    re.IGNORECASE,
)


_BEGINS = re.compile(r"(?:now\s+|we\s+)?(?:begin|start)\s+(?:to\s+)?(?:decreas|increas|shap)\w*[^.;\d]{0,40}:", re.IGNORECASE)  # "Begin decreasing on both sides:"


_HOW_MADE = re.compile(
    r"(?:notes?:\s+)?(?:the|an?|each|this|these)\s+(?:[\w'’-]{1,20}\s){0,3}(?:sts?|stitch(?:es)?|shells?|clusters?|popcorns?|bobbles?|puffs?|fans?|picots?|scales?)\s+"
    r"(?:is|are)\s+(?:just\s+)?(?:(?:made|worked|done|formed)\s+(?:just\s+)?(?:like|as\b(?!\s+(?:row|rnd|round))|by|through|much)|like)\b.*",
    re.IGNORECASE,
)


_STRIPES = re.compile(r"(?:colou?r\s+[A-Z\d]|(?-i:[A-Z]{1,2}\d?))\s*[:=–-]\s*(?:work\s+)?\d{1,3}\s+(?:rows?|rnds?|rounds?)\s*[.,]?", re.IGNORECASE)  # "Color A: Work 6 rows", of a list
_ANYWHERE = re.compile(r"(?:at\s+(?:the\s+)?(?:beginning|start|end)\s+of\s+(?:a|any)\s+(?:row|rnd|round)|anywhere\s+else|elsewhere|everywhere\s+else)\s*[:,–—-]", re.IGNORECASE)  # how a decrease is made


_PART_ONLY = re.compile(
    r"(?:you\s+(?:will\s+)?(?:now\s+)?|now\s+)?(?:work(?:ing)?|continue)\s+(?:now\s+)?(?:on|across|over|with)\s+(?:the\s+|your\s+)?(?:right|left|first|second|back|front|one|other|1st|2nd)\b(?:\s+[a-z]{3,12}){0,2}\s+only\s*[.:]?",
    re.IGNORECASE,
)


def part_only(line: str) -> bool:
    """Whether a line says which part is worked on from here, "You will now work on the left front only.": its stitches are not all of those before."""
    return _PART_ONLY.fullmatch(line.strip()) is not None


_THROUGHOUT = re.compile(
    r"(?:(?:the\s+)?(?:beg(?:inning)?|turning|starting|first)\s+)?(?:\d\s*-?\s*ch(?:ain)?s?|ch(?:ain)?s?\s*-?\s*\d)\s*[(,]?\s*(?:(?:this|which)\s+)?(?:does\s+not\s+count|do\s+not\s+count|doesn[’']t\s+count|counts?)\b[^.;()\d]{0,40}"
    r"(?:(?<=throughout)|(?<=stitch)|(?<=\bst))(?:\s+(?:unless|in|for|of|on|at)\b[^.;()]{0,40})?\)?\s*\.?", re.IGNORECASE,
)  # "2 ch (counts as first dc throughout)", "Ch 1 does not count as a stitch."


def is_glossary(line: str) -> bool:
    """Whether a line is a whole list of abbreviations, "ABBREVIATIONS: ch = chain; dc = double crochet"."""
    return "=" in line and _GLOSSES.match(line.strip()) is not None


def of_the_whole(line: str) -> bool:
    """Whether a line among the rows is told of the whole piece: folded, laid, sewn or slip-stitched up, worked on in rows. It makes no row."""
    words = line.strip()
    on = _STILL_ON.match(words)  # "Do not fasten off. Sl st the last row to the first."
    words = words[on.end() :] if on else words
    if _THROUGHOUT.fullmatch(words) is not None or "=" in words and _GLOSS.fullmatch(words) is not None:
        return True
    if _SHORT_FOR.fullmatch(words) is not None or _MEASURED.match(words) is not None or _OWN_TALK.match(words) is not None:
        return True
    return _TALK.match(words) is not None or _NOTED.match(words) is not None or _BEGINS.fullmatch(words) is not None or _COLOURS.fullmatch(words) is not None or _HOW_MADE.match(words) is not None or _MAKING_UP.match(words) is not None and _CLOSED.search(words) is None or _SEWING.match(words) is not None or _HOW_ON.fullmatch(words) is not None


def is_heading(line: str) -> bool:
    """Whether a line is but the name of a part, though a stitch or a shaping is in it: "Decreases:", "Picot edge", "Shell Round"."""
    words = line.strip()
    return words.lower() not in _RINGS and _HEADING.fullmatch(words) is not None and not _DOING & set(re.split(r"[ /&:-]+", words.lower()))


@of_short(1_024)
def opens_block(line: str) -> bool:
    """Whether a line is the bare name of a block such as "Notes" or "Abbreviations (US terms):"; the block ends at a blank line."""
    return len(line) <= LONGEST_NAME and _BLOCK.fullmatch(re.sub(r"\s*\([^)]*\)", "", line).strip(" :.-–—")) is not None


_BEGUN = re.compile(
    r"(?:the\s+|written\s+|free\s+|full\s+|crochet\s+)*(?:pattern|instructions?|directions?|method)|(?:let[’']s\s+)?(?:begin|start|get\s+started)|to\s+(?:make|begin|start)(?:\s+(?:the\s+|a\s+)?[a-z]{3,12})?", re.IGNORECASE,
)
_PIECE = re.compile(
    r"(?:(?i:blanket|throw|afghan|shawl|scarf|cowl|hat|beanie|square|block|motif|panel|strip|base|body|bottom|front|back|cent(?:er|re)|main\s+(?:part|piece|body|section)|cloth|dishcloth|washcloth|coaster|bag|basket|doily|cushion|pillow|mat)(?:\s+(?i:body|base|front|back))?"
    r"|[A-Z]{4,}(?:\s[A-Z]{3,})?)(?:\s*\([^()]{1,24}\))?"
)
_BARE_CHAIN = re.compile(r"[\s,]*(?:(?:with|using)\s+[^,.;:()]{1,40},\s*)?(?:foundation\s*:\s*)?(?:ch(?:ain)?\s?\d{1,4}|\d{1,4}\s?ch)(?:\s*[(\[][\d,;:\s–-]+[)\]])?(?:\s+loosely)?\s*\.?", re.IGNORECASE)  # "Ch 61."


def closes_block(line: str) -> bool:
    """Whether a line is the name under which the rows begin, "Pattern:", "Instructions": what stood before it is told, what follows is worked."""
    name = line.strip(" :.-–—")
    return len(line) < LONGEST_NAME and (_BEGUN.fullmatch(name) is not None or _PIECE.fullmatch(name) is not None and not opens_block(line))


def defines(line: str) -> bool:
    """Whether a line begins with what a name stands for: "V-st = (dc, ch 1, dc) in same st"."""
    return _DEFINES.match(line) is not None


def is_told(line: str, in_block: bool) -> bool:
    """Whether a line before the first row tells something, though its words name stitches. A line with a row's label never does."""
    words = line.strip()
    if _ROW_LABEL.match(words) or in_block and _BARE_CHAIN.fullmatch(words):
        return False
    if in_block or _THROUGHOUT.fullmatch(words) or _DEFINES.match(words) or _HEADED.match(words) or _TERMS.match(words) or _A_STITCH.match(words):
        return True
    if _SHORT_FOR.fullmatch(words) or _MEASURED.match(words) or _OWN_TALK.match(words) or _STRIPES.fullmatch(words) or _ANYWHERE.match(words):
        return True
    counts = _OF_CHAINS.match(words)
    if counts is None and not _WORKED.search(words):
        counts = next((m for s in re.split(r"[.;]\s+", words) if (m := _OF_CHAINS.match(s)) is not None), None)
    return counts is not None and "(" not in counts.group() or _OF_WORK.search(words) is not None
