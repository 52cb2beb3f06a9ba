"""Two versions of a design, compared stitch by stitch: rows are aligned by what they make and say, never by lines of text."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from dataclasses import replace
from functools import cached_property

from loopwright.measuring.yarn import copies_of
from loopwright.model.tree import Item, Row, Section
from loopwright.publishing.changes.align import Aligned, align
from loopwright.publishing.changes.causes import Causes, follows
from loopwright.publishing.changes.content import rows_by_item
from loopwright.publishing.changes.entries import Entry, Part, parts_of, plain
from loopwright.publishing.changes.heads import head_changes
from loopwright.publishing.changes.measured import fits_otherwise, lengths_changed, yarn_changed
from loopwright.publishing.changes.model import SEVERITIES, Change, Changes, Diff, Severity, Told, Worked
from loopwright.publishing.changes.phrases import span_of
from loopwright.publishing.changes.rows import Looking, row_diffs
from loopwright.publishing.changes.sizes import pair_sizes
from loopwright.publishing.changes.version import rises
from loopwright.source import Span
from loopwright.terms import dialect
from loopwright.wording.as_written import translate
from loopwright.wording.said import RowWords
from loopwright.wording.write import instructions, voice_for

NOT_WORKED = "nothing that it makes could be worked out; it was compared by its words"
OTHER_NUMBER = "with another number, though the stitches come out the same"
_DIGITS = re.compile(r"\d+")
_BLANK = re.compile(r"\{[^{}\n]+\}")


def compare(old: Worked, new: Worked) -> Changes:
    """Everything that changed from one version to the next. Never raises; what cannot be compared is told in the notes."""
    return _Comparison(old, new).changes()


class _Comparison:
    def __init__(self, old: Worked, new: Worked) -> None:
        self.old, self.new = old, new
        self.pairing = pair_sizes(old, new)
        self.names = tuple(new.sizes[j] for _, j in self.pairing.pairs)
        self.say = dialect(new.document.terms).term
        rows_old, rows_new = ([rows_by_item(w.report.fabrics[p[side]] if w.report and p[side] < len(w.report.fabrics) else None)
                               for p in self.pairing.pairs] for side, w in ((0, old), (1, new)))
        self.aligned: Aligned = align(parts_of(old.document, rows_old), parts_of(new.document, rows_new))

    def changes(self) -> Changes:
        old, new, pairing = self.old, self.new, self.pairing
        sections = {a.title: b.title for a, b in self.aligned.parts if a is not None and b is not None}
        lengths, yarn = lengths_changed(old, new, pairing, sections), yarn_changed(old, new, pairing)
        heads = head_changes(old, new, self._in_terms)
        causes = self._causes(heads.names)
        head = [
            replace(c, severity=_graver(c.severity, "count"), follows=follows(causes.named[i], self.names)) if i in causes.named else c
            for i, c in enumerate(heads.changes)
        ]
        rows = self._renumbered([self._change(t, lengths) for t in causes.in_order()])
        loose = self._loose(causes, head)
        found = [*self._sizes(), *head, *self._sections(), *rows, *loose, *self._wording(causes)]
        ordered = sorted((self._placed(c) for c in found), key=lambda c: SEVERITIES.index(c.severity))
        notes = (*pairing.notes, *heads.notes, *self._unreadable())
        return Changes(
            new.document.title, old.document.title, old.version, new.version, (old.document.terms, new.document.terms), self.names,
            new.sizes, pairing, tuple(ordered), lengths, yarn, notes, self._warnings(bool(ordered)), old.document.text == new.document.text,
            old.errors, new.errors,
        )

    def _placed(self, c: Change) -> Change:
        """With the places in the texts."""
        old, new = self.old.document.items, self.new.document.items
        return replace(
            c, old_at=old[c.old_item].span.start if c.old_item is not None else None,
            new_at=new[c.new_item].span.start if c.new_item is not None else None,
        )

    # --- rows ----------------------------------------------------------------------------------------------------

    def _causes(self, names: Mapping[int, tuple[str, ...]]) -> Causes:
        entries = self.aligned.entries
        looking = Looking(self.pairing, lambda kind: self.say(kind).short, *(_unread(w) for w in (self.old, self.new)))
        moved = frozenset(b.index for _, b in self.aligned.moved)
        diffs = row_diffs(entries, moved, looking)
        causes = Causes()

        def heading_of(d: Diff) -> int | None:
            words = _words(entries[d.order]).casefold()
            return next((i for i, used in names.items() if any(re.search(rf"\b{re.escape(n)}", words) for n in used)), None)

        for pair in range(len(self.pairing.pairs)):
            causes.take((d for d in diffs if d.pair == pair), heading_of)
        return causes

    def _change(self, told: Told, lengths: Sequence[object]) -> Change:
        """One change of a row, gathered over the sizes."""
        d = told.head
        a, b = self.aligned.entries[d.order]
        each = [told.by_pair[p] for p in told.pairs]
        sizes = tuple(self.names[p] for p in told.pairs)
        label = d.label or self._label(a, b, told.pairs, last=d.what == "printed")
        change = Change(
            d.what, "count", d.section, label, sizes, tuple(e.was for e in each), tuple(e.now for e in each), d.noun, d.detail,
            self._text(self._old_texts, a), self._text(self._new_texts, b), "", follows(told.follows, self.names), d.old, d.new,
        )
        return replace(change, severity=self._severity(change, lengths), begun=self._begun(a, b, told) if d.what == "rows" else label)

    def _label(self, a: Entry | None, b: Entry | None, pairs: Sequence[int], *, last: bool = False) -> str:
        """What rows are called, in the version that has them: "Rnds 4-8", or "Rnds 4-8 (9, 9)" where sizes end apart; or the last alone."""
        for entry in (e for e in (b, a) if e is not None):
            rows = [entry.rows[p] for p in pairs if entry.rows[p]]
            if rows:
                if entry.section and entry.more and None in (a, b):
                    return ""  # the whole section
                return span_of([r[-1 if last else 0].label for r in rows], [r[-1].label for r in rows])
        return next((e.label for e in (b, a) if e is not None and e.label and "{" not in e.label), "")

    @staticmethod
    def _begun(a: Entry | None, b: Entry | None, told: Told) -> str:
        """The first row that is too many or too few; "" where it is another one in other sizes."""
        if a is None or b is None:
            return ""
        longer = [(max(a.rows[p], b.rows[p], key=len), min(len(a.rows[p]), len(b.rows[p]))) for p in told.pairs]
        labels = [rows[at].label for rows, at in longer if at < len(rows)]
        return labels[0] if len(set(labels)) == 1 else ""

    def _severity(self, change: Change, lengths: Sequence[object]) -> Severity:
        if self._endangers(change):
            return "safety"
        if change.what in ("printed", "moved", "places", "workable"):
            return "count"
        return "size" if fits_otherwise(lengths, change.section, change.sizes) else "count"  # type: ignore[arg-type]

    def _endangers(self, change: Change) -> bool:
        """Whether a length that the row makes is, or was, beyond what a caution allows."""
        for worked, index in ((self.old, change.old_item), (self.new, change.new_item)):
            item = worked.document.items[index] if index is not None else None
            for figure in (f for c in worked.cautions for f in c.figures if f.over):
                if item is not None and (item.span.start <= figure.span.start < item.span.end or _same_blank(worked, item, figure.span)):
                    return True
        return False

    def _loose(self, causes: Causes, head: list[Change]) -> list[Change]:
        """What follows from no row: from a line of the heading that says how stitches count, else it is told for itself."""
        if not causes.open:
            return []
        by = next((i for i, c in enumerate(head) if c.heading in ("turning chain", "special stitches", "gauge", "terms", "notes")), None)
        told = follows(causes.open, self.names)
        if by is not None:
            head[by] = replace(head[by], severity=_graver(head[by].severity, "count"), follows=(*head[by].follows, *told))
            return []
        return [Change(f.what, "count", f.section, f.label, f.sizes, f.was, f.now, f.noun, "the words are as they were") for f in told]

    def _renumbered(self, rows: list[Change]) -> list[Change]:
        """Rows that bear another number only are told once, with the rows before them that were put in or taken out."""
        shifted = [
            (a, b) for a, b in self.aligned.entries
            if a is not None and b is not None and a.is_row and b.is_row and a.label != b.label and a.bare == b.bare
            and not any(c.new_item == b.index for c in rows)
        ]
        if not shifted:
            return rows
        because = any(c.what in ("added", "removed", "rows", "moved") for c in rows)
        first, last = shifted[0], shifted[-1]
        said = [x.label if x is y else f"{x.label} … {y.label}" for x, y in ((first[0], last[0]), (first[1], last[1]))]
        return [*rows, Change(
            "renumbered", "wording", first[1].section, first[1].label, (), (said[0],), (said[1],), "",
            "follows" if because else "", old_item=first[0].index, new_item=first[1].index,
        )]

    # --- words ---------------------------------------------------------------------------------------------------

    def _wording(self, causes: Causes) -> list[Change]:
        """Rows and notes that read otherwise and make what they made."""
        told = {(t.head.old, t.head.new) for t in causes.told.values()}
        every = [d for t in causes.told.values() for d in t.follows] + [d for ds in causes.named.values() for d in ds] + causes.open
        followed = {(d.old, d.new) for d in every}
        found = []
        for a, b in self.aligned.entries:
            key = (a.index if a else None, b.index if b else None)
            if key in told or a is not None and b is not None and (a.words == b.words or a.bare == b.bare):
                continue
            if key in followed and a is not None and b is not None and _DIGITS.sub("#", a.bare) == _DIGITS.sub("#", b.bare):
                continue  # its counts follow, and nothing else in it changed
            change = self._words_of(a, b)
            if change is not None:
                found.append(change)
        return found

    def _words_of(self, a: Entry | None, b: Entry | None) -> Change | None:
        one = b or a
        if one is None or (a is None or b is None) and one.is_row and any(one.counts):
            return None  # told as a row that was put in or taken out
        was, now = self._text(self._old_texts, a), self._text(self._new_texts, b)
        bare = [plain(self._text(t, e, count=False)) for t, e in ((self._old_texts, a), (self._new_texts, b))]
        if bare[0] == bare[1]:
            if self.old.document.terms != self.new.document.terms:
                return None  # the same in other terms
            was, now = a.words if a else "", b.words if b else ""
            bare = [e.bare if e is not None else "" for e in (a, b)]
        unread = one.is_row and not any(any(c) for e in (a, b) if e is not None for c in e.counts)
        numbers = bare[0] != bare[1] and _DIGITS.sub("#", bare[0]) == _DIGITS.sub("#", bare[1])
        detail = NOT_WORKED if unread and self.pairing.pairs else OTHER_NUMBER if numbers and one.is_row else ""
        severity: Severity = "count" if detail and _DIGITS.findall(bare[0]) != _DIGITS.findall(bare[1]) else "wording"
        return Change(
            "wording", severity, one.section, self._label(a, b, range(len(self.names))), (), old_text=was, new_text=now, detail=detail,
            old_item=a.index if a else None, new_item=b.index if b else None,
        )

    @cached_property
    def _new_texts(self) -> dict[int, tuple[str, str]]:
        return _texts(self.new, self.new.document.terms)

    @cached_property
    def _old_texts(self) -> dict[int, tuple[str, str]]:
        return _texts(self.old, self.new.document.terms)

    @staticmethod
    def _text(texts: Mapping[int, tuple[str, str]], entry: Entry | None, *, count: bool = True) -> str:
        return " ".join(texts[i][not count] for i in sorted(entry.indexes) if i in texts) if entry is not None else ""

    def _in_terms(self, text: str) -> str:
        """An old text in the new version's terms."""
        if self.old.document.terms == self.new.document.terms:
            return text
        return plain(translate(voice_for(self.old.document, self.new.document.terms), text))

    # --- the whole -----------------------------------------------------------------------------------------------

    def _sizes(self) -> list[Change]:
        p = self.pairing
        found = []
        if p.pairs and p.added:
            found.append(Change("sizes", "size", sizes=p.added, detail="added"))
        if p.pairs and p.removed:
            found.append(Change("sizes", "size", sizes=p.removed, detail="removed"))
        if p.renamed and not any("was taken for" in n for n in p.notes):
            was, now = (tuple(names[side] for names in p.renamed) for side in (0, 1))
            found.append(Change("sizes", "wording", sizes=now, was=was, detail="renamed"))
        if not p.pairs:
            each = [(", ".join(w.sizes),) for w in (self.old, self.new)]
            found.append(Change("sizes", "size", was=each[0], now=each[1], detail="none in common"))
        return found

    def _sections(self) -> list[Change]:
        found = []
        for a, b in self.aligned.parts:
            if a is None or b is None or a.item is None or b.item is None:
                continue
            if a.key != b.key and self._in_terms(a.title).casefold() != b.key:
                found.append(Change("renamed", "wording", b.title, was=(a.title,), now=(b.title,), old_item=a.item, new_item=b.item))
            found.extend(self._copies(a, b))
        found.extend(Change("moved", "wording", b.title, old_item=a.item, new_item=b.item) for a, b in self.aligned.moved_parts)
        return found

    def _copies(self, a: Part, b: Part) -> list[Change]:
        """A section that is made more often, or less."""
        each = []
        for pair, (i, j) in enumerate(self.pairing.pairs):
            was, now = (copies_of(w.document, size).get(_title(w, p), 1) for w, size, p in ((self.old, i, a), (self.new, j, b)))
            each += [(self.names[pair], was, now)] if was != now else []
        if not each:
            return []
        sizes, was_each, now_each = zip(*each, strict=True)
        return [Change("copies", "count", b.title, "", sizes, was_each, now_each, old_item=a.item, new_item=b.item)]

    def _unreadable(self) -> list[str]:
        found = []
        for worked, which in ((self.old, "old"), (self.new, "new")):
            labels = [r.label or "a row without a label" for r in (worked.report.rows if worked.report else ()) if not r.read]
            if labels:
                many = f"{labels[0]} and {len(labels) - 1} more" if len(labels) > 2 else " and ".join(labels)
                found.append(f"the {which} version has rows that cannot be read or worked: {many}; loopwright check tells why")
        return found

    def _warnings(self, changed: bool) -> tuple[str, ...]:
        old, new = self.old, self.new
        found = []
        if plain(old.document.title or "").casefold() != plain(new.document.title or "").casefold():
            found.append(f"the titles differ, “{old.document.title or 'none'}” and “{new.document.title or 'none'}”: is it one design?")
        if new.errors:
            many = f"{new.errors} error{'s' * (new.errors > 1)}"
            found.append(f"the new version has {many}: mend what loopwright check tells before you publish these")
        higher = rises(old.version, new.version)
        if higher is False and (changed or plain(old.document.text) != plain(new.document.text)):
            both = ", then ".join(w.version.name for w in (old, new) if w.version is not None)
            found.append(f"the text changed, and its version did not rise ({both}): give it a higher number in the Version line")
        if higher is None and changed and old.version != new.version and old.version is not None:
            found.append("one version has no number to be told by: write a line such as “Version: 1.1 (2026-11-20)” into the heading")
        if higher is None and changed and not (old.version and new.version):
            found.append(
                "there is no Version line: write one such as “Version: 1.1 (2026-11-20)” into the heading, so that makers can tell which "
                "they hold"
            )
        return tuple(found[:3])


def _title(worked: Worked, part: Part) -> str | None:
    item = worked.document.items[part.item] if part.item is not None else None
    return item.title if isinstance(item, Section) else None


def _texts(worked: Worked, terms: str) -> dict[int, tuple[str, str]]:
    """The words of every row and note by its item, as they are published: whole, and without label and count."""
    said = instructions(voice_for(worked.document, terms), worked.document, worked.report)
    return {s.item: (s.text.strip(), s.words.strip() if isinstance(s, RowWords) else s.text.strip()) for s in said}


def _unread(worked: Worked) -> frozenset[int]:
    return frozenset(r.item for r in (worked.report.rows if worked.report else ()) if not r.read)


def _words(pair: tuple[Entry | None, Entry | None]) -> str:
    return " ".join(e.bare for e in pair if e is not None and isinstance(e.item, Row))


def _graver(a: Severity, b: Severity) -> Severity:
    return min(a, b, key=SEVERITIES.index)


def _same_blank(worked: Worked, item: Item, length: Span) -> bool:
    """Whether an item is as long as another whose length stands in the text: by the same blank."""
    text = worked.document.text
    return bool(set(_BLANK.findall(text[length.start : length.end])) & set(_BLANK.findall(text[item.span.start : item.span.end])))
