"""Motifs joined: how they are laid out, in the order of making, with their joins and the border around them."""

from __future__ import annotations

from collections.abc import Iterator

from loopwright.drawing import svg
from loopwright.drawing.chart.drawn import ChartDrawing, ChartOptions, Point
from loopwright.drawing.chart.grid_style import SCOPE, TEXT_PX, TITLE_PX, style
from loopwright.drawing.chart.ink import number
from loopwright.drawing.chart.numbering import row_label
from loopwright.drawing.lettering import plain, wrapped
from loopwright.drawing.speech import Speech
from loopwright.model.fabric import Fabric
from loopwright.record import record

MARGIN, LINE = 24.0, 22.0
SIDE, AIR = 40.0, 4.0  # of a motif; around it
BORDER = 7.0  # a round of the border
TIE = 2.5  # how far a join reaches into either motif
MOST_ROUNDS = 6
NARROWEST = 330.0
MOST_TIES = 7
MOST_SIDE = 30  # motifs drawn along a side


@record
class Joined:
    """Motifs of a fabric that are laid out in a rectangle.

    `first`, `others`: names of their sections. `at`: first stitch of each. `ties`: places where a side is joined, 0 where the words
    do not tell of joins. `joined_in`: label of the round that joins. `border`: rows of the fabric around them.
    """

    across: int
    down: int
    first: str
    others: str
    at: tuple[int, int]
    ties: int
    joined_in: str
    border: tuple[int, ...]

    @property
    def shown(self) -> tuple[int, int]:
        """How many across and down are drawn."""
        return min(self.across, MOST_SIDE), min(self.down, MOST_SIDE)


def joined(fabric: Fabric) -> Joined | None:
    """The motifs of a fabric, and the border around them; None where none are laid out."""
    if fabric.layout is None:
        return None
    edge = next((i for i, r in enumerate(fabric.rows) if i and r.end > r.start and fabric.part_of(r.start) == "assumed"), 0)
    if not edge:
        return None
    last = fabric.rows[edge - 1]
    own = [r for r in fabric.rows[:edge] if r.piece == last.piece]
    ties = [s for s in range(last.start, last.end) if any(fabric.rows[fabric.row[p]].piece != last.piece for p in fabric.parents(s))]
    other = fabric.rows[fabric.row[fabric.parents(ties[0])[0]]].piece if ties else last.piece
    first = next(r for r in fabric.rows if r.piece == other)
    border = tuple(i for i, r in enumerate(fabric.rows) if i > edge and r.piece == fabric.rows[edge].piece)
    names = (first.section or "Motif", last.section or "Motif")
    return Joined(*fabric.layout, *names, (first.start, own[0].start), len(ties), last.label if ties else "", border)


def assembly(fabric: Fabric, options: ChartOptions) -> ChartDrawing | None:
    """The drawing of how motifs are joined; None for a fabric without."""
    found = joined(fabric)
    if found is None:
        return None
    notes, told = _notes(fabric, found, options.words), _told(fabric, found, options)
    description = "\n".join(plain(line) for line in (*told, *notes))
    picture, rows = _page(fabric, found, options, notes, description), (0, len(fabric.rows) - 1)
    return ChartDrawing(picture, description, "assembly", "Joining", rows, tuple(notes))


def _plain_name(name: str) -> str:
    """A section's name without how many are made."""
    return name.split("(", 1)[0].strip() or name


def _notes(fabric: Fabric, j: Joined, speech: Speech) -> list[str]:
    many = j.across * j.down
    found = [speech.say("motifs-many", across=j.across, down=j.down, n=many)]
    if j.shown != (j.across, j.down):
        found.append(speech.say("motifs-shown", across=j.shown[0], down=j.shown[1]))
    if j.ties:
        first = speech.name(_plain_name(j.first).lower()) if j.first else speech.say("motif").lower()
        found.append(speech.say("motifs-tied", first=first, n=many, row=speech.row(j.joined_in)))
        found.append(speech.say("motifs-any-order"))
    else:
        found.append(speech.say("motifs-meet"))
    if j.border:
        section = fabric.rows[j.border[0]].section
        name = speech.name(_plain_name(section).lower()) if section else speech.say("border")
        found.append(speech.say("motifs-border", name=name, n=len(j.border)))
    return found


