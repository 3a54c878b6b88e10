"""A text is written so that YAML reads it back as it is."""

from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from undertrim.record.source import read_text
from undertrim.record.yaml_text import as_typed

_PIECES = st.sampled_from(
    ["a", "#2", " ", ": ", ":", ", ", "?", "-", "'", '"', "[", "}", "{", "& ", "*", "!", "|", "%", "@", "é", "10", "#"]
)


@given(st.lists(_PIECES, min_size=1, max_size=8).map(lambda parts: "".join(parts).strip()).filter(bool))
@pytest.mark.parametrize("in_brackets", [True, False])
def test_any_text_is_read_back(in_brackets: bool, text: str) -> None:
    written = as_typed(text, in_brackets=in_brackets)
    found = read_text(f"{{a: {written}, b: c}}\n" if in_brackets else f"a: {written}\n", Path("x.yaml"))
    assert found.problems == ()
    assert found.data["a"] == text


@pytest.mark.parametrize("text", ["62 mm", "2016, left-hand drive", "Which radio?", "a/b", "x:y", "C#", "-5 °C"])
def test_a_plain_text_stays_plain(text: str) -> None:
    assert as_typed(text, in_brackets=False) == text
