"""Changes in trade words: errata by section, row and size, for makers who hold the version before."""

from __future__ import annotations

from dataclasses import dataclass, replace

from loopwright.publishing.changes.model import Change, Changes, Severity
from loopwright.publishing.changes.phrases import follows_said, phrases, some_sizes, values
from loopwright.terms import dialect


@dataclass(frozen=True, slots=True)
class Erratum:
    """One change in words. `where`: "Crown, Rnd 7, sizes child and teen"; `what`: "56 hdc, was 54". Each other is a sentence or "".

    `concerned`: whom it concerns; `unconcerned`: the sizes that are as they were; `now`, `was`: the row's words; `follows`: rows that are
    otherwise because of it.
    """

    severity: Severity
    where: str
    what: str
    concerned: str = ""
    unconcerned: str = ""
    now: str = ""
    was: str = ""
    follows: str = ""

    @property
    def line(self) -> str:
        """The erratum on one line."""
        return f"{self.where}: {self.what}" if self.where else self.what


def errata(changes: Changes) -> tuple[Erratum, ...]:
    """The changes as errata, the gravest first; the words of one row once."""
    found, said = [], set[tuple[int | None, int | None]]()
    for c in changes.changes:
        e = _erratum(c, changes)
        key = (c.old_item, c.new_item)
        found.append(replace(e, now="", was="") if key in said else e)
        if e.now or e.was:
            said.add(key)
    return tuple(found)


def change_list(changes: Changes) -> tuple[str, tuple[str, ...]]:
    """A heading and a line for each change, for the document itself: "Changes since version 1.2"."""
    page = phrases()["page"]
    old = changes.old_version
    head = page["since"].format(old=old.text) if old is not None and old.text else page["since_unnamed"]
    return head, tuple(f"{e.line}." for e in errata(changes))


def _erratum(c: Change, changes: Changes) -> Erratum:
    rows = c.new_item is not None or c.old_item is not None
    texts = (c.new_text, c.old_text) if rows and c.new_text != c.old_text else ("", "")
    if c.what in ("printed", "wording") and not rows:
        texts = ("", "")
    head = dict(zip(c.sizes, zip(c.was, c.now, strict=True), strict=True)) if len(c.sizes) == len(c.was) == len(c.now) else {}
    others = [f for f in c.follows if f.label or f.section != c.section]  # rows without a name are of the very words that changed
    return Erratum(
        c.severity, _where(c, changes), _what(c, changes), _concerned(c, changes), _unconcerned(c, changes), *texts,
        follows_said(others, head) if others else "",
    )


# --- where -----------------------------------------------------------------------------------------------------------


def _where(c: Change, changes: Changes) -> str:
    where = phrases()["where"]
    if c.what == "sizes":
        return where["many"].format(sizes="").strip().capitalize()
    if c.heading:
        name = where.get(c.heading) if c.heading in ("about", "title") else None
        return name or f"{c.heading[:1].upper()}{c.heading[1:]}"
    row = "" if c.what in ("renumbered", "renamed", "copies") else c.label
    parts = [p for p in (c.section or "", row, _sizes(c, changes)) if p]
    return where["between"].join(parts) or where["unlabelled"].capitalize()


def _sizes(c: Change, changes: Changes) -> str:
    """As in "sizes child to adult"; "" for a pattern in one size, or where the change concerns none in particular."""
    where = phrases()["where"]
    if not c.sizes or len(changes.all_sizes) == 1:
        return ""
    if set(c.sizes) == set(changes.all_sizes):
        return where["all_sizes"]
    return where["one" if len(c.sizes) == 1 else "many"].format(sizes=some_sizes(c.sizes, changes.all_sizes))


# --- what ------------------------------------------------------------------------------------------------------------


def _what(c: Change, changes: Changes) -> str:
    what = phrases()["what"]
    if c.what == "heading" and c.heading != "terms":
        how = "heading_changed" if c.new_text and c.old_text else "heading_added" if c.new_text else "heading_removed"
        return what[how].format(now=c.new_text, was=c.old_text)
    if c.heading == "terms":
        return what["terms"].format(now=values(c.now).upper(), was=values(c.was).upper())
    if c.what == "caution":
        return what["caution_added" if c.new_text else "caution_removed"].format(now=c.new_text.rstrip("."), was=c.old_text.rstrip("."))
    if c.what == "sizes":
        return _sizes_changed(c, changes)
    if c.what == "wording":
        how = "wording" if c.new_text and c.old_text else "wording_added" if c.new_text else "wording_removed"
        return what[how] + (f" ({c.detail})" if c.detail else "")
    noun = c.noun
    if c.what == "count":
        noun = f" {dialect(changes.terms[1]).term(noun).short}" if noun else what["sts"]
    if c.what == "printed" and not c.detail:
        return what["printed"].format(now=values(c.now), was=values(c.was)) + what["printed_alone"]
    said = what[c.what].format(now=values(c.now), was=values(c.was), noun=noun or "row")
    return said + (f" ({c.detail})" if c.detail and c.what != "renumbered" else "")


def _sizes_changed(c: Change, changes: Changes) -> str:
    what = phrases()["what"]
    if c.detail in ("added", "removed"):
        return what[f"sizes_{c.detail}"].format(sizes=some_sizes(c.sizes, changes.all_sizes))
    if c.detail == "renamed":
        each = (what["sizes_renamed"].format(now=n, was=w) for n, w in zip(c.sizes, c.was, strict=True))
        return "; ".join(each)
    return what["sizes_none"].format(now=values(c.now), was=values(c.was))


# --- whom ------------------------------------------------------------------------------------------------------------


def _concerned(c: Change, changes: Changes) -> str:
    makers = phrases()["makers"]
    if c.severity == "wording":
        return ""
    if c.heading or c.what in ("caution", "sizes"):
        if c.what == "sizes" and c.detail == "removed":
            return makers["sizes_removed"].format(sizes=some_sizes(c.sizes, changes.all_sizes, either=True))
        return makers[c.severity if c.severity in ("safety", "materials") else "size"]
    one = len(changes.all_sizes) == 1 or not c.sizes
    how = "_one_size" if one else "_all_sizes" if set(c.sizes) == set(changes.all_sizes) else ""
    key = "printed" if c.what == "printed" else "row"
    told = makers[key + how].format(sizes=some_sizes(c.sizes, changes.all_sizes, either=True), come=_come(c))
    return f"{makers['safety']}; {told}" if c.severity == "safety" else told


def _come(c: Change) -> str:
    """How far a maker has come whom it concerns."""
    makers = phrases()["makers"]
    label = c.begun or c.label
    if not c.section:
        told = label or makers["row_unlabelled"]
    else:
        told = makers["of_section"].format(label=label, section=c.section) if label else makers["section"].format(section=c.section)
    return makers["ended" if c.what == "rows" and not c.begun else "begun"].format(label=told)


def _unconcerned(c: Change, changes: Changes) -> str:
    makers = phrases()["makers"]
    left = [s for s in changes.sizes if s not in c.sizes]
    if not c.sizes or not left or c.what in ("sizes", "caution") or len(changes.all_sizes) == 1:
        return ""
    return makers["unconcerned_one" if len(left) == 1 else "unconcerned_many"].format(sizes=some_sizes(left, changes.all_sizes))
