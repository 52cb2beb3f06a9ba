"""The record of a finding, its registry, its renderers and its mends."""

from loopwright.findings.model import Edit, Finding, Fix, Severity

__all__ = ["Edit", "Finding", "Fix", "Severity"]
