"""The order in which findings are told."""

from __future__ import annotations

from collections.abc import Iterable

from loopwright.findings.model import Finding
from loopwright.findings.registry import severity

_GRAVEST_FIRST = {"error": 0, "warning": 1, "advice": 2}


def in_order(findings: Iterable[Finding]) -> tuple[Finding, ...]:
    """Findings by place; at one place the gravest first; each once."""
    once = {(f.code, f.span, tuple(f.args.items())): f for f in findings}
    return tuple(sorted(once.values(), key=lambda f: (f.span.start, _GRAVEST_FIRST[severity(f)], f.code)))
