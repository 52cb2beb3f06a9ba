"""`loopwright grade`: a design in every size, with the numbers, their errors, and the written pattern."""

from __future__ import annotations

import json
import sys
from collections.abc import Sequence
from pathlib import Path

from loopwright.cli import ends
from loopwright.workshop.files import open_source
from loopwright.workshop.grade import as_json, grade_design, sources, tables
from loopwright.workshop.languages import lines, table_into, translations_from


def run(
    name: str, sizes: Sequence[str] | None, gauge: str | None, terms: str | None, own_words: bool, as_data: bool, language: str = "en",
    translations: str | None = None,
) -> int:
    """Grades a design; 1 when a finding is an error. Raises what `ends.refusal` words."""
    source = open_source(name)
    table = Path(translations) if translations else None
    translated = translations_from(table) if table is not None else None
    sized = grade_design(source, sizes, gauge, terms, own_words=own_words, language=language, translations=translated)
    if table is not None and translated is None and sized.language is not None:
        table_into(table, sized.language)
        print(f"loopwright: {table.name} lists what there is to translate; fill in its last column and give it again", file=sys.stderr)
    if as_data:
        json.dump(as_json(sized), sys.stdout, ensure_ascii=False)
        sys.stdout.write("\n")
    else:
        held = sized.graded.gauge.text if sized.graded.gauge else "no gauge"
        many = len(sized.graded.sizes)
        print(f"{sized.graded.document.title or source.name}: {many} size{'s' if many > 1 else ''} at {held} (lengths in cm)\n")
        print(tables(sized.graded))
        told = sources(sized.graded)
        print(f"\nBody measurements\n{told}" if told else "")
        print(f"\n{sized.texts[0] if len(sized.texts) == 1 else sized.text}", end="")
        if sized.language is not None:
            print(f"\n{lines(sized.language)}")
    return ends.found(source, sized.findings, silent=as_data)
