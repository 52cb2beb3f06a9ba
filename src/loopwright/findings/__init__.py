"""The record of a finding and its registry."""

from loopwright.findings.model import Edit, Finding, Fix

__all__ = ["Edit", "Finding", "Fix"]
