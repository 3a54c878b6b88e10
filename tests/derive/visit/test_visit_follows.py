"""What follows from a visit, and that what somebody chose to stand between goes into all of it."""

from dataclasses import replace
from pathlib import Path

import pytest

from undertrim.check.shelf import stock
from undertrim.derive.fit.answers import Vehicle, answer
from undertrim.derive.fit.clearances import clearances
from undertrim.derive.fit.stock import Stock
from undertrim.derive.procedure.planning import Planner, targets
from undertrim.derive.visit import text
from undertrim.derive.visit.understanding import NotSo, visit
from undertrim.derive.visit.visit import Visit
from undertrim.publish.facts.visit import of
from undertrim.record.lookup import vehicle_file
from undertrim.record.model import Face, VehicleRecord
from undertrim.record.model.kinds.receiver import KitGear
from undertrim.record.store import Workspace
from undertrim.record.units import Quantity, parse
from undertrim.words import say

PLACE = Workspace(Path(__file__).parents[3])
SHELF = stock(PLACE)
BOTH = "finch-2014-2018?jobs=dash,front-door&radio=map&dash=skerrowe-broadside&front-door=tidewrack-haven-65"


def made(words: str) -> Visit:
    asked = text.parse(words)
    entry = PLACE.load(vehicle_file(PLACE, asked.vehicle))
    assert isinstance(entry.record, VehicleRecord)
    return visit(Vehicle(entry.record, entry.address, SHELF, clearances()), asked)


def test_the_steps_are_those_of_the_planner() -> None:
    one = made(BOTH)
    plan = Planner(one.record).plan(one.targets, {"radio": "map"})
    assert [step.id for step in one.steps] == [step.id for step in plan.steps]
    assert {step.section for step in one.after_care} <= {"restore", "try", "after"}
    assert one.after_care


def test_cars_left_open_are_covered_and_counted_apart() -> None:
    one = made("finch-2014-2018?jobs=dash")
    assert [len(total.cars) for total in one.totals] == [1, 1]
    plain, with_map = one.totals
    assert plain.time.minutes < with_map.time.minutes
    assert {step.id for plan in one.plans for step in plan.steps} == {step.id for step in one.steps}


def test_the_verdicts_are_those_of_fit_with_all_gear_of_the_visit() -> None:
    one = made(BOTH)
    found = {item.opening.id: item.fits[0] for item in one.verdicts}
    assert found["dash"].checks
    assert found["dash"].parts == (*(item.piece for item in one.parts(one.record.openings["dash"])),)[::-1]
    dash = answer(one.vehicle, one.record.openings["dash"], [one.gear["dash"]], {"radio": "map"})
    assert found["dash"] == dash[0].fits[0]


def test_what_stands_between_follows_and_can_be_chosen() -> None:
    usual = made(BOTH)
    (joined,) = usual.joints
    assert [group.joint.adapter.id for group in joined.groups if group.joint.adapter] == ["skerrowe-h-f14"]
    by_hand = made(f"{BOTH}&dash.harness=none&dash.kit=none")
    (joined,) = by_hand.joints
    assert [group.joint.adapter for group in joined.groups] == [None]
    assert by_hand.parts(by_hand.record.openings["dash"]) == ()
    ordered = {str(item.what.name) for order in by_hand.orders for item in order.order if hasattr(item.what, "name")}
    assert ordered == {"Skerrowe Broadside", "Tidewrack Haven 65"}
    assert [say(item.what) for order in by_hand.orders for item in order.to_get] == ["a kit"]


def test_leads_can_be_chosen_for_a_receiver_left_open() -> None:
    (joined,) = made("finch-2014-2018?jobs=dash&dash.leads=pellworth-cord-12").joints
    assert joined.leads.id == "pellworth-cord-12"


def test_a_kit_is_built_in_its_step_where_the_gear_goes_in_with_it() -> None:
    def built(words: str) -> set[str]:
        return {kit["id"] for step in of(made(words))["steps"] for kit in step["kits"]}

    assert built(BOTH) == {"sandmartin-dk-f14"}
    assert built("finch-2014-2018?jobs=dash") == {"sandmartin-dk-f14"}
    assert built(f"{BOTH}&dash.kit=none") == set()
    assert built("finch-2014-2018?jobs=dash&dash.kit=none") == set()


def test_of_two_kits_the_one_that_the_gear_goes_in_with_is_built() -> None:
    small = Face(parse("120 mm", "length"), parse("60 mm", "length"))
    kit = next(item for item in SHELF.of(KitGear) if item.id == "sandmartin-dk-f14")
    other = replace(kit, id="other", facts=replace(kit.facts, opening=small))
    known = replace(made(BOTH).known, stock=Stock((*SHELF.items, other)))

    def built(words: str) -> list[str]:
        return [kit["id"] for step in of(visit(known, text.parse(words)))["steps"] for kit in step["kits"]]

    assert built(BOTH) == ["sandmartin-dk-f14"]
    assert built("finch-2014-2018?jobs=dash") == ["sandmartin-dk-f14", "other"]


def test_cable_and_fuse_are_in_the_order() -> None:
    amplified = made("finch-2014-2018?jobs=load-side&load-side=pellworth-weald-2")
    brought = [say(thing) for order in amplified.orders for thing in order.used_up]
    assert any("cable" in words for words in brought)
    assert any("fuse" in words for words in brought)


