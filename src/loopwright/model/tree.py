"""The tree: a pattern as written. Every node keeps the span of the words that made it.

Not an interpretation: where the words allow several readings, the tree holds an `Either`, and the worker chooses.
Stitch kinds are US abbreviations in every tree, whatever terms the text uses ("sc", "hdc", "dc3tog", "fpdc").
"""

from __future__ import annotations

from dataclasses import field
from typing import Any, Literal

from loopwright.model.translated import Translated
from loopwright.record import record
from loopwright.source import Span

NOWHERE = Span(0, 0)


@record
class Num:
    """A number as written: one value for all sizes, one per size, or a blank to be filled per size.

    A `None` among the values is a dash: this size does not do it.
    """

    values: tuple[int | None, ...] = ()
    blank: str | None = None
    span: Span = NOWHERE

    def at(self, size: int) -> int | None:
        """The value for a size by index; a single value serves every size. An unfilled blank gives None."""
        if not self.values:
            return None
        return self.values[size if len(self.values) > 1 and size < len(self.values) else 0]


ONE = Num((1,))

Loop = Literal["both", "back", "front", "third", "front-post", "back-post"]
Quant = Literal["next", "first", "last", "same", "each", "every", "kth", "any", "skipped"]


@record
class Thing:
    """What a place is made of.

    `kind`: "st" (any stitch), "any" (a stitch or a chain, as old books count them), "ch" (a chain itself), "sp" (a chain space, loop or gap; `length` chains when said,
    0 = a gap between stitches or groups), "gap" (between groups; `length` 0: or between one and the edge), "ring", "corner", "tch" (turning or start chain), "join", "row-end",
    "underside" (other side of the foundation), "row" (a count of rows), a stitch kind ("dc", "fpdc"),
    or a group or special name ("shell", "cluster", "picot", "popcorn", "bean st" …).
    """

    kind: str = "st"
    length: int | None = None


STITCH = Thing("st")


@record
class Place:
    """Where a stitch goes.

    `quant`: next/first/last/same/each/every/kth/any. `n`: how many ("next 3"); "each" with n None runs to the end
    of the row or until `left` places remain ("to last 3 sts", "across to within 2 sts of end").
    `each of next 3` is quant "next", n 3. "every 3rd st" is quant "every", k 3.
    "skipped": what was passed over just before, to go back to for crossed stitches; `k` says which of them, from 1, None in order.
    `k` with `of`: "3rd ch of ch-6" = kth, k 3, thing ch, of Thing("ch", 6). `from_hook`: "2nd ch from hook".
    `centre`: "center dc of shell" = thing dc, of shell, centre. `relation`: in, between, around (a post or under).
    `upto`: "each" stops before the next of these ("in each treble up to the 2 chain", "to the centre of the shell").
    `rows_below`: 0 for the row being worked into, 1 for the row below that, … (spike stitches).
    `of_row`: the number of the row it is told to be in ("around post of next sc of Rnd 2"); 0 where none is told.
    """

    quant: Quant = "next"
    n: Num | None = ONE
    thing: Thing = STITCH
    k: int | None = None
    of: Thing | None = None
    loop: Loop = "both"
    left: Num | None = None
    centre: bool = False
    from_hook: bool = False
    relation: Literal["in", "between", "around"] = "in"
    rows_below: int = 0
    upto: Thing | None = None
    of_row: int = 0
    span: Span = NOWHERE


@record
class Make:
    """Stitches of one kind.

    With a place: `n` stitches in *each* place taken ("2 sc in each of next 3" = n 2, place next 3 -> 6 stitches).
    Without a place: one in each of the next `n` places ("sc 3", "5 dc"); for decreases ("sc2tog 3") likewise n of them.
    kind "inc" and "dec" stand for an increase / decrease in the stitch of the row (2 in one, 2 together);
    `parts` > 0 tells how many legs a decrease or cluster has when the text says so ("dc3tog" is kind dc3tog, parts 3).
    `between`: chains between the n stitches when told apart ("3 dc with ch 1 between"). `loop` as for Place.
    `taking`: stitches of the row below that one such stitch takes ("over next 3 sts").
    """

    kind: str
    n: Num = ONE
    place: Place | None = None
    loop: Loop = "both"
    parts: int = 0
    between: int = 0
    taking: int | None = None
    span: Span = NOWHERE


@record
class Chain:
    """`ch n`. `counts`: what the text says of it as a stitch; `as_kind` what it counts as ("counts as dc").

    `every`: "a multiple of `every` plus `plus`", 1 for any length; `n` is then that of a sample without `plus`, without a value where none is told.
    """

    n: Num
    counts: Literal["yes", "no", "part", "unsaid"] = "unsaid"
    as_kind: str | None = None
    plus: int = 0
    span: Span = NOWHERE
    every: int = 0


