"""Lets the tests here share `law`."""

import sys
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parent))
