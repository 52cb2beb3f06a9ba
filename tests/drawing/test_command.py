"""`loopwright draw`: files with their descriptions; what cannot be drawn is said."""

from __future__ import annotations

import json
import re
import subprocess
import sys
import xml.etree.ElementTree as ET
from pathlib import Path

DESIGNS = Path(__file__).parents[2] / "designs"


def run(*words: str, text: str | None = None) -> subprocess.CompletedProcess[str]:
    return subprocess.run([sys.executable, "-m", "loopwright", "draw", *words], input=text, capture_output=True, text=True, check=False)


def test_every_kind_of_drawing_is_written_and_described(tmp_path):
    done = run(str(DESIGNS / "samphire-beanie.txt"), "--size", "child", "--out", str(tmp_path), "--png", "--json")
    assert done.returncode == 0, done.stderr
    files = json.loads(done.stdout)["files"]
    assert {f["what"] for f in files} >= {"chart", "schematic", "fabric", "shape"}
    assert all(f["size"] == "child" and f["description"] for f in files)
    for file in files:
        data = Path(file["path"]).read_bytes()
        begins = {"svg": b"<", "png": b"\x89PNG", "glb": b"glTF"}[file["path"].rsplit(".", 1)[1]]
        assert data.startswith(begins), file["path"]


def test_symbols_lead_back_to_stitch_and_line(tmp_path):
    text = "Gauge: 20 sc and 22 rows = 10 cm\n\nRnd 1: 6 sc in magic ring. (6)\nRnd 2: 2 sc in each st around. (12)\n"
    done = run("-", "--what", "chart", "--out", str(tmp_path), text=text)
    assert done.returncode == 0, done.stderr
    (chart,) = tmp_path.glob("*.svg")
    svg = chart.read_text(encoding="utf-8")
    ET.fromstring(svg)  # noqa: S314 (our own output)
    assert len(set(re.findall(r'data-stitch="(\d+)"', svg))) >= 18
    assert set(re.findall(r'data-line="(\d+)"', svg)) == {"3", "4"}


def test_the_same_pattern_gives_the_same_bytes(tmp_path):
    for name in ("a", "b"):
        run(str(DESIGNS / "curlew-toy.txt"), "--what", "chart", "--what", "schematic", "--out", str(tmp_path / name))
    first, second = (sorted((tmp_path / name).iterdir()) for name in ("a", "b"))
    assert [p.read_bytes() for p in first] == [p.read_bytes() for p in second]


def test_without_a_gauge_nothing_is_drawn_and_it_is_said(tmp_path):
    done = run("-", "--what", "schematic", "--out", str(tmp_path), text="Rnd 1: 6 sc in magic ring. (6)\n")
    assert done.returncode == 0
    assert "gauge" in done.stdout


def test_an_output_folder_that_is_a_file_is_said(tmp_path):
    (tmp_path / "there").write_text("x", encoding="utf-8")
    done = run("-", "--out", str(tmp_path / "there"), text="Gauge: 20 sc = 10 cm\n\nRnd 1: 6 sc in magic ring. (6)\n")
    assert done.returncode == 2
    assert "is a file, not a folder" in done.stderr


def test_a_net_of_chains_has_its_picture_too(tmp_path):
    text = """Gauge: 18 dc and 9 rows = 10 cm

Ch 14.
Row 1: Sc in 10th ch from hook, *ch 5, sk next 3 ch, sc in next ch; rep from * across, turn. (2 sc)
Row 2: Ch 5, sc in next ch-5 sp, ch 5, sc in next ch-5 sp, turn. (2 sc)
"""
    done = run("-", "--what", "fabric", "--out", str(tmp_path), text=text)
    assert done.returncode == 0, done.stderr
    assert list(tmp_path.glob("*-fabric.png"))