def test_the_plugs_are_those_of_such_a_car_where_a_factory_unit_goes() -> None:
    gant = "gant-1998-2003?jobs=dash"
    whole = {plug.id for plug in made(gant).plugs}
    assert {plug.id for plug in made(f"{gant}&radio=disc").plugs} < whole == set(made(gant).record.connectors)
    assert made("finch-2014-2018?jobs=front-door").plugs == ()


def test_a_visit_without_openings_has_no_steps_of_work() -> None:
    one = made("finch-2014-2018?radio=map")
    assert (one.openings, one.verdicts, one.joints) == ((), (), ())


@pytest.mark.parametrize("name", ["finch-2014-2018", "drover-2015-2020", "plover-2017-2022"])
def test_every_opening_of_a_vehicle_makes_a_visit(name: str) -> None:
    about = made(name)
    for target in targets(about.record):
        try:
            one = made(f"{name}?jobs={target}")
        except NotSo as error:
            pytest.fail(str(error))
        assert one.steps
        assert text.write(one) == f"{name}?jobs={target}"


def blocking(words: str) -> dict[str, tuple[str, str]]:
    """Weight and cars of each thing that stands in the way, by its title."""
    return {item["title"]: (item["weight"], item["when"]) for item in of(made(words))["blockers"]}


def test_gear_that_does_not_fit_stands_in_the_way_once_for_all_cars() -> None:
    assert blocking("gant-1998-2003?jobs=dash&dash=skerrowe-broadside")["Skerrowe Broadside: Radio opening"] == (
        "stop",
        "",
    )
    assert not [title for title in blocking(BOTH) if "Broadside" in title or "Haven" in title]


def test_gear_of_which_nobody_can_say_whether_it_fits_is_unknown() -> None:
    found = blocking("bramble-2019-2023?jobs=dash&dash=skerrowe-broadside")
    assert found["Skerrowe Broadside: Radio opening"] == ("unknown", "")


def test_what_is_lost_is_so_with_the_receiver_that_is_named() -> None:
    keeper, lost = "Tidewrack DI-P17: it keeps what the factory unit also does", "Camera: lost, not a plain replacement"
    left_open, named = (blocking(f"plover-2017-2022?jobs=dash{more}") for more in ("", "&dash=pellworth-brae-10"))
    assert keeper in left_open
    assert lost not in left_open
    assert keeper not in named
    assert named[lost] == ("stop", "Camera fitted")


def test_an_interface_is_needed_for_what_the_receiver_wants_or_has_a_lead_for() -> None:
    one = made("plover-2017-2022?jobs=dash&dash=skerrowe-broadside")
    wants = {need.function for answer in one.verdicts for fit in answer.fits for need in fit.needs}
    leads = {row.function for joined in one.joints for group in joined.groups for row in group.joint.rows if row.lead}
    assert one.functions == frozenset(wants | leads)
    assert wants - leads == set()
    assert leads - wants
    assert made("plover-2017-2022?jobs=dash").functions is None


@pytest.mark.parametrize(
    ("gear", "text"),
    [
        ("", "7 functions come by data, not by wire: switched feed, illumination, reverse, speed, wheel buttons, parking brake, amplifier turn on."),
        ("&dash=skerrowe-broadside", "6 functions come by data, not by wire: switched feed, illumination, reverse, wheel buttons, parking brake, amplifier turn on."),
    ],
)  # fmt: skip
def test_what_comes_by_data_is_told_as_far_as_the_joint_of_the_visit_has_it(gear: str, text: str) -> None:
    found = {item["title"]: item["text"] for item in of(made(f"plover-2017-2022?jobs=dash{gear}"))["blockers"]}
    assert found["Data interface"] == text


def fittings(words: str) -> list[tuple[float, list[str]]]:
    """The minutes and the gear that says none, as the visit's data has them."""
    return [(item["minutes"], item["unsaid"]) for item in of(made(words))["fitting"]]


def test_the_gear_says_how_long_fitting_takes_once_for_each_side() -> None:
    typed = {item.id: item.facts.fitting for item in SHELF.items}
    minutes = {name: takes.value / 60 for name, takes in typed.items() if isinstance(takes, Quantity)}
    names = ("skerrowe-broadside", "sandmartin-dk-f14", "skerrowe-h-f14", "tidewrack-haven-65")
    receiver, kit, harness, speaker = (minutes[name] for name in names)
    assert fittings(BOTH) == [(receiver + kit + harness + 2 * speaker, [])]
    assert fittings(BOTH.replace("front-door&", "front-door@left&")) == [(receiver + kit + harness + speaker, [])]


def test_gear_that_says_nothing_of_it_is_named_and_gear_left_open_takes_no_time() -> None:
    assert fittings("finch-2014-2018?jobs=dash,front-door") == []
    silent = "finch-2014-2018?jobs=front-door&front-door=skerrowe-undertow-65"
    assert {name for _, unsaid in fittings(silent) for name in unsaid} >= {"skerrowe-undertow-65"}
    assert {minutes for minutes, _ in fittings(silent)} == {0}
