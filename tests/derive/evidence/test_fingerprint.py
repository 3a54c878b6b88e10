"""Fingerprints: an edit changes the one of its block and no other; layout changes none."""

import hashlib
import io
import json
from functools import cache
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from ruamel.yaml import YAML

from undertrim.derive.evidence import fingerprint as fp
from undertrim.derive.evidence.fingerprint import Changes, changed_since, fingerprint, fingerprints
from undertrim.record.copying import copied
from undertrim.record.source import Pointer, read_text
from undertrim.record.spreading import spread
from undertrim.resources import top

RECORDS = sorted((top("records") / "vehicles").rglob("*.yaml"))
WORDS = st.text(st.characters(codec="utf-8", categories=("L", "N", "P", "Zs")), max_size=8)
EXTRA: dict[str, Any] = {
    "areas": {"dash": {"high_voltage": "near"}},
    "closures": {"boot": {"latch": "electric"}},
    "conflicts": {"x": {"about": "restraint/wait", "claims": [{"says": "2 min", "source": "e1"}]}},
    "verified": {"on": "2026-04-02", "by": "rk", "car": "2016", "facts": {"vehicle": "00000000"}},
}


@cache
def data(path: Path) -> Any:
    whole = spread(read_text(path.read_text(encoding="utf-8"), path)).data
    assert isinstance(whole, dict)
    return {**EXTRA, **json.loads(json.dumps(whole))}  # what parts share is said at each of them


def leaves(value: Any, pointer: Pointer = ()) -> list[Pointer]:
    steps = value.items() if isinstance(value, dict) else enumerate(value) if isinstance(value, list) else ()
    below = [leaf for step, inner in steps for leaf in leaves(inner, (*pointer, step))]
    return below or [pointer]


def put(value: Any, pointer: Pointer, text: str) -> Any:
    """A copy with another text at one place."""
    changed = copied(value)
    inner = changed
    for step in pointer[:-1]:
        inner = inner[step]
    inner[pointer[-1]] = text
    return changed


def block_of(pointer: Pointer) -> set[str]:
    if pointer[0] in fp.NO_FACTS:
        return set()
    return {str(pointer[0])} if pointer[0] in fp.WHOLE else {f"{pointer[0]}/{pointer[1]}"}


def restyled(value: Any, *, flow: bool | None, width: int) -> Any:
    """The same data, written by a YAML library in a layout of its own and read again by ours."""
    writer = YAML(typ="safe", pure=True)
    writer.default_flow_style, writer.width, writer.allow_unicode = flow, width, True
    stream = io.StringIO()
    writer.dump(value, stream)
    again = read_text("# a comment\n" + stream.getvalue(), Path("x.yaml"))
    assert not again.problems
    return again.data


def test_every_section_of_the_schema_is_known_to_hold_facts_or_not() -> None:
    schema = json.loads((top("schema") / "vehicle.schema.json").read_text(encoding="utf-8"))
    known = [*fp.BY_ID, *fp.WHOLE, *fp.NO_FACTS]
    assert sorted(known) == sorted(schema["properties"])
    by_id = {name for name, spec in schema["properties"].items() if spec.get("additionalProperties")}
    assert by_id - set(fp.NO_FACTS) == set(fp.BY_ID)


@settings(deadline=None)
@given(st.data())
def test_an_edit_of_any_leaf_changes_the_fingerprint_of_its_block_alone(draw: st.DataObject) -> None:
    before = data(draw.draw(st.sampled_from(RECORDS)))
    pointer = draw.draw(st.sampled_from(leaves(before)))
    old = before
    for step in pointer:
        old = old[step]
    new = draw.draw(WORDS.filter(lambda text: text.split() != str(old).split()))
    found = changed_since(put(before, pointer, new), fingerprints(before))
    assert found == Changes(changed=tuple(block_of(pointer)))


@pytest.mark.parametrize(("flow", "width"), [(False, 60), (False, 400), (None, 80), (None, 200)])
@pytest.mark.parametrize("path", RECORDS[:4])
def test_layout_order_of_keys_and_comments_do_not_count(path: Path, flow: bool | None, width: int) -> None:
    before = data(path)
    after = restyled(before, flow=flow, width=width)
    assert list(after) == sorted(before) != list(before)
    assert fingerprints(after) == fingerprints(before)
    assert not changed_since(after, fingerprints(before))


def test_blocks_stand_in_the_order_of_the_record() -> None:
    typed = {"parts": {"b": {}, "a": {}}, "vehicle": {}, "format": "1", "areas": {"dash": {}}}
    assert list(fingerprints(typed)) == ["parts/b", "parts/a", "vehicle", "areas/dash"]


def test_what_is_new_and_gone_is_named() -> None:
    before = {"vehicle": {"make": "A"}, "parts": {"a": {"x": "1"}, "b": {"x": "1"}}}
    after = {"vehicle": {"make": "A"}, "parts": {"b": {"x": "2"}, "c": {"x": "1"}}}
    found = changed_since(after, fingerprints(before))
    assert found == Changes(("parts/b",), ("parts/c",), ("parts/a",))
    assert (found.count, bool(found), bool(Changes())) == (3, True, False)


def test_it_is_the_sha_256_of_the_canonical_json() -> None:
    written = '{"a":["x y","z"],"b":"é"}'
    expected = hashlib.sha256(written.encode()).hexdigest()[:8]
    assert fingerprint({"b": "é", "a": ["x  y\n", "z"]}) == expected == "6124002f"


@pytest.mark.parametrize("one", [{"a": "1", "b": ["x", "y"]}])
@pytest.mark.parametrize(
    "other", [{"a": "1", "b": ["y", "x"]}, {"a": "1", "b": "x y"}, {"a": "1"}, {"a": "1", "c": ["x", "y"]}]
)
def test_the_order_of_a_list_and_the_names_of_keys_count(one: Any, other: Any) -> None:
    assert fingerprint(one) != fingerprint(other)


@pytest.mark.parametrize("odd", [None, "text", [], {"parts": "text", "openings": None}])
def test_data_of_another_shape_has_no_blocks(odd: Any) -> None:
    assert fingerprints(odd) == {}
