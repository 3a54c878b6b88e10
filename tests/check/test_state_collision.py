"""States that are gone when they are needed: against every possible order, tried out."""

from itertools import permutations

from fragments import findings, messages
from hypothesis import given, settings
from hypothesis import strategies as st

from undertrim.check.rules import order_cycle, state_collision

NAMES = ("a", "b", "c", "d")
Work = dict[str, tuple[list[str], str]]
"""What each part comes after, and the battery it needs ('' for either)."""

works: st.SearchStrategy[Work] = st.fixed_dictionaries(
    {
        name: st.tuples(
            st.lists(st.sampled_from([*NAMES, "battery"]), max_size=2, unique=True),
            st.sampled_from(["", "", "on", "off"]),
        )
        for name in NAMES
    }
)


def can_be_done(work: Work) -> bool:
    """Whether some order of all parts and the battery meets every prerequisite and every need."""
    return any(goes_well(order, work) for order in permutations([*NAMES, "battery"]))


def goes_well(order: tuple[str, ...], work: Work) -> bool:
    done: set[str] = set()
    for name in order:
        after, needed = work.get(name, ([], ""))
        now = "off" if "battery" in done else "on"
        if not done.issuperset(after) or needed not in ("", now):
            return False
        done.add(name)
    return True


def as_record(work: Work) -> str:
    lines = []
    for name, (after, battery) in work.items():
        fields = f"name: {name}, release: pull"
        fields += f", after: [{', '.join(after)}]" if after else ""
        fields += f", needs: {{battery: {battery}}}" if battery else ""
        lines.append(f"  {name}: {{{fields}}}\n")
    return "parts:\n" + "".join(lines)


@settings(deadline=None, max_examples=300)
@given(works)
def test_a_record_is_blamed_when_no_order_works_and_only_then(work: Work) -> None:
    record = as_record(work)
    blamed = messages(order_cycle, record) + messages(state_collision, record)
    assert bool(blamed) == (not can_be_done(work)), blamed


@settings(deadline=None, max_examples=150)
@given(works)
def test_without_a_circle_every_part_in_the_wrong_is_named(work: Work) -> None:
    record = as_record(work)
    found = findings(state_collision, record)
    if not messages(order_cycle, record):
        wrong = {name for name, (_, needed) in work.items() if needed == "on" and "battery" in above(name, work)}
        assert {finding.pointer for finding in found} == {("parts", name, "needs", "battery") for name in wrong}


def above(name: str, work: Work) -> set[str]:
    """Everything that comes before a part, and so before the battery is off again."""
    found: set[str] = set()
    left = [name]
    while left:
        after, needed = work.get(left.pop(), ([], ""))
        fresh = {*after, *(["battery"] if needed == "off" else [])} - found
        found |= fresh
        left.extend(fresh)
    return found


def test_each_side_and_car_is_the_same_collision() -> None:
    piece = (
        "vehicle:\n  make: Brindleway\n  model: Otter\n  built: {from: 2014-01, to: 2018-01}\n"
        "  drive_side: [left, right]\n  high_voltage: no\n"
        "parts:\n"
        "  lid: {name: Lid, release: lift, each: [left, right], after: [trim], needs: {battery: on}}\n"
        "  trim: {name: Trim, release: pull, each: [left, right], when: {drive-side: right},"
        " tethers: {lamp: {name: Lamp plug, kind: plug}}}\n"
    )
    (found,) = findings(state_collision, piece)
    assert found.message == (
        "'lid' needs battery on where drive-side=right, but comes after 'battery', which sets battery off"
    )
    assert found.hint.startswith("lid -> trim -> battery, each needs the next first")


def test_routes_that_all_lead_over_the_battery_collide_and_one_that_does_not_is_enough() -> None:
    piece = (
        "parts:\n"
        "  lid: {{name: Lid, release: lift, needs: {{battery: on}},"
        " after_any: [{{one: [a], two: [{way}]}}]}}\n"
        "  a: {{name: A, release: pull, after: [battery]}}\n"
        "  b: {{name: B, release: pull, needs: {{battery: off}}}}\n"
        "  c: {{name: C, release: pull}}\n"
    )
    assert messages(state_collision, piece.format(way="b")) == [
        "'lid' needs battery on, but comes after 'battery', which sets battery off"
    ]
    assert messages(state_collision, piece.format(way="c")) == []


def test_a_state_set_only_in_other_cars_is_missing_in_these() -> None:
    piece = (
        "vehicle:\n  make: Brindleway\n  model: Otter\n  built: {from: 2014-01, to: 2018-01}\n"
        "  drive_side: [left, right]\n  high_voltage: no\n"
        "preps:\n"
        "  brake-off: {name: Off, sets: {parking-brake: off}, how: Chock it., when: {drive-side: left}}\n"
        "parts:\n"
        "  cover: {name: Cover, release: lift, needs: {parking-brake: off}}\n"
    )
    assert messages(state_collision, piece) == [
        "'cover' needs parking-brake off where drive-side=right, but nothing sets it"
    ]
    assert messages(state_collision, piece.replace(", when: {drive-side: left}", "")) == []


def test_a_preparation_that_sets_its_own_need_does_not_meet_it() -> None:
    piece = (
        "preps:\n  brake-off: {name: Off, sets: {parking-brake: off}, needs: {parking-brake: off}, how: Let it go.}\n"
    )
    assert messages(state_collision, piece) == ["'brake-off' needs parking-brake off, but nothing sets it"]


def test_everything_that_comes_too_late_is_named() -> None:
    late = "".join(
        f"  {name}: {{name: {name}, release: lift, after: [battery], needs: {{battery: on}}}}\n" for name in NAMES
    )
    places = {finding.pointer[1] for finding in findings(state_collision, f"parts:\n{late}")}
    assert places == set(NAMES)


def test_what_a_plain_circle_explains_is_left_to_its_own_rule() -> None:
    piece = (
        "preps:\n"
        "  battery: {name: Battery off, sets: {battery: off}, how: Undo it., after: [lid]}\n"
        "parts:\n"
        "  lid: {name: Lid, release: lift, after: [cover]}\n"
        "  cover: {name: Cover, release: lift, after: [battery], needs: {battery: on}}\n"
    )
    assert messages(state_collision, piece) == []
    assert messages(order_cycle, piece) == ["'battery' waits for itself: battery -> lid -> cover -> battery"]
