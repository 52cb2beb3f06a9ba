"""Binary glTF against the Khronos Group's own validator (npm package gltf-validator, Apache-2.0): no error and no warning."""

import json
import shutil
import subprocess
from pathlib import Path
from typing import Any

import numpy as np
import pytest

from loopwright.drawing.scene.buffers import buffers
from loopwright.drawing.scene.gltf import as_glb
from tests.drawing.scene.rounds import disc, sphere, tube

HERE = Path(__file__).parent / "gltf"


@pytest.fixture(scope="module")
def validator(request: pytest.FixtureRequest, tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A folder with the validator of the lock file in it, made once and kept in pytest's cache where there is one."""
    node, npm = shutil.which("node"), shutil.which("npm")
    if node is None or npm is None:
        pytest.skip("node and npm are needed to run the npm package gltf-validator, and are not here")
    cache = getattr(request.config, "cache", None)
    folder = Path(cache.mkdir("gltf-validator")) if cache else tmp_path_factory.mktemp("gltf-validator")
    lock = (HERE / "package-lock.json").read_text(encoding="utf-8")
    done = folder / "installed.json"
    if not done.exists() or done.read_text(encoding="utf-8") != lock:
        for name in ("package.json", "package-lock.json"):
            shutil.copy(HERE / name, folder / name)
        made = subprocess.run([npm, "ci", "--no-audit", "--no-fund"], cwd=folder, capture_output=True, text=True, check=False, timeout=240)
        if made.returncode != 0:
            pytest.skip(f"gltf-validator could not be installed: {made.stderr.strip()[-300:]}")
        done.write_text(lock, encoding="utf-8")
    return folder


def report_on(glb: bytes, validator: Path) -> dict[str, Any]:
    command = [str(shutil.which("node")), str(HERE / "validate.cjs"), str(validator / "package.json")]
    report: dict[str, Any] = json.loads(subprocess.run(command, input=glb, capture_output=True, check=True, timeout=120).stdout)
    return report


@pytest.mark.parametrize("level", ["yarn", "strand", "facets", "plain"])
@pytest.mark.parametrize("body", [disc, tube, sphere])
def test_no_error_and_no_warning(validator, body, level):
    fabric, shape = body()
    drawn = buffers(fabric, shape, level=level)
    report = report_on(as_glb(drawn, title="Dunlin, a test"), validator)
    assert (report["issues"]["numErrors"], report["issues"]["numWarnings"]) == (0, 0), report["issues"]["messages"]
    assert report["info"]["version"] == "2.0"
    assert report["info"]["totalTriangleCount"] == len(drawn.indices) > 0


def test_pieces_and_an_empty_scene_are_valid_too(validator):
    fabric, shape = tube(16, 6)
    half = np.asarray(shape.points[:, 2] < shape.points[:, 2].mean(), dtype=np.int64)
    two = type(shape)(shape.points, shape.node_of, shape.pairs, shape.rest_mm, shape.strain, shape.faces, shape.face_stitch, half)
    nothing = type(shape)(shape.points, shape.node_of, shape.pairs[:0], shape.rest_mm[:0], shape.strain[:0], shape.faces[:0], shape.face_stitch[:0], half)
    for body, primitives in ((two, 2), (nothing, 0)):
        report = report_on(as_glb(buffers(fabric, body), title="Curlew"), validator)
        assert (report["issues"]["numErrors"], report["issues"]["numWarnings"]) == (0, 0), report["issues"]["messages"]
        assert report["info"]["drawCallCount"] == primitives
    assert "the shape has no faces" in buffers(fabric, nothing).notes[-1]


def test_the_validator_finds_a_fault(validator):
    """So that a silent validator is not taken for a valid file."""
    fabric, shape = tube(8, 3)
    glb = as_glb(buffers(fabric, shape), title="x").replace(b'"VEC4"', b'"VEC9"', 1)
    assert report_on(glb, validator)["issues"]["numErrors"] > 0