@record
class Group:
    """Several things into ONE place (in each place taken): "(2 dc, ch 1, 2 dc) in next sp". `name`: "shell" when told."""

    nodes: tuple[Node, ...]
    place: Place | None
    name: str | None = None
    span: Span = NOWHERE


@record
class Skip:
    """`sk n things`. `first`: "sk first st", which after a start chain that counts is the stitch under that chain.

    `to`: everything up to such a place, and that too ("skip all sleeve sts to next ch-2 sp").
    """

    n: Num
    thing: Thing = STITCH
    span: Span = NOWHERE
    first: bool = False
    to: bool = False


@record
class Repeat:
    """A repeat of nodes.

    `mode`: "times" (`times` in all: "(…) 6 times", "x 6"), "more" ("rep from * 5 times more": times + 1 in all),
    "star-times" ("rep from * 5 times": n + 1 by custom, or n: the worker decides), "end" (around, across, to the end),
    "left" (until `left` of `left_of` remain), "until" (until `times` groups are made), "once" (no repeat told: a bracket only).
    `ending`: what is worked after it when the text says "ending with …" (replaces the last round's tail as needed);
    `ending_mode`: "after" (plain text going on), "with" ("ending with"), "with-last" ("end last rep with"), "correspond",
    "omit" (last repeat leaves the ending nodes out), "at" (last repeat stops before node index `stop_at`: ** mark).
    `upto`: with "end", the rounds stop before the next of these ("rep from * to corner").
    """

    nodes: tuple[Node, ...]
    mode: Literal["times", "more", "star-times", "end", "left", "until", "once"]
    times: Num | None = None
    left: Num | None = None
    left_of: Thing = STITCH
    ending: tuple[Node, ...] = ()
    ending_mode: Literal["after", "with", "with-last", "correspond", "omit", "at"] = "after"
    stop_at: int | None = None
    span: Span = NOWHERE
    upto: Thing | None = None


@record
class Either:
    """Several readings of the same words: (cost, nodes) each, cheapest first. `key` names the fork for assumptions."""

    key: str
    readings: tuple[tuple[float, tuple[Node, ...]], ...]
    span: Span = NOWHERE


COUNT_OR_WORK = "count-or-instruction"  # key of the fork "…; 10 sc": the row's count, or ten stitches more


@record
class Evenly:
    """Increases or decreases spread over the row: "inc 8 sts evenly" (`n`), "dec evenly to 54 sts" (`to`).

    `kind`: stitch of the row when said.
    """

    op: Literal["inc", "dec"]
    n: Num | None = None
    to: Num | None = None
    kind: str | None = None
    span: Span = NOWHERE


@record
class EveryKth:
    """ "inc in every 3rd st" = two plain, then the increase in the third; "dec every 3rd and 4th st"."""

    op: Literal["inc", "dec"]
    k: int
    kind: str | None = None
    span: Span = NOWHERE


@record
class AtEnds:
    """ "dec 1 st at each end" (`ends` 2) or at one edge (`ends` 1): the rest of the row is worked even."""

    op: Literal["inc", "dec"]
    n: Num = ONE
    ends: int = 2
    kind: str | None = None
    span: Span = NOWHERE


@record
class EdgeRun:
    """Stitches along an edge that is not the last row: row ends, the underside of the foundation, around a corner.

    `n` total if told; `per` stitches for every `rows` row ends when told ("2 dc in end of each row", "3 sts for every 4 rows"). `where`: "row-ends", "underside",
    "edge" (unsaid which), "free" (stitches that earlier rows left free), "around" (all the way round a piece, or over a round), "outline" (round a piece only),
    "opening" (round the neck, an armhole: an edge of which nobody told how long it is).
    """

    kind: str
    n: Num | None
    where: Literal["row-ends", "underside", "edge", "free", "around", "outline", "opening"]
    per: int | None = None
    rows: int = 1
    span: Span = NOWHERE


@record
class PatternRun:
    """ "work in pattern (to end / over n sts)", "4 patterns", "shells across": what was established before goes on.

    `left`: places that stay ("in pattern to last 3 sts"). `parts`: what the shape is made of, where its name says so ("4 dc shells").
    """

    name: str | None
    n: Num | None = None
    left: Num | None = None
    parts: tuple[Node, ...] = ()
    span: Span = NOWHERE


@record
class InTurn:
    """Parts with a place "each …" that are worked as their places come: "1 dc in each dc, 2 dc, ch 2, 2 dc in each ch-2 sp".

    The later part wins where two name the same place ("1 sc in each st, 3 sc in each corner st").
    """

    parts: tuple[Node, ...]
    span: Span = NOWHERE


@record
class Spread:
    """ "in the 12 dc work 24 treble", "5 blue over 5 blue": `n` stitches over the next `over` places, as evenly as they come.

    `over` None: over as many as are left of the division ("21 black over the black"). `colour` as told.
    """

    kind: str
    n: Num
    over: Num | None = None
    colour: str = ""
    span: Span = NOWHERE


