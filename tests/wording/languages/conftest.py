"""Lets the tests here share `spoken` and what stands one folder up."""

import sys
from pathlib import Path

sys.path[:0] = [str(Path(__file__).parent), str(Path(__file__).parent.parent)]
