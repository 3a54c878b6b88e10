"""What holds for every visit to every car of any record."""

from itertools import pairwise

from hypothesis import assume, given, settings
from hypothesis import strategies as st

from random_records import Case, records
from undertrim.derive import cars
from undertrim.derive.procedure.cycles import Unreachable
from undertrim.derive.procedure.mixing import regular
from undertrim.derive.procedure.planning import Planner, targets
from undertrim.derive.procedure.steps import SECTIONS
from undertrim.record.model import VehicleRecord


@settings(deadline=None, max_examples=80)
@given(st.data(), records())
def test_the_shape_of_every_visit(data: st.DataObject, case: Case) -> None:
    car = data.draw(st.sampled_from(cars.assignments(case.record)))
    chosen = data.draw(st.lists(st.sampled_from(targets(case.record)), min_size=1, unique=True))
    try:
        made = Planner(case.record).plan(chosen, car)
    except Unreachable:
        assume(False)
        return
    names = [item.id for item in made.steps]
    assert len(names) == len(set(names))
    assert all(item.section in SECTIONS for item in made.steps)
    for one, other in pairwise(made.steps):
        if other.kind == "wait":
            assert one.id == other.id.replace("wait:", "prepare:")
        if other.id == "power:on" and any(
            item.kind == "prepare" and item.state["battery"] == "off" for item in made.steps
        ):
            assert one.kind == "restore"
    assert_all_comes_back(names, case.record)
    assert_no_plug_open_at_power_on(made.steps, case.record, car)


def assert_all_comes_back(names: list[str], about: VehicleRecord) -> None:
    """Whatever came off is refitted or moved over, once; only a part that is replaced may stay out."""
    for name in names:
        kind, _, node = name.partition(":")
        if kind == "remove":
            again = sum(f"{way}:{node}" in names for way in ("refit", "move"))
            assert again == 1 or (again == 0 and about.parts[node.split("@")[0]].replaced == "yes")


def assert_no_plug_open_at_power_on(made: tuple[object, ...], about: VehicleRecord, car: dict[str, str]) -> None:
    undone: set[tuple[str, str]] = set()
    for item in made:
        assert hasattr(item, "tethers")
        for line in getattr(item, "tethers"):  # noqa: B009
            key = (getattr(item, "part") + "@" + getattr(item, "side"), line.tether.id)  # noqa: B009
            if line.tether.circuit == "restraint" and line.act == "undo":
                undone.add(key)
            elif line.act in ("rejoin", "to-gear", "park"):
                undone.discard(key)
        if getattr(item, "id") == "power:on":  # noqa: B009
            left = {name for name, _ in undone if about.parts[name.split("@")[0]].replaced == "no"}
            assert not left, (left, car)


@settings(deadline=None, max_examples=80)
@given(st.data(), records(routes=False))
def test_without_routes_every_visit_is_a_subsequence_of_the_whole(data: st.DataObject, case: Case) -> None:
    planner = Planner(case.record)
    car = data.draw(st.sampled_from(cars.assignments(case.record)))
    layout = planner.layout(car)
    shared = any(len(homes) > 1 for homes in layout.homes.values())  # its plugs end with whichever is fitted first
    assume(planner.ordered and not layout.elsewhere and not shared)
    chosen = data.draw(st.lists(st.sampled_from(targets(case.record)), min_size=1, unique=True))
    visit, whole = ([item.id for item in planner.plan(jobs, car).steps] for jobs in (chosen, targets(case.record)))
    assert visit == [name for name in whole if name in visit]
    if regular(planner, car):
        catalogue = [item.id for item in planner.catalogue()]
        assert whole == [name for name in catalogue if name in whole]
