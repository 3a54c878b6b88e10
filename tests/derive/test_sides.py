"""Left, right and both: which side a reference means and in which order sides are done."""

from making import ids, record


def removed(names: list[str]) -> list[str]:
    return [name.removeprefix("remove:") for name in names if name.startswith("remove:")]


DOORS = """
    parts:
      cap: {each: [left, right]}
      panel: {each: [left, right], after: [cap]}
      speaker: {each: [left, right], replaced: yes, after: [panel]}
    openings:
      door: {each: [left, right], behind: [speaker]}
"""


def test_a_job_for_one_side_takes_only_that_side() -> None:
    assert removed(ids(record(DOORS), "door@left")) == ["cap@left", "panel@left", "speaker@left"]


def test_each_door_is_finished_before_the_next_is_begun() -> None:
    left, right = ([f"{part}@{side}" for part in ("cap", "panel", "speaker")] for side in ("left", "right"))
    assert removed(ids(record(DOORS), "door")) == [*left, *right]


def test_what_both_doors_wait_for_comes_before_either_wherever_it_stands() -> None:
    about = record("""
        parts:
          cap: {each: [left, right]}
          panel: {each: [left, right], after: [cap, sill]}
          glovebox:
          strip:
          sill: {after: [strip]}
        openings:
          door: {each: [left, right], behind: [panel]}
          dash: {behind: [glovebox]}
    """)
    assert removed(ids(about, "door", "dash")) == [
        "strip", "sill", "cap@left", "panel@left", "cap@right", "panel@right", "glovebox",
    ]  # fmt: skip


def test_an_opening_ties_what_stands_before_it_to_one_side() -> None:
    about = record("""
        parts:
          grille: {each: [left, right]}
          speaker: {each: [left, right], replaced: yes}
        openings:
          door: {each: [left, right], behind: [grille, speaker]}
    """)
    assert removed(ids(about, "door")) == ["grille@left", "speaker@left", "grille@right", "speaker@right"]


def test_a_thing_without_sides_waits_for_both() -> None:
    about = record("""
        parts:
          pillar: {each: [left, right]}
          headliner: {after: [pillar]}
        openings:
          roof: {behind: [headliner]}
    """)
    assert removed(ids(about, "roof")) == ["pillar@left", "pillar@right", "headliner"]


def test_a_prerequisite_may_name_its_side() -> None:
    about = record("""
        parts:
          pillar: {each: [left, right]}
          headliner: {after: [{part: pillar, side: right}]}
          panel: {each: [left, right], after: [{part: pillar, side: left}]}
        openings:
          roof: {behind: [headliner]}
          door: {each: [left, right], behind: [panel]}
    """)
    assert removed(ids(about, "roof")) == ["pillar@right", "headliner"]
    assert removed(ids(about, "door@right")) == ["pillar@left", "panel@right"]


def test_a_part_on_one_side_only_is_in_the_way_there_only() -> None:
    about = record("""
        parts:
          fuel-cover: {each: [left]}
          panel: {each: [left, right], after: [fuel-cover]}
        openings:
          quarter: {each: [left, right], behind: [panel]}
    """)
    assert removed(ids(about, "quarter@left")) == ["fuel-cover@left", "panel@left"]
    assert removed(ids(about, "quarter@right")) == ["panel@right"]
