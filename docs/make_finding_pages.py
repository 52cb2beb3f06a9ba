# ruff: noqa: INP001 (a script, no package)
"""Writes the pages of findings from the registry. Call it as: python docs/make_finding_pages.py."""

from pathlib import Path

from loopwright.findings.pages import pages
from loopwright.findings.registry import load

FOLDER = Path(__file__).parent / "findings"


def main() -> None:
    """Writes every page and takes away those that no code has any more."""
    FOLDER.mkdir(exist_ok=True)
    made = pages(load())
    for name, text in made.items():
        (FOLDER / name).write_text(text, encoding="utf-8")
    for old in FOLDER.glob("*.md"):
        if old.name not in made:
            old.unlink()


if __name__ == "__main__":
    main()
