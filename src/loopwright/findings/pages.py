"""The pages of findings: one for each code, and a list of all, as Markdown out of the registry."""

from __future__ import annotations

import string
from collections.abc import Mapping

from loopwright.findings.registry import Entry

KINDS = {
    "N": "What cannot be read",
    "W": "What cannot be worked, or does not add up",
    "D": "What can be read in several ways",
    "C": "The technical editor's checks",
    "G": "Grading",
    "M": "How the fabric lies",
    "P": "Files",
}
SEVERITIES = {
    "error": "an error: the text contradicts itself",
    "warning": "a warning: very likely a slip",
    "advice": "advice: not wrong, and better otherwise",
}


def file_name(code: str, entry: Entry) -> str:
    """The name of a code's page."""
    return f"{code}-{entry.name}.md"


def pages(entries: Mapping[str, Entry]) -> dict[str, str]:
    """All pages by file name, with "README.md" as the list."""
    found = {file_name(code, entry): page(code, entry) for code, entry in entries.items()}
    return {**found, "README.md": overview(entries)}


def page(code: str, entry: Entry) -> str:
    """A code's page: what it says, what it means, why it matters, an example and a better one."""
    parts = [f"# {code} {entry.name}", f"> {_plain(entry.text)}", f"This is {SEVERITIES[entry.severity]}.", entry.means]
    if entry.why:
        parts.append(f"**Why it matters.** {entry.why}")
    if entry.hint:
        parts.append(f"**Way out.** {_plain(entry.hint)}")
    if entry.example:
        parts += ["For example", _quoted(entry.example)]
    if entry.better:
        parts += ["Better", _quoted(entry.better)]
    parts.append("[All findings](README.md)")
    return "\n\n".join(p for p in parts if p) + "\n"


def overview(entries: Mapping[str, Entry]) -> str:
    """The list of all codes, by kind."""
    lines = ["# Findings", "", "Each finding of `loopwright check` and `loopwright grade` has a code, a name and a page."]
    for letter, title in KINDS.items():
        mine = sorted((code, e) for code, e in entries.items() if code.startswith(letter))
        if mine:
            lines += ["", f"## {title}", "", "| code | name | severity | says |", "| --- | --- | --- | --- |"]
            lines += [f"| [{code}]({file_name(code, e)}) | {e.name} | {e.severity} | {_cell(e.text)} |" for code, e in mine]
    return "\n".join(lines) + "\n"


def _plain(text: str) -> str:
    """Fields as dots: on a page there is nothing yet to fill them."""
    text = text.replace("[[", "").replace("]]", "")
    return "".join(f"{words}‹{name.replace('_', ' ')}›" if name else words for words, name, _, _ in string.Formatter().parse(text))


def _cell(text: str) -> str:
    return _plain(text).replace("|", "\\|")


def _quoted(text: str) -> str:
    return f"```text\n{text}\n```"
