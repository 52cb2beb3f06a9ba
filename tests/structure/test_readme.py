"""The tour of the README: every command is run, in order, and prints what the page says; "..." stands for lines left out."""

import os
import re
import shlex
import subprocess
import sys
from pathlib import Path

ROOT = Path(__file__).parents[2]
PAGE = (ROOT / "README.md").read_text(encoding="utf-8")
STEPS = re.compile(r"<!-- edit (?P<file>\S+): (?P<old>.*?) -> (?P<new>.*?) -->|^```console\n(?P<console>.*?)^```$", re.MULTILINE | re.DOTALL)


def matches(told: str, printed: str) -> bool:
    """Whether lines stand in the print in this order, next to each other where no "..." stands between them."""
    parts = [re.escape(part.strip("\n")) for part in re.split(r"^\.\.\.$", told, flags=re.MULTILINE)]
    return re.search(r"\A\s*" + r"\n(?:.*\n)*?".join(parts), printed if parts[0] else "\n" + printed) is not None


def test_the_tour(tmp_path):
    ran = 0
    for step in STEPS.finditer(PAGE):
        if step["file"]:
            file = tmp_path / step["file"]
            text = file.read_text(encoding="utf-8")
            assert step["old"] in text
            file.write_text(text.replace(step["old"], step["new"], 1), encoding="utf-8")
            continue
        for command, told in re.findall(r"^\$ loopwright (.*)\n((?:(?!\$ ).*\n)*)", step["console"], re.MULTILINE):
            words = [sys.executable, "-m", "loopwright", *shlex.split(command)]
            env = {**os.environ, "COLUMNS": "120"}
            done = subprocess.run(words, cwd=tmp_path, env=env, stdout=subprocess.PIPE, stderr=subprocess.STDOUT, text=True, check=False)
            assert done.returncode in (0, 1), done.stdout
            assert matches(told, done.stdout), f"loopwright {command}\n--- the page says\n{told}\n--- it prints\n{done.stdout}"
            ran += 1
    assert ran >= 6


def test_the_files_it_names_are_there():
    for name in re.findall(r"\]\(([^)#]+)\)", PAGE):
        assert (ROOT / name).exists(), name
