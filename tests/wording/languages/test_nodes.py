"""Every kind of instruction in every language: no words of English come out, and none is silently left out."""

import re
from typing import Any

import pytest
from spoken import own  # type: ignore[import-not-found,unused-ignore]

from loopwright.model.tree import (
    ONE,
    AtEnds,
    Chain,
    EdgeRun,
    Either,
    Evenly,
    EveryKth,
    Filet,
    Group,
    InTurn,
    Join,
    Make,
    Mark,
    Num,
    PatternRun,
    Place,
    Repeat,
    Ring,
    RowOrder,
    Skip,
    Spread,
    Thing,
)
from loopwright.terms.languages import LANGUAGES
from loopwright.wording.languages import language_voice
from loopwright.wording.orders import order
from loopwright.wording.stitches import Scene, one
from loopwright.wording.voice import Voice

THREE = Num((3,))
SIZED = Num((3, 4))
SPACE = Thing("sp", 2)
DC = Make("dc", ONE, Place())
PLACES = (
    Place(), Place("next", THREE), Place("next", SIZED), Place("first"), Place("first", THREE), Place("last"), Place("last", THREE), Place("same"),
    Place("same", thing=Thing("sp")), Place("any", thing=SPACE), Place("each", None), Place("each", None, left=ONE), Place("each", None, left=THREE),
    Place("each", None, upto=SPACE), Place("each", None, thing=Thing("ch")), Place("every", None, k=2), Place("every", None, k=3),
    Place("kth", k=2, thing=Thing("ch"), from_hook=True), Place("kth", k=3, thing=Thing("ch"), of=SPACE), Place("kth", k=1),
    Place("each", None, thing=SPACE), Place(thing=SPACE), Place(thing=Thing("sp", 0)), Place(thing=Thing("ring")), Place(thing=Thing("tch")),
    Place("each", None, thing=SPACE, of=Thing("v-st")), Place(thing=SPACE, of=Thing("v-st")), Place(centre=True), Place(centre=True, of=Thing("shell")),
    Place("each", centre=True, of=Thing("shell")), Place(relation="around", thing=Thing("dc")), Place(relation="between", n=Num((2,))),
    Place(loop="back"), Place(loop="front"), Place(loop="third"), Place(rows_below=1), Place(thing=Thing("corner")), Place("each", None, thing=Thing("row")),
    Place(thing=Thing("row")), Place("last", THREE, thing=Thing("row")), Place(thing=Thing("join")), Place(thing=Thing("loop")), Place(thing=Thing("group")),
)
NODES: tuple[Any, ...] = (
    *(Make("dc", ONE, p) for p in PLACES), *(Make("sc", Num((2,)), p) for p in PLACES), *(Make("shell", ONE, p) for p in PLACES[:16]),
    *(Make("hdc", ONE, p) for p in PLACES), Make("sc2tog", Num((6,))), Make("sc2tog"), Make("dc2tog", ONE, Place("next", Num((2,)))), Make("inc"),
    Make("sc2tog", ONE, Place("each", None)), Make("dc", Num((5,))), Make("dc", Num((3,)), Place(), between=1), Make("dc2tog", ONE, taking=3),
    Chain(ONE), Chain(SIZED), Chain(THREE, "yes", "dc"), Chain(Num((5,)), "yes", "dc"), Chain(THREE, "yes"), Chain(ONE, "no"), Chain(Num((), "body"), plus=3),
    Group((DC, Chain(ONE), DC), Place(thing=SPACE)), Group((DC,), None), Group((DC, DC), Place(), "shell"),
    Group((Repeat((Make("dc"), Chain(ONE)), "times", THREE),), Place(thing=Thing("ring"))), Skip(ONE), Skip(THREE), Skip(ONE, first=True), Skip(THREE, first=True),
    *(Repeat((DC, Chain(ONE)), mode, THREE) for mode in ("times", "more", "star-times", "end", "once")), Repeat((DC, Chain(ONE)), "left", left=ONE),
    Repeat((DC, Chain(ONE)), "left", left=THREE), Repeat((DC, Repeat((DC, Chain(ONE)), "end")), "end"), Repeat((DC, Repeat((DC,), "left", left=THREE)), "end"),
    *(Repeat((DC, Chain(ONE)), "end", ending=(DC,), ending_mode=m) for m in ("after", "with", "with-last", "correspond", "omit")),
    Repeat((DC, Chain(ONE), DC), "end", ending_mode="at", stop_at=1), Repeat((Make("sc2tog"),), "end"),
    Repeat((Make("dc", ONE, Place(thing=Thing("ch"))), Make("dc", ONE, Place("each", None, thing=Thing("ch")))), "once"),
    Either("list-then-place", ((1.0, (DC,)), (2.0, (DC, DC)))), Evenly("inc", Num((8,))), Evenly("dec", ONE), Evenly("inc", to=SIZED), Evenly("dec", THREE, kind="hdc"),
    Evenly("inc", to=THREE, kind="hdc"), EveryKth("inc", 3), AtEnds("dec"), AtEnds("inc", THREE), AtEnds("dec", ends=1), EdgeRun("sc", None, "row-ends", 2),
    EdgeRun("sc", None, "row-ends"), EdgeRun("sc", THREE, "row-ends"), EdgeRun("sc", None, "underside"), EdgeRun("sc", THREE, "edge"), EdgeRun("sc", THREE, "around"),
    PatternRun(None), PatternRun("shell", Num((5,))), InTurn((DC, Make("sc", ONE, Place("each", None, thing=SPACE)))), Spread("dc", Num((24,)), Num((12,))),
    Filet(THREE, filled=True), Filet(ONE, filled=False), Join(), Join(via="sl st"), Join(Place("first", thing=Thing("hdc"))), Join(Place("first"), "sl st"),
    Ring(magic=True), Ring(magic=False), Mark("turn"), Mark("fasten-off"), Mark("no-join"), Mark("loops", loop="back"), Mark("leave", n=THREE),
    Mark("leave", n=ONE), Mark("attach"), Mark("attach", place=Place(thing=SPACE)),
)
ORDERS = (
    RowOrder("even", times=THREE), RowOrder("even", times=ONE, kind="rnd"), RowOrder("even", times=SIZED, kind="hdc"), RowOrder("even"), RowOrder("even", until_sts=THREE),
    RowOrder("repeat", (2,)), RowOrder("repeat", (2, 3), times=Num((2,)), more=True), RowOrder("repeat", (2, 3, 4), times=THREE), RowOrder("repeat", last_n=1, times=ONE),
    RowOrder("repeat", last_n=2, total_rows=Num((20,))), RowOrder("repeat", last_n=1, until_sts=Num((12,))), RowOrder("same-as", (1, 2, 3), kind="rnd"),
    RowOrder("same-as", (1,)), RowOrder("continue"), RowOrder("continue", delta=Num((8,)), kind="rnd"), RowOrder("continue", delta=Num((-2,)), alternate="other"),
    RowOrder("correspond"), RowOrder("repeat", (2,), until_text="piece measures 15 cm"),
)
ENGLISH = re.compile(
    r"\b(?:the|each|next|around|and|of|with|into|from|sk|turn|join|skip|last|first|stitch|stitches|round|rounds|row|rows|sts|rnd|rnds|chain|sp|sps|until|remain|"
    r"remaining|evenly|working|work|place|same|other|center|centre|across|times|twice|once|made|hook|yarn|edge|slip|single|treble|crochet|sc|hdc|sl|ch|rep)\b")
