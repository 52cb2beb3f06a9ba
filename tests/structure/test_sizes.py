"""Stop values: no file over 400 lines, no function over 40; an exception is named, with its reason, in docs/decisions.md."""

import ast
from collections.abc import Iterator
from pathlib import Path

ROOT = Path(__file__).parents[2]
FILE_STOP = 400
FUNCTION_STOP = 40
BEING_WRITTEN = ("src/loopwright/model/", "src/loopwright/notation/", "src/loopwright/working/")  # held to the stop values when they stand still
UNNAMED = {"utils", "helpers", "common", "base", "misc"}


def sources() -> Iterator[Path]:
    for folder in ("src", "tests", "benchmarks"):
        found = sorted((ROOT / folder).rglob("*.py"))
        yield from (p for p in found if not str(p.relative_to(ROOT)).startswith(BEING_WRITTEN))


def functions(path: Path) -> Iterator[tuple[str, int]]:
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if isinstance(node, (ast.FunctionDef, ast.AsyncFunctionDef)):
            yield node.name, (node.end_lineno or node.lineno) - node.lineno + 1


def exceptions() -> str:
    """The lines of docs/decisions.md that name an exception: "- stop value: `path` or `path:function`, reason"."""
    text = (ROOT / "docs" / "decisions.md").read_text(encoding="utf-8")
    return "\n".join(line for line in text.splitlines() if line.startswith("- stop value:"))


def test_files_and_functions_stay_short():
    named = exceptions()
    files = [(len(p.read_text(encoding="utf-8").splitlines()), str(p.relative_to(ROOT))) for p in sources()]
    parts = [(lines, f"{p.relative_to(ROOT)}:{name}") for p in sources() for name, lines in functions(p)]
    print("\nlongest files and functions")
    for lines, name in sorted(files, reverse=True)[:10] + sorted(parts, reverse=True)[:10]:
        print(f"{lines:5}  {name}")
    wrong = [f"{name}: {lines} lines" for lines, name in files if lines > FILE_STOP and f"`{name}`" not in named]
    wrong += [f"{name}: {lines} lines" for lines, name in parts if lines > FUNCTION_STOP and f"`{name}`" not in named]
    assert wrong == []


def test_an_exception_is_still_needed():
    named = exceptions()
    long = {str(p.relative_to(ROOT)) for p in sources() if len(p.read_text(encoding="utf-8").splitlines()) > FILE_STOP}
    long |= {f"{p.relative_to(ROOT)}:{name}" for p in sources() for name, lines in functions(p) if lines > FUNCTION_STOP}
    told = [line.split("`")[1] for line in named.splitlines()]
    assert [t for t in told if t not in long] == []


def test_every_file_is_named_for_what_it_holds():
    assert [str(p.relative_to(ROOT)) for p in sources() if p.stem in UNNAMED] == []
