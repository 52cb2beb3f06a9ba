"""Stop values: no file over 400 lines, no function over 40; an exception is named, with its reason, in docs/decisions.md."""

import ast
import re
from collections.abc import Iterator
from pathlib import Path

ROOT = Path(__file__).parents[2]
FILE_STOP = 400
FUNCTION_STOP = 40
UNNAMED = {"utils", "helpers", "common", "base", "misc"}


def sources() -> Iterator[Path]:
    for folder in ("src", "tests", "benchmarks"):
        yield from sorted((ROOT / folder).rglob("*.py"))


def functions(path: Path) -> Iterator[tuple[str, int]]:
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if isinstance(node, (ast.FunctionDef, ast.AsyncFunctionDef)):
            yield node.name, (node.end_lineno or node.lineno) - node.lineno + 1


def exceptions() -> list[str]:
    """What docs/decisions.md excepts, in lines such as: - stop value: `path`, `path:function` or `folder/`, and the reason."""
    text = (ROOT / "docs" / "decisions.md").read_text(encoding="utf-8")
    return [name for line in text.splitlines() if line.startswith("- stop value:") for name in re.findall(r"`([^`]+)`", line)]


def excepted(name: str, named: list[str]) -> bool:
    return any(name == n or n.endswith("/") and name.startswith(n) for n in named)


def too_long() -> list[tuple[str, int]]:
    """Files and functions above the stop values, with their lines."""
    files = [(str(p.relative_to(ROOT)), len(p.read_text(encoding="utf-8").splitlines())) for p in sources()]
    parts = [(f"{p.relative_to(ROOT)}:{name}", lines) for p in sources() for name, lines in functions(p)]
    print("\nlongest files and functions")
    for found in (files, parts):
        for name, lines in sorted(found, key=lambda f: -f[1])[:10]:
            print(f"{lines:5}  {name}")
    return [f for f in files if f[1] > FILE_STOP] + [f for f in parts if f[1] > FUNCTION_STOP]


def test_files_and_functions_stay_short():
    named = exceptions()
    assert [f"{name}: {lines} lines" for name, lines in too_long() if not excepted(name, named)] == []


def test_an_exception_is_still_needed():
    long = [name for name, _ in too_long()]
    assert [n for n in exceptions() if not any(excepted(name, [n]) for name in long)] == []


def test_every_file_is_named_for_what_it_holds():
    assert [str(p.relative_to(ROOT)) for p in sources() if p.stem in UNNAMED] == []
