"""docs/corrections.md: every command is run, in order, and prints what the page says; "..." stands for lines left out."""

import os
import re
import shlex
import subprocess
import sys
from pathlib import Path

from tests.structure.test_readme import matches

PAGE = (Path(__file__).parents[2] / "docs" / "corrections.md").read_text(encoding="utf-8")
STEPS = re.compile(
    r"<!-- edit (?P<file>\S+): (?P<old>.*?) -> (?P<new>.*?) -->|<!-- file (?P<made>\S+)\n(?P<text>.*?)-->|^```console\n(?P<console>.*?)^```$",
    re.MULTILINE | re.DOTALL,
)


def test_the_page_tells_what_happens(tmp_path):
    ran = 0
    for step in STEPS.finditer(PAGE):
        if step["made"]:
            (tmp_path / step["made"]).write_text(step["text"], encoding="utf-8")
        elif step["file"]:
            file = tmp_path / step["file"]
            text = file.read_text(encoding="utf-8")
            assert step["old"] in text
            file.write_text(text.replace(step["old"], step["new"], 1), encoding="utf-8")
        else:
            for command, told in re.findall(r"^\$ loopwright (.*)\n((?:(?!\$ ).*\n)*)", step["console"], re.MULTILINE):
                words = [sys.executable, "-m", "loopwright", *shlex.split(command)]
                done = subprocess.run(words, cwd=tmp_path, env={**os.environ, "COLUMNS": "120"}, stdout=subprocess.PIPE, stderr=subprocess.STDOUT, text=True, check=False)
                assert done.returncode in (0, 1), done.stdout
                assert matches(told, done.stdout), f"loopwright {command}\n--- the page says\n{told}\n--- it prints\n{done.stdout}"
                ran += 1
    assert ran == 6
