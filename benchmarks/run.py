"""Benchmarks: each figure with its target beside it (`make bench`)."""
