"""The one text of a visit: read and written, over all shipped records and their stock."""

from functools import cache
from pathlib import Path
from urllib.parse import parse_qsl

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from making import record
from undertrim.check.shelf import stock
from undertrim.derive import cars
from undertrim.derive.fit.answers import Vehicle
from undertrim.derive.fit.clearances import clearances
from undertrim.derive.fit.stock import NOTHING, Gear, Stocked
from undertrim.derive.procedure.planning import targets
from undertrim.derive.visit import text
from undertrim.derive.visit.between import Chosen, kinds, suiting
from undertrim.derive.visit.understanding import understood
from undertrim.derive.visit.visit import Visit
from undertrim.record.model import VehicleRecord
from undertrim.record.store import Workspace
from undertrim.words import say

ROOT = Path(__file__).parents[3]


@cache
def shipped() -> list[Vehicle]:
    place = Workspace(ROOT)
    shelf = stock(place)
    entries = [place.load(path) for path in place.files([ROOT / "records" / "vehicles"])]
    return [
        Vehicle(entry.record, entry.address, shelf, clearances())
        for entry in entries
        if isinstance(entry.record, VehicleRecord)
    ]


@st.composite
def visits(draw: st.DrawFn) -> Visit:
    """Any visit to a shipped vehicle that is so, with an opening or more in every such car."""
    vehicle = draw(st.sampled_from(shipped()))
    about = vehicle.record
    some = draw(st.sets(st.sampled_from(list(targets(about))), max_size=4))
    worked = {target.job for target in some}
    asked = cars.variants(about)
    answers = {name: draw(st.sampled_from(list(asked[name].choices))) for name in asked if draw(st.booleans())}
    among = cars.assignments(about, answers)
    absent = {name for name in worked if not any(about.jobs[name].when.holds(car) for car in among)}
    chosen = tuple(target for target in targets(about) if target in some and target.job not in absent)
    names = [name for name in about.openings if name in worked - absent]
    gear = {
        name: draw(st.sampled_from(vehicle.stock.taken(about.openings[name])))
        for name in draw(st.sets(st.sampled_from(names)) if names else st.just(set()))
    }
    known = Vehicle(about, vehicle.address, vehicle.stock, vehicle.usual, gear)
    between: dict[str, Chosen] = {}
    for name in names:
        held: dict[str, tuple[Gear, ...]] = {}
        for kind, one in kinds(about.openings[name]).items():
            if draw(st.booleans()):
                suit = suiting(known, about.openings[name], one, among)
                some_of = tuple(item for item in suit if draw(st.booleans()))
                held |= {kind: some_of} if kind != "leads" else {kind: some_of[:1]} if some_of else {}
        between |= {name: held} if held else {}
    return Visit(vehicle, chosen, answers, gear, between)


@settings(deadline=None, max_examples=150)
@given(visits(), st.randoms(use_true_random=False))
def test_what_is_written_reads_as_the_same_visit_in_any_order(made: Visit, chance: object) -> None:
    written = text.write(made)
    read = understood(made.known, text.parse(written))
    assert (read.said, read.absent) == ((), ())
    assert same(read.visit, made)
    name, sign, rest = written.partition("?")
    words = rest.split("&")
    getattr(chance, "shuffle")(words)  # noqa: B009 - a random.Random, which hypothesis draws
    assert text.write(understood(made.known, text.parse(name + sign + "&".join(words))).visit) == written


def same(one: Visit, other: Visit) -> bool:
    """The same visit; pieces that stand between are a set."""
    held = [
        {name: {kind: {item.id for item in items} for kind, items in by.items()} for name, by in made.between.items()}
        for made in (one, other)
    ]
    return (
        held[0] == held[1]
        and (one.targets, one.answers, one.called) == (other.targets, other.answers, other.called)
        and one.gear == other.gear
    )


@settings(deadline=None, max_examples=50)
@given(visits())
def test_a_browser_reads_the_same_words(made: Visit) -> None:
    """As `URLSearchParams` decodes (WHATWG URL, section 5.1), here by the form decoder of the standard library."""
    _, _, rest = text.write(made).partition("?")
    asked = text.parse(text.write(made))
    words = [(word, value) for word, value in parse_qsl(rest, strict_parsing=bool(rest)) if word != "jobs"]
    assert tuple(words) == asked.words


TWINS = record("""
    variants:
      dash: {ask: Which one, choices: {round: {label: Round}, square: {label: Square}}}
      jobs: {ask: What is it for, choices: {taxi: {label: Taxi}, van: {label: Van}}}
    parts:
      radio: {when: {dash: round}}
      panel: {each: [left, right], when: {jobs: van}}
    openings:
      dash: {behind: [radio]}
      front-door: {each: [left, right], behind: [panel]}
""")
OTTER = Vehicle(TWINS, "brindleway/otter-2014-2018", NOTHING, clearances())


def test_a_name_that_is_two_things_says_which() -> None:
    written = "otter-2014-2018?jobs=dash,front-door@left&dash.choice=round&jobs.choice=van"
    read = understood(OTTER, text.parse(written))
    assert (read.said, text.write(read.visit)) == ((), written)
    (said,) = understood(OTTER, text.parse("otter-2014-2018?dash=round")).said
    expected = "'dash' is a variant and an opening: write dash.choice for which car it is, dash.gear for what goes in"
    assert say(said) == expected


def test_all_sides_are_written_as_one() -> None:
    read = understood(OTTER, text.parse("otter-2014-2018?jobs=front-door@right,front-door@left"))
    assert text.write(read.visit) == "otter-2014-2018?jobs=front-door"


def test_whatever_an_id_is_made_of_is_written_so_that_it_reads_the_same() -> None:
    gear = Stocked("weir&co=é+1,2#3?", shipped()[0].stock.items[0].facts)
    written = text.write(Visit(OTTER, gear={"front-door": gear}))
    assert written == "otter-2014-2018?front-door=weir%26co%3D%C3%A9%2B1%2C2%233%3F"
    assert text.parse(written).words == (("front-door", gear.id),)


def test_a_visit_without_words_is_the_vehicle() -> None:
    assert text.write(Visit(OTTER)) == "otter-2014-2018"
    assert text.write(Visit(OTTER, name="brindleway/otter-2014-2018")) == "brindleway/otter-2014-2018"


@pytest.mark.parametrize(
    ("typed", "vehicle", "words"),
    [
        ("ot%74er?a=%C3%A9", "otter", (("a", "é"),)),  # RFC 3986, section 2.5: UTF-8, then percent
        ("otter?a=b+c", "otter", (("a", "b+c"),)),  # a plus is a sub-delimiter (section 2.2), no blank
        ("otter?a=b%2Cc&%61=b,c", "otter", (("a", "b,c"),)),
        ("otter?&&a=b&", "otter", (("a", "b"),)),
        ("otter?a=b=c", "otter", (("a", "b=c"),)),
    ],
)
def test_letters_are_percent_encoded(typed: str, vehicle: str, words: tuple[tuple[str, str], ...]) -> None:
    asked = text.parse(typed)
    assert (asked.vehicle, asked.words, asked.said) == (vehicle, words, ())


@pytest.mark.parametrize(
    ("typed", "said"),
    [
        ("otter?radio", "'radio' has no value: write radio=VALUE"),
        ("otter?a=%FF", "'a=%FF' is not encoded as UTF-8: write it anew"),
        ("otter?a=b&a=c", "'a' is 'b' and 'c': say one of them"),
    ],
)
def test_what_is_no_word_is_said(typed: str, said: str) -> None:
    assert [say(one) for one in text.parse(typed).said] == [said]
