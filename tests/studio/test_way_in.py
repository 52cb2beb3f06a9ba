"""`loopwright studio` from the command line: the address, words for what cannot be used, a quiet end; and how its pages get built."""

from __future__ import annotations

import importlib.util
import os
import re
import signal
import socket
import subprocess
import sys
import time
import types
from pathlib import Path

import pytest

from loopwright.studio.settings import mark_of, usual_port
from tests.studio.served import PATTERN, start

ROOT = Path(__file__).parents[2]


def said(*words: str, **more) -> subprocess.CompletedProcess[str]:
    return subprocess.run([sys.executable, "-m", "loopwright", "studio", *words], capture_output=True, text=True, timeout=60, check=False, **more)


def test_the_first_line_is_the_address_with_the_token(tmp_path):
    made = start(tmp_path)
    try:
        assert re.fullmatch(r"http://127\.0\.0\.1:\d+/\?token=[\w-]{32}", made.address)
        assert made.ask("/api/folder").json["folder"] == tmp_path.name
    finally:
        made.process.send_signal(signal.SIGINT)
        out, err = made.process.communicate(timeout=30)
    assert (out, made.process.returncode) == ("", 130)
    assert "Traceback" not in err
    assert len(err.strip().splitlines()) <= 1


def test_it_ends_quietly_when_it_is_asked_to_with_a_window_open(tmp_path):
    (tmp_path / "sedge.txt").write_text(PATTERN)
    made = start(tmp_path)
    with made.window("sedge.txt"):
        made.process.send_signal(signal.SIGTERM)
        _, err = made.process.communicate(timeout=30)
    assert "Traceback" not in err


@pytest.mark.parametrize(("words", "word"), [
    (["nothing-there"], "is no folder"), (["file.txt"], "is no folder"), ([".", "--port", "70000"], "from 0 to 65535"), ([".", "--port", "-1"], "from 0 to 65535"),
    (["--demo", "file.txt"], "is a file, not a folder"),
])  # fmt: skip
def test_what_cannot_be_used_gets_one_sentence(tmp_path, words, word):
    (tmp_path / "file.txt").write_text("")
    done = said(*words, "--no-browser", cwd=tmp_path)
    assert (done.returncode, done.stdout) == (2, "")
    assert word in done.stderr
    assert len(done.stderr.strip().splitlines()) == 1


def test_a_port_that_is_taken_gets_a_sentence_and_the_usual_one_gives_way(tmp_path):
    with socket.socket() as held:
        held.bind(("127.0.0.1", usual_port(tmp_path)))
        held.listen()
        taken = str(held.getsockname()[1])
        done = said(str(tmp_path), "--port", taken, "--no-browser")
        assert done.returncode == 2
        assert f"port {taken} cannot be used" in done.stderr
        assert "--port" in done.stderr
        made = start(tmp_path)
        made.end()
        assert made.port != int(taken)


def test_a_folder_has_the_same_port_each_time_so_that_windows_find_what_they_kept(tmp_path):
    other = tmp_path / "other"
    other.mkdir()
    assert usual_port(tmp_path) == usual_port(tmp_path / "other" / "..")
    assert mark_of(tmp_path) != mark_of(other)
    made = start(tmp_path)
    made.end()
    assert made.port == usual_port(tmp_path)


def test_without_a_browser_it_says_so_and_goes_on(tmp_path):
    words = [sys.executable, "-m", "loopwright", "studio", str(tmp_path)]
    env = {**os.environ, "BROWSER": "/nothing/there %s", "PATH": str(tmp_path), "DISPLAY": ""}
    process = subprocess.Popen(words, stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True, env=env)
    assert process.stdout
    assert process.stderr
    assert process.stdout.readline().startswith("http://127.0.0.1:")
    assert "no browser could be opened; open the address above" in process.stderr.readline()
    assert process.poll() is None
    process.kill()
    process.wait(20)


def test_the_demo_puts_the_designs_where_they_are_not_yet(tmp_path):
    folder = tmp_path / "demo"
    folder.mkdir()
    (folder / "thrift-shawl.txt").write_text("Mine")
    made = start(folder, "--demo")
    names = {d["id"] for d in made.ask("/api/folder").json["designs"]}
    made.process.kill()
    _, err = made.process.communicate()
    assert {"samphire-beanie.txt", "avocet-bonnet.txt"} <= names
    assert (folder / "thrift-shawl.txt").read_text() == "Mine"
    assert str(folder) in err.splitlines()[0]