def _told(fabric: Fabric, j: Joined, options: ChartOptions) -> list[str]:
    speech = options.words
    found = [speech.say("motifs-read-left" if options.left_handed else "motifs-read-right", n=j.across)]
    for row in range(j.shown[1]):
        first, last = row * j.across + 1, (row + 1) * j.across
        found.append(speech.say("motifs-row" if last > first else "motifs-row-one", row=row + 1, first=first, last=last))
    if j.ties:
        found += [speech.say("motifs-ties", n=j.ties), speech.say("motifs-order")]
    return found + [speech.say("motifs-around", row=speech.row(row_label(fabric, i))) for i in j.border]


def _page(fabric: Fabric, j: Joined, options: ChartOptions, notes: list[str], description: str) -> str:
    room = BORDER * min(len(j.border), MOST_ROUNDS)
    wide = max(NARROWEST, j.shown[0] * SIDE + 2 * (room + MARGIN))
    left, top = (wide - j.shown[0] * SIDE) / 2, 56.0 + room
    titled = options.words.say("motifs-joined")
    name = wrapped(titled, TITLE_PX, wide - 2 * MARGIN, heavy=True)
    top += 22.0 * (len(name) - 1)
    parts = [svg.text("title", (MARGIN, 30 + 22.0 * n), line) for n, line in enumerate(name)]
    parts += _border(fabric, j, options, (left, top))
    for row in range(j.shown[1]):
        for column in range(j.shown[0]):
            parts += _motif(j, options, (row, column), (left, top))
    parts.append(f'<path class="tie" d="{"".join(_ties(j, (left, top)))}"/>')
    under = top + j.shown[1] * SIDE + room + 28.0
    lines = [line for text in notes for line in wrapped(plain(text), TEXT_PX, wide - 2 * MARGIN)]
    parts += [svg.text("said", (MARGIN, under + LINE * n), line) for n, line in enumerate(lines)]
    size = wide, under + LINE * len(lines) + 8
    inside = ["\n".join(["", f"<style>{style()}</style>", svg.rect("sheet", (0, 0), size), *parts, ""])]
    return svg.document(f"{options.ident}-joined", SCOPE, size, (titled, description), inside, shown_px=options.width)


def _motif(j: Joined, options: ChartOptions, place: tuple[int, int], corner: Point) -> Iterator[str]:
    row, column = place
    many = row * j.across + column + 1
    x = corner[0] + (j.shown[0] - 1 - column if options.left_handed else column) * SIDE + AIR / 2
    y = corner[1] + row * SIDE + AIR / 2
    stitch = j.at[many > 1]
    line = f' data-line="{options.line(stitch)}"' if options.line else ""
    kind = "tab" if many == 1 else "motif"
    yield f'{_rect(kind, (x, y), (SIDE - AIR, SIDE - AIR))} data-motif="{many}" data-stitch="{stitch}"{line}/>'
    yield svg.text("num mid" if many == 1 else "mid", (x + (SIDE - AIR) / 2, y + (SIDE - AIR) / 2 + 5.2), str(many))


def _ties(j: Joined, corner: Point) -> Iterator[str]:
    """Short lines over the edges where two motifs meet, one for every place that is joined."""
    ties = min(j.ties, MOST_TIES) or 1
    reach = AIR / 2 + TIE
    shares = [(k + 0.5) / ties for k in range(ties)]
    for row in range(j.shown[1]):
        for column in range(j.shown[0]):
            x, y = corner[0] + column * SIDE, corner[1] + row * SIDE
            for share in shares:
                along = AIR + (SIDE - 2 * AIR) * share
                if column:
                    yield f"M{number(x - reach)} {number(y + along)}h{number(2 * reach)}"
                if row:
                    yield f"M{number(x + along)} {number(y - reach)}v{number(2 * reach)}"


def _border(fabric: Fabric, j: Joined, options: ChartOptions, corner: Point) -> Iterator[str]:
    for k, index in enumerate(j.border[:MOST_ROUNDS], 1):
        away = BORDER * k - 1
        start = fabric.rows[index].start
        line = f' data-line="{options.line(start)}"' if options.line else ""
        wide, high = j.shown[0] * SIDE + 2 * away, j.shown[1] * SIDE + 2 * away
        yield f'{_rect("rim", (corner[0] - away, corner[1] - away), (wide, high))} data-stitch="{start}"{line}/>'


def _rect(name: str, at: Point, size: Point) -> str:
    return f'<rect class="{name}" x="{number(at[0])}" y="{number(at[1])}" width="{number(size[0])}" height="{number(size[1])}"'