OWN = {  # words that a language has itself
    "es": {"rep"}, "pt": {"rep"}, "fr": {"crochet"}, "it": {"sp"}, "da": set(), "sv": set(), "nl": {"of"}, "de": set(),
}


def scene(code, **how):
    voice = language_voice(Voice("us", "us", 2, **how), code)
    return Scene(voice, voice.say("around"), "magic_ring", "", lambda text: text, lambda fork: fork.readings[0][1])


@pytest.mark.parametrize("code", LANGUAGES)
@pytest.mark.parametrize("how", [{}, {"full_words": True}, {"size": 0}, {"spelled_out": True}], ids=["short", "full", "one-size", "spelled-out"])
def test_every_instruction_is_said_without_english(code, how):
    wrong = []
    for node in NODES:
        at = scene(code, **how)
        said = one(at, node)
        english = set(ENGLISH.findall(own(said))) - OWN[code]
        if not said.strip() or english or at.voice.heard.kept or "  " in said or "{" in said.replace("{body}", ""):
            wrong.append((node, said))
    assert wrong == []


@pytest.mark.parametrize("code", LANGUAGES)
def test_every_order_is_said_without_english(code):
    at = scene(code)
    said = [order(at.voice, told, None, at.end) for told in ORDERS]
    assert [s for s in said if set(ENGLISH.findall(s)) - OWN[code] or not s.strip() or "[en" in s] == []


@pytest.mark.parametrize("code", LANGUAGES)
def test_numbers_stand_in_every_order(code):
    at = scene(code)
    for told in ORDERS:
        numbers = [str(n) for n in told.rows[:1]] + [str(abs(n.values[0] or 0)) for n in (told.times, told.until_sts, told.delta, told.total_rows) if n and (n.values[0] or 0) > 2]
        said = order(at.voice, told, None, at.end)
        assert all(re.search(rf"(?<!\d){n}(?!\d)", said) for n in numbers), said


@pytest.mark.parametrize("code", LANGUAGES)
def test_words_that_no_frame_has_stay_marked_and_are_counted(code):
    at = scene(code)
    assert at.voice.keep("in the corner of the finished square") == "[en: in the corner of the finished square]"
    assert at.voice.keep("with B") != "[en: with B]"
    assert at.voice.heard.kept == [("in the corner of the finished square", "", "")]
