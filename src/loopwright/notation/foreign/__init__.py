"""Patterns in other languages: found out, and turned into the reader's own English before the scanner sees them. Loaded when they are met."""
