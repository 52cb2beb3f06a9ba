"""Versions of a design: what changed from one to the next, in data and in trade words."""

from loopwright.publishing.changes.compare import compare
from loopwright.publishing.changes.model import SEVERITIES, Change, Changes, Follow, GaugeFact, Length, Severity, Version, Worked, Yarn
from loopwright.publishing.changes.version import parsed, rises, version_of

__all__ = [
    "SEVERITIES", "Change", "Changes", "Follow", "GaugeFact", "Length", "Severity", "Version", "Worked", "Yarn", "compare", "parsed",
    "rises", "version_of",
]
