"""Lines of a terminal. Oracle: the standard library's `textwrap`, whatever the text."""

import textwrap

import pytest
from hypothesis import given
from hypothesis import strategies as st

from undertrim.publish.terminal.lines import WIDTH, wrapped

TEXTS = st.one_of(
    st.text(st.sampled_from("abc  \t\n\xa0-é—"), max_size=130),
    st.integers(WIDTH - 12, WIDTH + 3).map(lambda size: ("word " * 25)[:size]),
)


@given(TEXTS, st.sampled_from(["", "  ", "    - "]))
def test_a_text_that_has_room_on_one_line_is_as_if_it_were_broken(text: str, first: str) -> None:
    found = textwrap.wrap(
        text, WIDTH, initial_indent=first, subsequent_indent="  ", break_long_words=False, break_on_hyphens=False
    )
    assert wrapped(text, first, "  ") == found


@pytest.mark.parametrize("spare", [0, 1])
def test_a_line_is_as_wide_as_it_may_be(spare: int) -> None:
    assert wrapped("a" * (WIDTH - 4 - spare) + " b", "  ", "") == ["  " + "a" * (WIDTH - 4 - spare) + " b"]
    assert wrapped("a" * (WIDTH - 3) + " b", "  ", "") == ["  " + "a" * (WIDTH - 3), "b"]
