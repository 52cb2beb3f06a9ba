"""Who may import whom."""

import ast
from pathlib import Path

ORDER = ["source", "findings", "model", "terms", "notation", "working", "workshop", "cli"]
APART = {("notation", "working"), ("working", "notation")}
ROOT = Path(__file__).parents[2] / "src" / "loopwright"


def imports(path):
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if isinstance(node, ast.ImportFrom) and node.module and node.module.startswith("loopwright."):
            yield node.module.split(".")[1]


def test_packages_look_only_down():
    wrong = []
    seen = 0
    for path in ROOT.rglob("*.py"):
        parts = path.relative_to(ROOT).parts
        if len(parts) < 2:
            continue
        for target in imports(path):
            seen += 1
            if target in ORDER and (ORDER.index(target) > ORDER.index(parts[0]) or (parts[0], target) in APART):
                wrong.append(f"{path.relative_to(ROOT)} imports {target}")
    assert seen > 50
    assert wrong == []
