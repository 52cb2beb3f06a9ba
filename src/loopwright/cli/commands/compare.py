"""`loopwright compare`: what changed between two versions of a design, by section, row and size."""

from __future__ import annotations

import json
import sys
from dataclasses import dataclass

from loopwright.source import Source
from loopwright.workshop.compare.kept import keep_version
from loopwright.workshop.compare.revisions import in_folder, last_version, old_source
from loopwright.workshop.compare.versions import compare_sources
from loopwright.workshop.files import CannotOpen, CannotSave, open_source


@dataclass(frozen=True, slots=True)
class Asked:
    """What was asked: one or two names, a folder of old versions, the terms of the texts, how to say it, whether to keep the new one."""

    names: tuple[str, ...]
    since: str | None = None
    terms: str | None = None
    how: str = "text"
    keep: bool = False


def run(asked: Asked) -> int:
    """Compares two versions; 1 when a finding of either is an error, 2 when a version cannot be had."""
    try:
        if asked.keep and len(asked.names) == 1 and asked.since is None:
            print(f"kept: {keep_version(asked.names[0])}")
            return 0
        old, new = _both(asked)
        changes = compare_sources(old, new, asked.terms)
        kept = keep_version(asked.names[-1]) if asked.keep else None
    except (CannotOpen, CannotSave) as e:
        print(f"loopwright: {e}", file=sys.stderr)
        return 2
    if asked.how == "json":
        from loopwright.workshop.compare.as_json import as_json

        json.dump(as_json(changes, old, new), sys.stdout, ensure_ascii=False, allow_nan=False)
        sys.stdout.write("\n")
    else:
        from loopwright.publishing.changes.page import page

        print(page(changes, markdown=asked.how == "markdown", notes=False), end="")
        sys.stdout.flush()
        for note in changes.notes:
            print(f"note: {note}", file=sys.stderr)
        for warning in changes.warnings:
            print(f"to mend: {warning}", file=sys.stderr)
    if kept is not None:
        print(f"kept: {kept}", file=sys.stderr)
    return int(bool(changes.old_errors or changes.new_errors))


def _both(asked: Asked) -> tuple[Source, Source]:
    """The old and the new text. Raises CannotOpen."""
    names = asked.names
    if len(names) == 2 and asked.since is not None:
        raise CannotOpen("name the old version once: as the first file, or after --since")
    if len(names) > 2:
        raise CannotOpen("two versions are compared at a time: the old one, then the new one")
    if names == ("-", "-"):
        raise CannotOpen("standard input is one text: name the other version as a file")
    new = open_source(names[-1])
    if asked.since is not None:
        return in_folder(asked.since, names[0]), new
    return (old_source(names[0]) if len(names) == 2 else last_version(names[0])), new
