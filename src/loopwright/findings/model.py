"""A finding: what is wrong or doubtful, where, and how to mend it. Its words come from the registry, not from here."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import field
from typing import Literal

from loopwright.record import record
from loopwright.source import Span

Severity = Literal["error", "warning", "advice"]


@record
class Edit:
    """Replace the text under `span` by `text`."""

    span: Span
    text: str


@record
class Fix:
    """A mend that makes its finding disappear. Edits are sorted and do not overlap."""

    title: str
    edits: tuple[Edit, ...]
    safe: bool = True


@record
class Finding:
    """One finding. `code` names an entry of the registry; `args` fill its message; `severity` overrides the registry's."""

    code: str
    span: Span
    args: Mapping[str, object] = field(default_factory=dict)
    hints: tuple[str, ...] = ()
    sizes: tuple[str, ...] | None = None
    fix: Fix | None = None
    severity: Severity | None = None
