"""Which nodes a car has and what comes before what, read off the steps as a tech would."""

from hypothesis import given, settings
from hypothesis import strategies as st

from making import from_data, ids, record
from random_records import Case, records
from undertrim.derive import cars
from undertrim.derive.procedure.cycles import Unreachable
from undertrim.derive.procedure.planning import Planner, targets

VARIANT = """
    variants:
      radio: {ask: Which one, choices: {plain: {label: Plain}, map: {label: Map}}}
"""


def test_prerequisites_come_off_first_and_only_what_is_needed() -> None:
    about = record("""
        parts:
          radio: {replaced: yes, after: [surround]}
          glovebox:
          surround: {after: [vent]}
          vent:
        openings:
          dash: {behind: [radio]}
    """)
    assert [name for name in ids(about, "dash") if name.startswith("remove")] == [
        "remove:vent",
        "remove:surround",
        "remove:radio",
    ]


def test_what_hides_a_fastener_comes_off_first() -> None:
    about = record("""
        parts:
          panel:
            held_by:
              - {screw: T20, count: 1, under: cap}
              - {screw: T20, count: 1, under: mat, leave: yes}
          cap:
          mat:
        openings:
          door: {behind: [panel]}
    """)
    assert removed(ids(about, "door")) == ["cap", "panel"]


def test_a_part_that_is_not_fitted_is_passed_over_in_after_behind_and_routes() -> None:
    about = record(
        VARIANT,
        """
        parts:
          brace: {when: {radio: map}}
          cover: {when: {radio: plain}}
          long-way: {takes: 30 min}
          bezel: {after: [brace], after_any: [{above: [cover], below: [long-way]}]}
          radio: {replaced: yes, after: [bezel]}
          box: {replaced: yes, when: {radio: map}}
        openings:
          dash: {behind: [radio, box]}
    """,
    )
    off = {choice: removed(ids(about, "dash", radio=choice)) for choice in ("plain", "map")}
    assert off["plain"] == ["cover", "bezel", "radio"]
    assert off["map"] == ["brace", "bezel", "radio", "box"]  # nothing is above the bezel: that way is open


def removed(names: list[str]) -> list[str]:
    return [name.removeprefix("remove:") for name in names if name.startswith("remove:")]


def test_a_conditional_prerequisite_counts_only_in_its_cars() -> None:
    about = record(
        VARIANT,
        """
        parts:
          knee:
          cover: {after: [{part: knee, when: {radio: map}}]}
        openings:
          dash: {behind: [cover]}
    """,
    )
    assert removed(ids(about, "dash", radio="map")) == ["knee", "cover"]
    assert removed(ids(about, "dash", radio="plain")) == ["cover"]


def test_what_moves_over_to_an_opening_comes_off_with_its_job() -> None:
    about = record("""
        parts:
          radio: {replaced: yes}
          climate: {goes_to: dash}
          grille: {each: [left, right], goes_to: door}
          speaker: {each: [left, right], replaced: yes}
        openings:
          dash: {behind: [radio]}
          door: {each: [left, right], behind: [speaker]}
    """)
    assert removed(ids(about, "dash")) == ["radio", "climate"]
    assert removed(ids(about, "door@right")) == ["grille@right", "speaker@right"]


@settings(deadline=None, max_examples=60)
@given(records())
def test_every_removal_has_its_prerequisites_off(case: Case) -> None:
    planner = Planner(case.record)
    for car in cars.assignments(case.record):
        layout = planner.layout(car)
        for target in targets(case.record):
            try:
                made = planner.plan([target], car)
            except Unreachable:
                continue
            done: set[str] = set()
            for step in made.steps:
                if step.kind in ("prepare", "remove"):
                    assert step.node
                    assert layout.graph.before[step.node.id] <= done
                    for choice in layout.graph.any_of.get(step.node.id, ()):
                        assert any(route <= done for route in choice)
                    done.add(step.node.id)


@settings(deadline=None, max_examples=60)
@given(st.data(), records())
def test_a_part_nobody_needs_changes_no_id_and_no_order(data: st.DataObject, case: Case) -> None:
    stranger = {"held_by": [{"clip": "push", "count": "2"}], "each": ["left", "right"], "needs": {"bonnet": "open"}}
    parts = list(case.data["parts"].items())
    parts.insert(data.draw(st.integers(0, len(parts))), ("stranger", stranger))
    grown = Planner(from_data({**case.data, "parts": dict(parts)}))
    before = Planner(case.record)
    old = [step.id for step in before.catalogue()]
    assert [step.id for step in grown.catalogue() if step.id in old] == old
    for car in cars.assignments(case.record):
        try:
            plans = [planner.plan(targets(case.record), car).steps for planner in (before, grown)]
        except Unreachable:
            continue
        assert [step.id for step in plans[0]] == [step.id for step in plans[1]]