def test_the_readme_shows_what_make_demo_says(tmp_path):
    told = (ROOT / "README.md").read_text(encoding="utf-8").partition("$ make demo\n...\n")[2].partition("```")[0].splitlines()
    target = re.search(r"^demo: .*\n\t\$\(BIN\)/loopwright (.*)$", (ROOT / "Makefile").read_text(encoding="utf-8"), re.MULTILINE)
    assert target
    words = [sys.executable, "-m", "loopwright", *target[1].split(), "--no-browser"]
    process = subprocess.Popen(words, cwd=tmp_path, stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True)
    assert process.stdout
    address = process.stdout.readline().strip()
    process.kill()
    _, err = process.communicate()
    shape = r"http://127\.0\.0\.1:\d{5}/\?token=[\w-]{32}"
    assert [err.splitlines()[0], bool(re.fullmatch(shape, address))] == [told[0], bool(re.fullmatch(shape, told[1]))]
    assert len(told) == 2


def memory_mb(pid: int) -> float:
    status = Path(f"/proc/{pid}/status")
    if not status.is_file():
        pytest.skip("this system does not tell memory in /proc")
    found = re.search(r"VmRSS:\s+(\d+)", status.read_text())
    assert found
    return int(found[1]) / 1024


def test_an_idle_studio_is_small(tmp_path):
    (tmp_path / "sedge.txt").write_text(PATTERN)
    made = start(tmp_path)
    try:
        made.ask("/api/folder")
        time.sleep(1)
        assert memory_mb(made.process.pid) < 150
    finally:
        made.end()


# how the pages get built


@pytest.fixture
def hook(tmp_path, monkeypatch):
    """The build hook over a folder of its own, without what calls it."""
    for name in ("hatchling", "hatchling.builders", "hatchling.builders.hooks", "hatchling.builders.hooks.plugin", "hatchling.builders.hooks.plugin.interface"):
        monkeypatch.setitem(sys.modules, name, types.ModuleType(name))
    monkeypatch.setattr(sys.modules["hatchling.builders.hooks.plugin.interface"], "BuildHookInterface", object, raising=False)
    spec = importlib.util.spec_from_file_location("hatch_build", ROOT / "hatch_build.py")
    assert spec
    assert spec.loader
    module = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(module)
    (tmp_path / "frontend" / "node_modules" / "x").mkdir(parents=True)
    (tmp_path / "frontend" / "main.ts").write_text("1")
    (tmp_path / "src" / "loopwright" / "studio" / "static").mkdir(parents=True)
    made = module.Hook()
    made.root = str(tmp_path)
    made.module = module
    return made


def test_the_pages_are_built_when_they_are_not_fresh_and_only_then(hook, tmp_path, monkeypatch):
    ran = []
    monkeypatch.setattr(hook.module, "_npm", lambda: (["npm"], {}))
    monkeypatch.setattr(hook.module.subprocess, "run", lambda words, **_: ran.append(words[1]))
    hook.initialize("standard", {})
    assert ran == ["ci", "run"]
    hook.initialize("standard", {})
    (tmp_path / "frontend" / "node_modules" / "x" / "y.js").write_text("2")
    hook.initialize("standard", {})
    assert ran == ["ci", "run"]
    assert hook.dependencies() == []
    (tmp_path / "frontend" / "main.ts").write_text("3")
    hook.initialize("standard", {})
    (tmp_path / "frontend" / "main.ts").rename(tmp_path / "frontend" / "other.ts")
    hook.initialize("standard", {})
    assert ran == ["ci", "run"] * 3


def test_a_build_that_fails_says_so_and_leaves_no_stamp(hook, monkeypatch):
    def fails(words, **_more):
        raise subprocess.CalledProcessError(1, words)

    monkeypatch.setattr(hook.module, "_npm", lambda: (["npm"], {}))
    monkeypatch.setattr(hook.module.subprocess, "run", fails)
    with pytest.raises(RuntimeError, match="pages could not be built"):
        hook.initialize("standard", {})
    assert not (Path(hook.root) / "src" / "loopwright" / "studio" / "static" / ".stamp").exists()


@pytest.mark.parametrize(("version", "needed"), [("v24.19.0", False), ("v20.19.0", False), ("v20.18.9", True), ("v9.9", True), ("", True), ("odd", True)])
def test_node_comes_from_a_wheel_where_the_machine_has_none_that_is_new_enough(hook, monkeypatch, version, needed):
    monkeypatch.setattr(hook.module.shutil, "which", lambda name: f"/bin/{name}")
    monkeypatch.setattr(hook.module.subprocess, "run", lambda *_given, **_more: types.SimpleNamespace(stdout=version + "\n"))
    assert hook.dependencies() == ([hook.module.NODE_WHEEL] if needed else [])
    monkeypatch.setattr(hook.module.shutil, "which", lambda _: None)
    assert hook.dependencies() == [hook.module.NODE_WHEEL]


def test_the_wheel_of_node_is_the_one_that_is_held(hook):
    assert hook.module.NODE_WHEEL in (ROOT / "build-constraints.txt").read_text().split()
