"""Who may import whom: the contracts stand in pyproject.toml, Import Linter holds them; here it is shown that they are in force."""

import subprocess
import sys
from pathlib import Path

ROOT = Path(__file__).parents[2]


def test_the_contracts_of_the_layers_are_kept():
    script = Path(sys.executable).with_name("lint-imports")
    done = subprocess.run([script, "--no-cache"], cwd=ROOT, capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stdout + done.stderr
    assert "0 broken" in done.stdout
