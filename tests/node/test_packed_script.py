"""What is packed for the scripts is whole again on the other side, whatever it is."""

from typing import Any

from hypothesis import given
from hypothesis import strategies as st

from in_node import Run
from undertrim.publish.encoding import compact
from undertrim.publish.packing import packed, unpacked

SCALARS = st.none() | st.booleans() | st.integers(-9, 200) | st.floats(-9, 9, width=16) | st.text(max_size=6)
DATA = st.recursive(SCALARS, lambda inner: st.lists(inner, max_size=5) | st.dictionaries(st.text(max_size=3), inner, max_size=5), max_leaves=40)  # fmt: skip


@given(DATA)
def test_what_was_packed_comes_back(data: Any) -> None:
    assert compact(unpacked(packed(data))) == compact(data)


EXAMPLES: list[Any] = [
    [], {}, "", 0, -1, 2.5, None, True, [1, 2, 3, 4, 7], [-2, -1, 0], [1.5, 2], [True, 1], [[], [[]]], "deep" * 3,
    {"rows": [{"at": "main/1", "car": {"colour": 3}, "no": None}] * 4 + [{"at": "main/1", "car": {"colour": 3}}]},
    {"a": {"a": [0, 1, 0, 1, 0]}, "b": [{"a": [0, 1, 0, 1, 0]}, "main", "main"]}, [[5, 6, 7, 8, 20, 21], [5, 6, 7, 8, 20, 21]],
]  # fmt: skip


def test_a_page_makes_of_it_the_same(run: Run) -> None:
    answers = run("(all) => all.map(packed.unpacked)", [packed(one) for one in EXAMPLES], "packed")
    assert answers == EXAMPLES
    assert list(map(unpacked, map(packed, EXAMPLES))) == EXAMPLES


def test_what_is_said_often_stands_there_once() -> None:
    row = {"function": "illumination", "said": "no lead takes it", "contacts": [{"at": "radio-main/6"}]}
    text = compact(packed([row, {**row, "function": "mute"}] * 20))
    assert all(text.count(word) == 1 for word in ("illumination", "no lead takes it", "contacts", "radio-main/6"))
    assert compact(packed({"steps": list(range(40)) + list(range(50, 90))})) == '[[["steps"]],[],[0,[-4,0,39,50,89]]]'
