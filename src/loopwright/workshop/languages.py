"""A design in another language: what had to stay as it was, what a native maker should check, and the table to translate by."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from pathlib import Path
from typing import Any

from loopwright.model.report import Report
from loopwright.model.tree import Document
from loopwright.record import record
from loopwright.terms.languages import language
from loopwright.wording import voice_for, write_in
from loopwright.wording.languages import LanguageVoice, Unchecked, unchecked
from loopwright.wording.translations import Trouble, Unit, as_table, from_table, language_of, troubles, units
from loopwright.workshop.files import CannotOpen, open_source, write_whole


@record
class Told:
    """What the all-sizes text in another language holds. `units`: the designer's own words, with their translations where there are any."""

    code: str
    units: tuple[Unit, ...]
    unchecked: tuple[Unchecked, ...]
    troubles: tuple[Trouble, ...] = ()


def in_language(
    document: Document, report: Report | None, code: str, measurements: Mapping[str, Sequence[float | None]] | None = None,
    translations: Mapping[str, str] | None = None,
) -> Told:
    """What stays and what is to be checked. Raises ValueError for a language that there is none of."""
    voice = voice_for(document, document.terms, language=code)
    assert isinstance(voice, LanguageVoice)  # noqa: S101 - voice_for gives no other for another language
    write_in(voice, document, report, measurements)
    found = units(voice.heard.kept, translations)
    wrong = troubles(found, translations) if translations is not None else ()
    return Told(code, found, tuple(unchecked(code, voice.heard.used)), wrong)


def translations_from(path: Path) -> dict[str, str] | None:
    """The translations in a table that came back; None where there is no such file.

    Raises CannotOpen for a file that cannot be read or is no such table.
    """
    if not path.exists():
        return None
    try:
        return from_table(open_source(str(path)).text)
    except ValueError as e:
        raise CannotOpen(f"{path.name}: {e}") from None


def translations_in(path: Path) -> tuple[str, dict[str, str]]:
    """The language of a table that came back, and its translations. Raises CannotOpen, for a file that is not there too."""
    found = translations_from(path)
    if found is None:
        raise CannotOpen(
            f"there is no {path}: loopwright grade DESIGN --language de --translations {path.name} makes one to fill in, here for German",
        )
    return language_of(open_source(str(path)).text), found


def table_into(path: Path, told: Told) -> None:
    """Writes the table of what there is to translate, with what is translated already. Raises CannotSave."""
    write_whole(path, as_table(told.units, told.code))


def as_json(told: Told) -> dict[str, Any]:
    """As the commands' JSON has it."""
    return {
        "code": told.code, "name": language(told.code).name,
        "untranslated": [{"id": u.id, "text": u.text, "where": u.where} for u in told.units if not u.target],
        "unchecked": [{"key": u.key, "short": u.short, "long": u.long, "known_from": u.sure} for u in told.unchecked],
        "troubles": [{"kind": t.kind, "id": t.unit, "text": t.text, "lost": list(t.lost)} for t in told.troubles],
    }


def lines(told: Told) -> str:
    """In words, for the end of a text."""
    name, left = language(told.code).name, sum(not u.target for u in told.units)
    said = [f"Written in {name}. Frames of sentences, and these terms, are still to be checked by a native maker:"]
    terms = [u.long if u.short == u.long else f"{u.short} ({u.long})" for u in told.unchecked]
    said.append(f"  {'; '.join(terms) or '(no terms)'}")
    said.extend(f"translations: {t.message}" for t in told.troubles if t.kind != "missing")
    if left:
        said.append(f"{left} of the designer's own phrases are not in {name} yet: they stand as they are, marked [en: …].")
    return "\n".join(said)
