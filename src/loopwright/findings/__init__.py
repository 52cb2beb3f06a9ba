"""The record of a finding, its registry, its renderers and its mends."""

from loopwright.findings.model import Edit, Finding, Fix, Severity
from loopwright.findings.order import in_order

__all__ = ["Edit", "Finding", "Fix", "Severity", "in_order"]
