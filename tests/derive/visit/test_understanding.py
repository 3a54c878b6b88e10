"""What is asked for and is not so is said with what would be, and the rest still makes a visit."""

from pathlib import Path

import pytest

from undertrim.check.shelf import stock
from undertrim.derive.fit.answers import Vehicle
from undertrim.derive.fit.clearances import clearances
from undertrim.derive.visit import text
from undertrim.derive.visit.asked import Asked
from undertrim.derive.visit.understanding import NotSo, understood, visit
from undertrim.record.lookup import vehicle_file
from undertrim.record.model import VehicleRecord
from undertrim.record.store import Workspace
from undertrim.words import say

PLACE = Workspace(Path(__file__).parents[3])
SHELF = stock(PLACE)


def vehicle(name: str) -> Vehicle:
    entry = PLACE.load(vehicle_file(PLACE, name))
    assert isinstance(entry.record, VehicleRecord)
    return Vehicle(entry.record, entry.address, SHELF, clearances())


FINCH = vehicle("finch-2014-2018")


def said(words: str, about: Vehicle = FINCH) -> list[str]:
    found = understood(about, text.parse(f"finch-2014-2018?{words}"))
    return [say(one) for one in (*found.said, *found.absent)]


@pytest.mark.parametrize(
    ("words", "message"),
    [
        ("jobs=dsah", "no opening 'dsah' in this record; did you mean 'dash'?"),
        ("jobs=dash@left", "no opening 'dash@left' in this record; openings: dash, front-door,"),
        ("jobs=", "no opening '' in this record; openings: dash, front-door,"),
        ("radoi=map", "'radoi' is no word of this visit; did you mean 'radio'?"),
        ("radio=mapp", "variant 'radio' has no choice 'mapp'; did you mean 'map'?"),
        ("jobs=dash&dash=skerrowe-brodside", "no gear 'skerrowe-brodside' in stock; did you mean 'skerrowe-broadside'?"),
        ("jobs=dash&dash=tidewrack-haven-65", "'tidewrack-haven-65' is no receiver, but a speaker: 'dash' takes a receiver"),
        ("jobs=dash&front-door=tidewrack-haven-65", "'front-door' is no opening of these jobs; openings: dash"),
        ("jobs=dash&front-door.spacer=none", "'front-door' is no opening of these jobs; openings: dash"),
        ("front-door@left=tidewrack-haven-65", "'front-door@left' names one side, and gear goes in at every side that is worked at: write front-door"),
        ("dash.kti=none", "'kti' is nothing that can be chosen at 'dash'; did you mean 'kit'?"),
        ("dash.spacer=none", "'spacer' is nothing that can be chosen at 'dash'; words behind an opening: gear, kit, harness, interface, converter, leads"),
        ("dash.kit=pellworth-dale-d2", "'pellworth-dale-d2' does not suit 'dash'; kits that suit: sandmartin-dk-f14, none"),
        ("dash.kit=sandmartin-dk-f15", "no gear 'sandmartin-dk-f15' in stock; did you mean 'sandmartin-dk-f14'?"),
        ("dash.kit=skerrowe-h-f14", "'skerrowe-h-f14' is no kit, but a harness; kits that suit: sandmartin-dk-f14, none"),
        ("dash.choice=x", "no variant 'dash' in this record; variants: radio,"),
        ("rdaio.choice=map", "no variant 'rdaio' in this record; did you mean 'radio'?"),
        ("dash=skerrowe-broadside&dash.leads=pellworth-cord-12", "'pellworth-cord-12' does not suit 'dash'; lead sets that suit: skerrowe-lead-16"),
        ("dash.leads=skerrowe-lead-16,pellworth-cord-12", "'dash.leads' is 'skerrowe-lead-16' and 'pellworth-cord-12': say one of them"),
        ("dash=skerrowe-broadside&dash.leads=none", "no gear 'none' in stock; lead sets: skerrowe-lead-16"),
        ("radio=map&radio.choice=plain", "'radio' is 'map' and 'plain': say one of them"),
        ("dash=skerrowe-broadside&dash.gear=skerrowe-chart-2", "'dash' is 'skerrowe-broadside' and 'skerrowe-chart-2': say one of them"),
    ],
)  # fmt: skip
def test_what_is_not_so_is_said(words: str, message: str) -> None:
    (found,) = said(words)
    assert found.startswith(message)


def test_all_of_it_is_said_and_the_rest_is_a_visit() -> None:
    found = understood(FINCH, text.parse("finch-2014-2018?jobs=dash,rear-dor&radio=map&colour=red&dash.kit=none"))
    assert [one.code for one in found.said] == ["visit/no-word", "jobs/no-opening"]
    assert text.write(found.visit) == "finch-2014-2018?jobs=dash&radio=map&dash.kit=none"


def test_some_gear_is_gear_left_open() -> None:
    found = understood(FINCH, text.parse("finch-2014-2018?dash=some"))
    assert (found.said, text.write(found.visit)) == ((), "finch-2014-2018?jobs=dash")


def test_an_opening_that_no_such_car_has_is_said_with_those_that_have_it() -> None:
    about = vehicle("drover-2015-2020")
    name, when = next((name, one.when) for name, one in about.record.openings.items() if one.when.clauses)
    variant, choices = when.clauses[0]
    other = next(choice for choice in about.record.variants[variant].choices if choice not in choices)
    (found,) = said(f"jobs={name}&{variant}={other}", about)
    assert f"has '{about.record.openings[name].name}'; it is there with '{variant}={choices[0]}'" in found


@pytest.mark.parametrize(
    ("asked", "message"),
    [
        (Asked(jobs=("dash",), gear=("tidewrack-haven-65",)), "no opening of these jobs takes a speaker"),
        (Asked(jobs=("front-door", "rear-door"), gear=("pellworth-cove-40",)), "'pellworth-cove-40' could go into several openings"),
        (Asked(jobs=("dash",), gear=("skerrowe",)), "no gear 'skerrowe' in stock; gear:"),
        (Asked(jobs=("front-door",), kits=("sandmartin-dk-f14",)), "no kit 'sandmartin-dk-f14' in stock suits these jobs"),
    ],
)  # fmt: skip
def test_gear_without_its_opening_must_have_one_place(asked: Asked, message: str) -> None:
    with pytest.raises(NotSo) as caught:
        visit(FINCH, asked)
    assert say(caught.value.said).startswith(message)


def test_gear_and_kits_find_their_place() -> None:
    found = visit(FINCH, Asked(jobs=("dash", "rear-door"), gear=("pellworth-cove-40",), kits=("sandmartin-dk-f14",)))
    expected = "finch-2014-2018?jobs=dash,rear-door&dash.kit=sandmartin-dk-f14&rear-door=pellworth-cove-40"
    assert text.write(found) == expected


def test_words_from_two_sides_must_agree() -> None:
    one = text.parse("finch-2014-2018?radio=map&jobs=dash")
    agreeing = one.also(Asked(jobs=("front-door",), words=(("radio", "map"),)))
    assert (agreeing.jobs, agreeing.said) == (("dash", "front-door"), ())
    (found,) = one.also(Asked(words=(("radio", "plain"),))).said
    assert say(found) == "'radio' is 'map' and 'plain': say one of them"