@record
class Divided:
    """A row told for one of its equal divisions and meant for all of them: "1 white on the white, 4 blue on the 3"."""

    parts: tuple[Spread, ...]
    span: Span = NOWHERE


@record
class Filet:
    """ "15 sps", "3 bls": meshes of a filet row, each over three places of the row below: open (ch 2, dc) or filled (3 dc)."""

    n: Num
    filled: bool
    span: Span = NOWHERE


@record
class Join:
    """End of round (or any) join. `place` None: to the first stitch. `via`: "sl st", "sc", "dc" … None when unsaid.

    `last_chain`: the chain that is joined ("join last ch-5 to …"): the round ends with it; -1: as the rounds before ("join as before").
    """

    place: Place | None = None
    via: str | None = None
    last_chain: int | None = None
    span: Span = NOWHERE


@record
class Ring:
    """A start in the round: magic ring (`chains` None) or the last chain joined to form a ring."""

    magic: bool
    span: Span = NOWHERE


@record
class Mark:
    """Anything that moves no stitch: turn, fasten off, no join, stitch marker, leave unworked, change of colour, attach.

    `what`: "turn", "fasten-off", "no-join", "leave" (n unworked), "colour" (text), "attach" (text, place; text "free": to stitches left free before),
    "marker" (text: where; see `place_marker`), "last-row" (the chain before it is for the last of the rows alone), "no-chain" (the last of
    the rows ends without its chain), "all-but" (passed over up to the last `n`), "below" (so many stitches stand there before the row), "side-rs", "side-ws", "with-wrong-side", "loops" (loop set for the whole row: see `loop`), "note" (text).
    """

    what: str
    text: str = ""
    n: Num | None = None
    place: Place | None = None
    loop: Loop = "both"
    span: Span = NOWHERE


@record
class Define:
    """A name given to what came just before or to the nodes told: "(shell made)", "(cluster: …)", special stitches."""

    name: str
    nodes: tuple[Node, ...] = ()
    span: Span = NOWHERE


@record
class Unknown:
    """Words that could not be read, kept as they stand."""

    text: str
    words: int = 1
    span: Span = NOWHERE


Node = (
    Make | Chain | Group | Skip | Repeat | Either | Evenly | EveryKth | AtEnds | EdgeRun | PatternRun | InTurn | Spread | Divided | Filet | Join | Ring | Mark | Define | Unknown
)


@record
class Count:
    """One printed count: "(24 dc and 12 ch-2 sps)" holds two. `noun` is a kind or group name, None when bare or "sts".

    `length`: chains of the chain spaces that are counted, None where it is not told.
    """

    n: Num
    noun: str | None = None
    scope: Literal["row", "each", "side", "more"] = "row"
    span: Span = NOWHERE
    length: int | None = None


@record
class Label:
    """ "Rnd 3", "Rows 4-7", "2nd and 3rd rows", "Next row", "Rows 24 (26, 28)".

    `first` and `last` are numbers of rows (per size when sizes differ); both None for an unnumbered label ("Next row"),
    then `how_many` tells how many rows ("Next 5 rows"). `also`: further numbers, not next to one another ("Rows 2, 4 and 6").
    `alternate`: every second row from the first on, as the rows between come ("Row 2 and all WS rows"); without a number, the "even" or
    the "odd" ones ("Even rows").
    """

    kind: Literal["row", "rnd", "none"]
    first: Num | None = None
    last: Num | None = None
    how_many: Num = ONE
    text: str = ""
    also: tuple[int, ...] = ()
    span: Span = NOWHERE
    alternate: Literal["", "same", "even", "odd"] = ""


@record
class Spacing:
    """ "every 4th row 3 times". `times`: None where another number tells where it ends."""

    every: Num
    times: Num | None = None
    span: Span = NOWHERE


@record
class Swap:
    """ "7 dc instead of 5 dc in each shell": of `kind` so many instead of `old` (any, where 0), `within` what has a name.

    Of "times": how often a bracket; "any": whatever stitch, or a bracket; "side": so many groups on each side; "anywhere": `within` and `other`, each over the other. "Sc instead of dc": `other` for `kind`.
    """

    kind: str
    old: int
    new: int
    within: str = ""
    other: str = ""


