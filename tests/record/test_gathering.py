"""What a move to short forms puts on one line, and what it leaves since a comment or its length stands in the way."""

from pathlib import Path

import pytest

from undertrim.record.migrations import gathering, grouping_functions, shortening, side_by_side
from undertrim.record.migrations.marked import comments
from undertrim.record.source import read_text
from undertrim.record.spreading import spread

PLUG = "format: 2\nconnectors:\n  main:\n    at: radio/main\n    view: wires\n    rows: 2\n    columns: 8\n    latch: top\n    pins: {1: ground}\n"


def whole(text: str) -> object:
    return spread(read_text(text, Path("records/vehicles/a/b.yaml"))).data


def test_fields_go_into_the_mapping_that_may_hold_them() -> None:
    made = gathering.gathered(PLUG)
    assert "    at: radio/main\n    face: {view: wires, rows: 2, columns: 8, latch: top}\n    pins:" in made
    assert whole(made) == whole(PLUG)


@pytest.mark.parametrize(
    ("old", "new", "kept"),
    [
        ("    rows: 2\n", "    rows: 2  # counted\n", "face: {view: wires, columns: 8, latch: top}"),
        ("    rows: 2\n", "    # counted\n    rows: 2\n", "face: {view: wires, columns: 8, latch: top}"),
        ("    latch: top\n", "    latch: >-\n      top\n", "face: {view: wires, rows: 2, columns: 8}"),
        ("    rows: 2\n    columns: 8\n    latch: top\n", "", "    view: wires\n"),
        ("    latch: top\n", "    face: {latch: top}\n", "    rows: 2\n    columns: 8\n"),
    ],
)
def test_what_has_a_comment_takes_lines_or_stands_alone_stays(old: str, new: str, kept: str) -> None:
    text = PLUG.replace(old, new)
    made = gathering.gathered(text)
    assert kept in made
    assert whole(made) == whole(text)
    assert comments(made) == comments(text)


def test_a_text_that_brackets_would_cut_is_quoted() -> None:
    text = "format: 2\nruns:\n  x:\n    from: Battery, left\n    to: 'Boot: right'\n    length: 4 m\n"
    made = gathering.gathered(text)
    assert "    way: {from: \"Battery, left\", to: 'Boot: right', length: 4 m}\n" in made
    assert whole(made) == whole(text)


def test_no_line_gets_too_long() -> None:
    text = f"format: 2\nruns:\n  x:\n    from: {'From ' * 12}here\n    to: {'To ' * 25}there\n    length: 4 m\n"
    made = gathering.gathered(text)
    assert max(map(len, made.splitlines())) <= gathering.WIDEST
    assert "    way: {from: " in made
    assert "length: 4 m}\n    to: " in made
    assert whole(made) == whole(text)


FUNCTIONS = """format: 2
functions:
  reverse: {by: wire, note: At the lamp., source: e1}
  mute: {by: absent, source: e1}
  speed: [absent, e1]
  illumination: unknown
  # nobody found it
  wheel-buttons: {by: absent, source: e1}
  camera-video: {by: absent, source: e1}
  camera-feed: {by: absent, source: e1}
"""


def test_functions_of_which_the_same_is_said_are_named_in_a_group() -> None:
    made = grouping_functions.grouped(FUNCTIONS)
    assert made == FUNCTIONS.replace(
        "  mute: {by: absent, source: e1}\n  speed: [absent, e1]\n",
        "  absent: {source: e1, functions: [mute, speed]}\n",
    ).replace(
        "  camera-video: {by: absent, source: e1}\n  camera-feed: {by: absent, source: e1}\n",
        "  absent-2: {by: absent, source: e1, functions: [camera-video, camera-feed]}\n",
    )
    assert whole(made) == whole(FUNCTIONS)
    assert grouping_functions.grouped(made) == made


def test_a_list_says_replaced_and_the_kit_in_its_own_words() -> None:
    text = "format: 2\nparts:\n  radio:\n    release: slide\n    takes: 3 min\n    replaced: yes\n  cap:\n    release: lift\n    replaced: no\nopenings:\n  dash:\n    kind: receiver\n    kit: not-needed\n"
    made = side_by_side.listed(text)
    assert "release: [slide, 3 min, replaced]\n" in made
    assert "    release: lift\n    replaced: no\n" in made
    assert "    kind: [receiver, no kit]\n" in made
    assert whole(made) == whole(text)


def test_a_caution_goes_behind_its_signal_word() -> None:
    text = "format: 2\nparts:\n  radio:\n    cautions:\n      - signal: NOTICE\n        hazard: Soft, and thin.\n        consequence: It tears.\n        avoid: Warm it.\n"
    made = shortening.shortened(text)
    assert '    cautions: {NOTICE: ["Soft, and thin.", It tears., Warm it.]}\n' in made
    assert whole(made) == whole(text)
    other = text.replace("        avoid", "        when: {radio: map}\n        avoid")
    assert "when: {radio: map}" in shortening.shortened(other)
    assert whole(shortening.shortened(other)) == whole(other)
