"""The data export: true to its schema (jsonschema, a general library), complete, and in numbers the fabric's."""

from __future__ import annotations

import json
import re
from itertools import chain
from pathlib import Path
from typing import Any

import jsonschema
import pytest

from loopwright.publishing.data import as_json, schema
from loopwright.publishing.document import Instructions, Step, in_brackets
from tests.publishing.conftest import ALL, _gathered
from tests.publishing.made import fabric_counts, published

CHECK = jsonschema.Draft202012Validator(schema())
PAGE = Path(__file__).parents[2] / "docs" / "data-export.md"


def exported(name: str, **edition: Any) -> Any:
    size = edition.get("size")
    measures = _gathered(name).pattern.measures
    return json.loads(as_json(published(name, **edition), measures if size is None else [measures[size]]))


def rows(data: Any) -> list[Any]:
    blocks = chain.from_iterable(p["blocks"] for p in data["parts"])
    return [s for b in blocks if b["kind"] == "section" for s in b["steps"] if s["kind"] == "row"]


def test_the_schema_is_one():
    jsonschema.Draft202012Validator.check_schema(schema())


@pytest.mark.parametrize("name", ALL)
def test_designs_follow_the_schema_and_their_numbers_are_the_fabrics(name):
    data = exported(name)
    assert [f"{e.json_path}: {e.message}" for e in CHECK.iter_errors(data)] == []
    for size in range(len(data["sizes"])):
        found = [n for r in rows(data) for n in r["each"][size]]
        assert found == fabric_counts(name, size)
    names = [b["file"] for p in data["parts"] for b in p["blocks"] if b["kind"] == "picture"]
    assert len(names) == len(set(names))


@pytest.mark.parametrize("edition", [{"size": 0}, {"large_print": True}, {"words_only": True, "terms": "us"}, {"left_handed": True}])
def test_editions_follow_the_schema(edition):
    data = exported("avocet-bonnet", **edition)
    assert [f"{e.json_path}: {e.message}" for e in CHECK.iter_errors(data)] == []
    assert len(data["measures"]) == len(data["sizes"])
    assert data["edition"]["one_size"] is ("size" in edition)


def test_the_text_of_rows_can_be_put_together_again():
    publication = published("avocet-bonnet")
    steps = [s for p in publication.parts for b in p.blocks if isinstance(b, Instructions) for s in b.steps if isinstance(s, Step)]
    for step, row in zip(steps, rows(exported("avocet-bonnet")), strict=True):
        assert "".join(t if isinstance(t, str) else t["said"] for t in row["words"]) == in_brackets(step.words)
        assert [s and s["words"] for s in row["by_size"]] == [s and s.words for s in step.by_size]


def test_measures_are_millimetres_and_one_for_each_size():
    data = exported("samphire-beanie")
    around = [next(d["value_mm"] for d in m["dimensions"] if (d["section"], d["name"]) == ("Body", "around")) for m in data["measures"]]
    assert around == sorted(around)
    assert 200 < around[0] < around[-1] < 700
    with pytest.raises(ValueError, match="2 measures for 10 sizes"):
        as_json(published("samphire-beanie"), _gathered("samphire-beanie").pattern.measures[:2])


def test_the_schema_refuses_what_it_does_not_know():
    data = exported("curlew-toy")
    changes: list[dict[str, object]] = [{"extra": 1}, {"version": 2}, {"sizes": []}, {"parts": [{"key": "poem", "heading": "", "blocks": []}]}]
    for change in changes:
        assert list(CHECK.iter_errors(data | change)), change


def test_every_key_of_the_export_has_its_line_in_the_page():
    page = PAGE.read_text(encoding="utf-8")
    told = set(re.findall(r"`([a-z_]+)`", page))
    assert set(schema()["properties"]) - {"description", "edition", "draft"} <= told
    example = re.search(r"```json\n(\{\"kind\": \"row\".*?)```", page, re.DOTALL)
    assert example is not None
    row = {"$schema": schema()["$schema"], "$ref": "#/$defs/row", "$defs": schema()["$defs"]}
    assert list(jsonschema.Draft202012Validator(row).iter_errors(json.loads(example[1]))) == []