@record
class RowOrder:
    """What a row is when it is told by other rows.

    `what`: "repeat" (rows `rows`, `times` or `until`), "even" (work even `times` rows), "same-as" (one earlier row, by
    number or label; `section` when of another piece), "continue" (as established, `delta` sts more/fewer each row, or in the `alternate` ones), "correspond" (other side, reversing shaping).
    `rows`: numbers of the rows told, in order ("Rows 2 and 3" = (2, 3)); empty with `last_n` ("last 2 rows").
    `more`: the times are counted in addition to those worked. `total_rows`: "until 20 rows are worked". `until_sts`: "until 54 sts"; `until_text`: a measure ("until piece measures 6 in"), not countable alone.
    "shape": a shaping row (the row's own body, else `rows`, `last_n`, or the last one that did as `delta_kind` says: "inc", "dec") among
    rows worked even: by `spaced`, after a first one at once where `at_once`; or `times` evenly over `total_rows`.
    What is altered in the rows: `grow` ("having one more group on each side", -1 for "one loop less", until `until_sts` loops), `swap`;
    `untold`: something that the words leave to the maker. `between`: "until there are 13 sts between the increases".
    """

    what: Literal["repeat", "even", "same-as", "continue", "correspond", "shape"]
    rows: tuple[int, ...] = ()
    last_n: int | None = None
    times: Num | None = None
    more: bool = False
    alternate: Literal["", "other", "even", "odd"] = ""
    section: str | None = None
    delta: Num | None = None
    delta_kind: str | None = None
    until_sts: Num | None = None
    until_text: str = ""
    total_rows: Num | None = None
    kind: str | None = None
    spaced: tuple[Spacing, ...] = ()
    at_once: bool = False
    grow: int = 0
    swap: Swap | None = None
    untold: bool = False
    between: Num | None = None
    span: Span = NOWHERE


class Later:
    """A row that says the same as another one, so many characters further on: its words are put in their place when they are asked for."""

    __slots__ = ("_later",)
    _later: tuple[Row, int]

    def __getattr__(self, name: str) -> Any:
        if name not in ROW_WORDS:
            raise AttributeError(name)
        from loopwright.model.moved import moved

        row, by = self._later
        for word in ROW_WORDS:
            setattr(self, word, moved(getattr(row, word), by))
        return getattr(self, name)


ROW_WORDS = ("body", "printed", "order", "also_printed")
"""What of a row are words with a place in the text, beside its label."""


@record
class Row(Later):
    """One labelled (or implied) row or round, or a range of them, as written.

    `order` is set when the row is told by other rows ("Rows 5-8: rep Rows 3 and 4"); `body` may then hold additions.
    `printed` holds the counts stated for the row's end. `sizes`: indexes of the sizes it is for, None = all.
    `doubt`: unknown words in it. `also_printed`: counts read in the middle of the row.
    """

    label: Label | None
    body: tuple[Node, ...]
    printed: tuple[Count, ...] = ()
    order: RowOrder | None = None
    side: Literal["RS", "WS"] | None = None
    sizes: tuple[int, ...] | None = None
    doubt: int = 0
    also_printed: tuple[Count, ...] = ()
    span: Span = NOWHERE


@record
class Section:
    """A heading line of a part: "Crown", "SLEEVES", "First motif (make 4)"."""

    title: str
    copies: int = 1
    span: Span = NOWHERE


@record
class Prose:
    """Lines that are no row: kept as written."""

    text: str
    span: Span = NOWHERE


@record
class HeadLine:
    """ "Name: value" of the heading. `name` is lower case, as written otherwise."""

    name: str
    value: str
    span: Span = NOWHERE
    value_span: Span = NOWHERE


@record
class FitLine:
    """ "{crown rounds}: rnds until crown measures …": a blank and its sentence, as written (grading reads the sentence)."""

    blank: str
    sentence: str
    span: Span = NOWHERE
    sentence_span: Span = NOWHERE


@record
class SpecialStitch:
    """ "bean st = …" of the special stitches or abbreviations: name, its abbreviation if any, what it is made of.

    `told`: nodes of a definition that is not told in stitches that go into one place; no worker follows them.
    """

    name: str
    nodes: tuple[Node, ...]
    text: str
    abbreviation: str | None = None
    span: Span = NOWHERE
    told: tuple[Node, ...] = ()


Item = Row | Section | Prose | HeadLine | FitLine | SpecialStitch


@record
class Document:
    """A whole pattern as written. `items` in order; `sizes` names ("one size" when single); `terms` us/uk/old.

    `language`: code of the language it is written in. Of another language than English `text` and all spans are those of the reader's
    English, line for line; `translated` has the original and the way back to it. In `text` the ends of lines that go on in the next are
    spaces; `written` is the text with them, "" where it is the same.
    """

    text: str
    name: str
    items: tuple[Item, ...]
    title: str | None
    sizes: tuple[str, ...]
    terms: Literal["us", "uk", "old"]
    in_rounds: bool | None = None
    findings: tuple[object, ...] = field(default=(), compare=False)
    assumptions: tuple[tuple[Span, str], ...] = ()
    specials: tuple[SpecialStitch, ...] = ()
    language: str = "en"
    translated: Translated | None = field(default=None, compare=False)
    written: str = field(default="", compare=False)
