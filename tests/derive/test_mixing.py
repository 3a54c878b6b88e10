"""Which openings make a visit more than the sum of its jobs, and that such visits are listed."""

from itertools import chain, combinations

from making import record
from page_script import assert_shown_as_planned
from undertrim.derive.procedure.mixing import mixing, regular
from undertrim.derive.procedure.planning import Planner


def test_a_visit_that_shares_a_route_is_listed_by_itself() -> None:
    about = record("""
        parts:
          tray: {takes: 3 min}
          cup: {takes: 2 min}
          surround: {after_any: [{from-above: [tray], from-below: [cup]}]}
          grille: {each: [left, right], after: [tray]}
          panel: {}
        openings:
          dash: {behind: [surround]}
          top: {each: [left, right], behind: [grille]}
          door: {behind: [panel], crash_sensor: no}
    """)
    made = assert_shown_as_planned(about)
    listed = set(made.cars[0].sets)
    assert listed == {
        jobs
        for jobs in map(tuple, subsets_of("dash", "top@left", "top@right", "door"))
        if "dash" in jobs and {"top@left", "top@right"} & set(jobs)
    }
    assert "remove:cup" not in made.cars[0].sets["dash", "top@left", "door"]
    assert "remove:cup" in made.cars[0].singles["dash"]


def subsets_of(*names: str) -> list[tuple[str, ...]]:
    return list(chain.from_iterable(combinations(names, size) for size in range(1, len(names) + 1)))


def test_visits_that_do_not_mix_are_not_listed() -> None:
    about = record("""
        parts:
          tray: {takes: 3 min}
          cup: {takes: 2 min}
          surround: {after_any: [{from-above: [tray], from-below: [cup]}]}
          lamp-trim: {tethers: {lamp: {name: Lamp, kind: plug, circuit: restraint, then: rejoin}}}
          panel: {each: [left, right], after: [lamp-trim]}
        openings:
          dash: {behind: [surround]}
          door: {each: [left, right], behind: [panel]}
    """)
    made = assert_shown_as_planned(about)
    assert made.cars[0].sets == {}


def test_a_part_that_moves_in_one_visit_and_is_refitted_in_another() -> None:
    about = record("""
        parts:
          climate: {goes_to: dash}
          radio: {replaced: yes}
          centre: {replaced: yes, after: [climate]}
          cap: {}
        openings:
          dash: {behind: [radio]}
          middle: {behind: [centre]}
          foot: {behind: [cap]}
    """)
    made = assert_shown_as_planned(about)
    assert set(made.cars[0].sets) == {("dash", "middle"), ("dash", "middle", "foot")}


def test_a_factory_part_that_stays_out_in_one_visit_and_goes_back_in_another() -> None:
    about = record("""
        parts:
          radio: {replaced: yes}
          centre: {replaced: yes, after: [radio]}
          cap: {}
        openings:
          dash: {behind: [radio]}
          middle: {behind: [centre]}
          foot: {behind: [cap]}
    """)
    made = assert_shown_as_planned(about)
    assert "refit:radio" in made.cars[0].singles["middle"]
    assert set(made.cars[0].sets) == {("dash", "middle"), ("dash", "middle", "foot")}


RESTRAINT = """
    variants:
      seats: {ask: Which one, choices: {plain: {label: Plain}, heated: {label: Heated}}}
    parts:
      lamp-trim: {tethers: {lamp: {name: Lamp, kind: plug, circuit: restraint, then: rejoin}}}
      frame: {after: [{part: lamp-trim, when: {seats: heated}}]}
      cap:
    openings:
      dash: {behind: [lamp-trim]}
      middle: {behind: [frame]}
      foot: {behind: [cap]}
"""


def test_a_part_that_goes_back_before_the_tests_in_some_cars_only() -> None:
    made = assert_shown_as_planned(record(RESTRAINT))
    assert ("dash", "middle", "foot") in made.cars[0].sets
    assert made.cars[1].sets == {}


def test_a_restraint_plug_on_a_part_that_moves_over_in_some_visits() -> None:
    assert_shown_as_planned(
        record("""
        parts:
          lamp-panel: {goes_to: dash, tethers: {lamp: {name: Lamp, kind: plug, circuit: restraint, then: rejoin}}}
          radio: {replaced: yes, after: [lamp-panel]}
          centre: {replaced: yes, after: [lamp-panel]}
          bracket: {after: [lamp-panel]}
          cap:
        openings:
          dash: {behind: [radio, bracket]}
          middle: {behind: [centre, bracket]}
          foot: {behind: [cap]}
    """)
    )


def test_a_part_without_sides_that_moves_over_at_the_first_side_fitted() -> None:
    assert_shown_as_planned(
        record("""
        parts:
          grille: {each: [left, right], goes_to: door}
          switch: {goes_to: door, after: [grille]}
          speaker: {each: [left, right], replaced: yes}
          radio: {replaced: yes}
        openings:
          door: {each: [left, right], behind: [speaker]}
          dash: {behind: [radio]}
    """)
    )


def test_what_every_visit_needs_anyway_does_not_make_routes_mix() -> None:
    about = record("""
        parts:
          tray: {takes: 3 min, tethers: {lamp: {name: Lamp plug, kind: plug}}}
          cup: {takes: 2 min, tethers: {lamp: {name: Lamp plug, kind: plug}}}
          surround: {after_any: [{from-above: [tray], from-below: [cup]}]}
          panel: {tethers: {windows: {name: Window plug, kind: plug}}}
        openings:
          dash: {behind: [surround]}
          door: {behind: [panel]}
    """)
    planner = Planner(about)
    assert regular(planner, {})
    assert mixing(planner.layout({})) == {"open:dash"}
