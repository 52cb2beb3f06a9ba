"""From fabrics to sheets: measurements of all sizes, figures of one, a table of them all."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from loopwright.drawing import svg
from loopwright.drawing.copies import in_words, told_of
from loopwright.drawing.lettering import plain, wrapped
from loopwright.drawing.schematic import drawing
from loopwright.drawing.schematic.book import Book, book_of
from loopwright.drawing.schematic.drawn import NARROWEST_MM, WIDEST_MM, SchematicDrawing, SchematicOptions
from loopwright.drawing.schematic.figure import Figure, Span
from loopwright.drawing.schematic.look import LINE_PX, TEXT_PX, style
from loopwright.drawing.schematic.making import made_up
from loopwright.drawing.schematic.pieces import figures_of
from loopwright.drawing.schematic.placed import PX_PER_MM, Sheet, lanes, sheet
from loopwright.drawing.schematic.table import Row, natural_px, rows_of, table
from loopwright.drawing.schematic.words import in_brackets, length
from loopwright.grading.gauge import StitchSizes
from loopwright.measuring.courses import courses
from loopwright.measuring.dimensions import dimensions
from loopwright.measuring.parts import parts
from loopwright.model.fabric import Fabric
from loopwright.model.measures import Dimension

SCOPE = "lw-schematic"
MOST_FIGURES = 6  # on one sheet
_MARGIN_PX = 10.0
_BESIDE_FROM_PX = 560.0
_AS_LARGE = 0.7  # a drawing with its table beside it is no smaller than this share of one with its table below
_BARS_MM = (500.0, 200.0, 100.0, 50.0, 20.0, 10.0, 5.0)


def schematics(
    fabrics: Sequence[Fabric | None], sizes: StitchSizes, names: Sequence[str], options: SchematicOptions | None = None,
    measured: Sequence[Sequence[Dimension]] | None = None,
) -> tuple[SchematicDrawing, ...]:
    """The sheets of a pattern, each with up to six figures, and one that shows how the pieces go together.

    None where nothing was worked or no row has a length.

    `fabrics`: one per size, None for a size that could not be worked; `sizes`: of the stitches; `names`: of the sizes. All lengths come
    from `measuring.dimensions`; `measured`: what it found for each size, where that is known already.

    Raises ValueError for a width or a size that there is not.
    """
    asked = options or SchematicOptions()
    if not NARROWEST_MM <= asked.width_mm <= WIDEST_MM:
        raise ValueError(f"a schematic is {NARROWEST_MM:g} to {WIDEST_MM:g} mm wide, not {asked.width_mm:g}")
    drawn = _drawn(fabrics, asked)
    fabric = fabrics[drawn] if drawn is not None else None
    if drawn is None or fabric is None:
        return ()
    rows = courses(fabric, sizes)
    book = book_of(measured or [() if f is None else dimensions(f, sizes) for f in fabrics], drawn)
    found = figures_of(fabric, rows, parts(fabric, rows), book)
    if not found.figures:
        return ()
    drawn_as = [f.mirrored() for f in found.figures] if asked.left_handed else found.figures
    figures = [_made_more(f, asked) for f in drawn_as]
    groups = [figures[i : i + MOST_FIGURES] for i in range(0, len(figures), MOST_FIGURES)]
    sheets = []
    for i, group in enumerate(groups):
        told = found.told if i == len(groups) - 1 else []
        sheets.append(_Sheet(book, names, drawn, asked, group, told, i if len(groups) > 1 else None).draw())
    together = _together(drawn_as, asked, names[drawn])
    return (*sheets, together) if together is not None else tuple(sheets)


def _together(figures: Sequence[Figure], asked: SchematicOptions, size: str) -> SchematicDrawing | None:
    """The sheet that shows how the pieces go together; None where the pattern says nothing of that."""
    wide = asked.width_mm * PX_PER_MM - 2 * _MARGIN_PX
    made = made_up(figures, [told_of(asked.copies, f.name) for f in figures], asked.making_up, wide, asked.said)
    if made is None:
        return None
    title = asked.said.say("together-of" if asked.title else "together", title=plain(asked.title))
    told = f"{made.says}{' ' + plain(asked.said.own(asked.making_up)) if asked.making_up else ''}"
    whole = wide + 2 * _MARGIN_PX, made.high_px + 2 * _MARGIN_PX
    moved = svg.group(made.inside, f' transform="translate({_MARGIN_PX:g} {_MARGIN_PX:g})"')
    inside = [f"<style>{style(SCOPE)}</style>", svg.rect("paper", (0, 0), whole), moved]
    text = svg.document(f"{asked.ident}-together", SCOPE, whole, (title, told), inside)
    sections = tuple(dict.fromkeys(f.name for f in figures if f.name))
    return SchematicDrawing(text, title, told, sections, size)


def _made_more(figure: Figure, asked: SchematicOptions) -> Figure:
    """A figure that is made more than once says so, beside its name too where that does not."""
    told = told_of(asked.copies, figure.name)
    if not told:
        return figure
    name = figure.name if "(" in figure.name else f"{figure.name} ({told.split(',')[0]})"
    return replace(figure, name=name, copies=told)


def _drawn(fabrics: Sequence[Fabric | None], asked: SchematicOptions) -> int | None:
    """Number of the size whose outline is drawn."""
    for wanted in (asked.only, asked.drawn):
        if wanted is not None:
            if not 0 <= wanted < len(fabrics):
                raise ValueError(f"there is no size number {wanted}: there are {len(fabrics)}")
            return wanted if fabrics[wanted] is not None else None
    worked = [i for i, f in enumerate(fabrics) if f is not None]
    return worked[len(worked) // 2] if worked else None


@dataclass(slots=True)
class _Sheet:
    """One sheet being made."""

    book: Book
    names: Sequence[str]
    drawn: int
    asked: SchematicOptions
    figures: list[Figure]
    told: list[int]
    number: int | None

    def draw(self) -> SchematicDrawing:
        """The file and its words."""
        before = set(self.book.letters.values())
        labelled = [(f, lanes(f, [self._label(s) for s in f.spans])) for f in self.figures]
        rows = [r for r in rows_of(self.book, self.told, self.asked) if not r.letter or r.letter not in before]
        wide = self.asked.width_mm * PX_PER_MM - 2 * _MARGIN_PX
        captions = len(self.figures) > 1
        most = (0.7 if wide >= _BESIDE_FROM_PX else 1.3) * wide
        room, laid = wide, sheet(labelled, wide, most, captions=captions)
        beside = wide >= _BESIDE_FROM_PX and natural_px(rows) <= 0.55 * wide
        if beside:
            tight = wide - natural_px(rows) - 2 * _MARGIN_PX
            narrow = sheet(labelled, tight, most, captions=captions)
            beside = narrow.scale > _AS_LARGE * laid.scale
            room, laid = (tight, narrow) if beside else (room, laid)
        inside, high = self._page(laid, rows, wide, room, beside=beside)
        title, description = self._title(), self._description(rows)
        ident = self.asked.ident + ("" if self.number is None else f"-{self.number + 1}")
        size = wide + 2 * _MARGIN_PX, high + 2 * _MARGIN_PX
        paper = svg.rect("paper", (0, 0), size)
        moved = svg.group(inside, f' transform="translate({_MARGIN_PX:g} {_MARGIN_PX:g})"')
        text = svg.document(ident, SCOPE, size, (title, description), [f"<style>{style(SCOPE)}</style>", paper, moved])
        sections = tuple(dict.fromkeys(self._section(f) for f in self.figures if f.name))
        return SchematicDrawing(text, title, description, sections, self.names[self.drawn])

    def _label(self, span: Span) -> str:
        share, entry = span.share, span.entry
        letter = self.book.letter(entry)
        half = "½ " if share != 1.0 else ""
        if self.asked.only is None or span.side == "within":
            return half + letter
        return f"{half}{letter} {length(share * self.book.value_mm(entry), self.asked.units, self.asked.said)}"

    def _page(self, laid: Sheet, rows: list[Row], wide: float, room: float, *, beside: bool) -> tuple[list[str], float]:
        inside: list[str] = []
        captions = len(self.figures) > 1
        pushed = max(0.0, (room - laid.wide_px) / 2)
        figures = [drawing.figure(p, self.book, self.asked.said, captions=captions) for p in laid.placed]
        inside.append(svg.group(figures, f' transform="translate({svg.number(pushed)} 0)"'))
        left, top = (room + 2 * _MARGIN_PX, 0.0) if beside else (0.0, laid.high_px + 20)
        head, head_px = self._sizes(left, top, wide - left)
        lines, table_px = table(rows, left, top + head_px, wide - left)
        y = max(laid.high_px, top + head_px + table_px) + 8
        notes, notes_px = self._notes(laid, wide, y)
        return [*inside, *head, *lines, *notes], y + notes_px

    def _sizes(self, left: float, top: float, room: float) -> tuple[list[str], float]:
        """Which sizes the values stand for."""
        if len(self.names) < 2:
            return [], 0.0
        names, say = [plain(self.asked.said.name(n)) for n in self.names], self.asked.said.say
        words = say("size", size=names[self.drawn]) if self.asked.only is not None else say("sizes", sizes=in_brackets(names))
        lines = wrapped(words, TEXT_PX, room)
        inside = [svg.text("soft", (left, top + TEXT_PX + i * LINE_PX), line) for i, line in enumerate(lines)]
        return inside, len(lines) * LINE_PX + 4

    def _notes(self, laid: Sheet, wide: float, top: float) -> tuple[list[str], float]:
        """What the signs mean, and a bar to measure the drawing by."""
        used = {s.line for f in self.figures for s in f.strokes}
        say = self.asked.said.say
        signs = (("work", "arrow"), ("fold", "dashed"), ("join", "dotted"))
        words = [say(key) for line, key in signs if line in used]
        words += [say("half")] if any(s.share != 1 for f in self.figures for s in f.spans) else []
        if self.asked.only is None and len(self.names) > 1:
            words.append(say("drawn-in-size", size=self._size()))
        words += [say("mirrored")] if self.asked.left_handed else []
        bar = next((b for b in _BARS_MM if b * laid.scale <= 0.3 * wide), _BARS_MM[-1])
        long = bar * laid.scale
        inside = [svg.path("span", [(0, top + 4), (0, top + 12), (long, top + 12), (long, top + 4)], more=svg.data(bar_mm=bar))]
        inside.append(svg.text("soft", (long + 8, top + 14), length(bar, "cm", self.asked.said)))
        lines = wrapped(" ".join(words), TEXT_PX, wide)
        inside += [svg.text("soft", (0, top + 34 + i * LINE_PX), line) for i, line in enumerate(lines)]
        return inside, 34 + len(lines) * LINE_PX - LINE_PX + 4

    def _section(self, figure: Figure) -> str:
        """A figure's section: its name without how many are made."""
        return next((s for s, told in self.asked.copies if s and figure.name == f"{s} ({told.split(',')[0]})"), figure.name)

    def _title(self) -> str:
        title = plain(self.asked.title)
        say = self.asked.said.say
        told = say("schematic-of", title=title) if title else say("schematic")
        return told if self.number is None else say("sheet", title=told, n=self.number + 1)

    def _size(self) -> str:
        return plain(self.asked.said.name(self.names[self.drawn]))

    def _description(self, rows: Sequence[Row]) -> str:
        """For who cannot see it: every figure, how it is made, and every measurement."""
        speech, say, said = self.asked.said, self.asked.said.say, []
        for f in self.figures:
            letters = ", ".join(dict.fromkeys(self.book.letter(s.entry) for s in f.spans))
            how = say(f"made-{f.how}")
            how = say("figure-copied", how=how, copies=in_words(f.copies, speech)) if f.copies else how
            name = plain(speech.name(f.name)) or say("the-piece")
            said.append(say("figure-measured" if letters else "figure-told", name=name, how=how, letters=letters))
        measures = [say("measure-told", name=f"{r.letter + ', ' if r.letter else ''}{r.name}", values="; ".join(r.lines)) for r in rows]
        sizes = say("to-scale-in-size", size=self._size()) if len(self.names) > 1 else say("to-scale")
        hand = [say("mirrored")] if self.asked.left_handed else []
        return " ".join([sizes, *hand, *said, *measures])
