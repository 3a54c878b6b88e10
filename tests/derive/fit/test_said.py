"""What fit says is in the catalogue: an entry for each word of a record that stands in a code, and lengths as the language writes them."""

import json
from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path
from typing import Any, get_args

import pytest

from fitting import CAR
from making import record
from undertrim.derive.fit.duties import Fate
from undertrim.derive.fit.lengths import both
from undertrim.derive.fit.margins import Check, amount
from undertrim.derive.fit.verdict import KINDS, Fit, Kind, decide, stopped
from undertrim.derive.kinds import required
from undertrim.publish.facts.fit import VERDICTS
from undertrim.record.model import Blank, Bolts
from undertrim.record.model.kinds.receiver import ReceiverOpening
from undertrim.record.model.kinds.speaker import SpeakerOpening
from undertrim.words import Language, message, say
from undertrim.words.catalogue import english

SCHEMAS = Path(__file__).parents[3] / "schema"


def enums(field: str) -> Iterator[str]:
    """All words that a field of any schema may have."""
    for path in SCHEMAS.rglob("*.schema.json"):
        if path.name != "published.schema.json":
            yield from _words(json.loads(path.read_text(encoding="utf-8")), field)


def _words(schema: Any, field: str) -> Iterator[str]:
    if isinstance(schema, list):
        for one in schema:
            yield from _words(one, field)
    elif isinstance(schema, dict):
        for key, value in schema.items():
            if key == field and isinstance(value, dict):
                yield from value.get("enum", value.get("items", {}).get("enum", ()))
            if key != "published":  # what pages are given, not what a record says
                yield from _words(value, field)


@pytest.mark.parametrize(
    ("field", "room", "code", "without"),
    [
        ("alters", "altering", "{}", ()),
        ("channel", "channels", "{}", ()),
        ("outputs", "levels", "{}", ()),
        ("output", "levels", "{}", ("unknown",)),  # which nobody matches
        ("outputs", "fit-receiver", "get-{}", ()),
        ("turn_on", "fit-receiver", "turn-on-{}", ()),
        ("kit", "openings", "kit-{}", ()),
        ("fed_through", "fit-speaker", "fed-{}", ("direct",)),  # what is simply joined has no note
        ("fed_through", "speaker-shown", "channel-{}", ("direct",)),
        ("datum", "fit", "measured-from-{}", ()),
        ("datum", "drawn-fit", "face-{}", ()),
    ],
)
def test_each_word_of_a_record_that_stands_in_a_code_has_its_entry(
    field: str, room: str, code: str, without: tuple[str, ...]
) -> None:
    found = set(enums(field)) - set(without)
    assert found
    assert {code.format(word) for word in found} <= english(room).keys()


def test_each_blank_verdict_and_fate_has_its_entry() -> None:
    assert {*Blank} <= english("facts").keys()
    assert {fate for fate in Fate if fate is not Fate.KEPT} <= english("duties").keys()
    assert VERDICTS.keys() == set(get_args(Kind))


def decided(kind: Kind, parts: tuple[str, ...]) -> Fit:
    verdict = {"does-not-fit": "fails", "marginal": "marginal", "unknown": "unknown"}.get(kind, "fits")
    return decide("id", "Name", [Check("depth", "Depth", verdict, margin=2.0, uncertainty=0.5)], parts)  # type: ignore[arg-type]


@pytest.mark.parametrize("kind", KINDS)
def test_each_headline_says_its_verdict_with_and_without_what_goes_between(kind: Kind) -> None:
    words, why = kind.removesuffix("-with").replace("-", " "), "Depth: 2 mm (0.079 in) to spare, ± 0.5 mm (0.02 in)"
    holds = kind in ("fits", "fits-with")
    if kind != "fits-with":
        assert say(decided(kind, ()).headline) == (words if holds else f"{words}: {why}")
    if kind != "fits":
        assert say(decided(kind, ("Ring",)).headline) == f"{words} with Ring{'' if holds else f': {why}'}"


def test_what_stops_is_said_before_the_verdict_by_size() -> None:
    found = stopped(decided("fits", ()), [message("duties/no-lead"), message("duties/lead-unknown")])
    assert say(found.headline) == (
        "STOP: not a plain replacement: the receiver has no lead for it; "
        "whether the receiver has a lead for it is not recorded. By size and joint: fits"
    )
    assert (found.kind, found.bare) == ("stop", decided("fits", ()).headline)


def test_a_length_has_the_decimal_mark_of_the_language() -> None:
    comma = Language("xx", decimal_mark=",")
    assert (say(both(16.5)), say(both(16.5), comma)) == ("16.5 mm (0.65 in)", "16,5 mm (0,65 in)")
    assert say(amount(-0.125, 0.7071), comma) == "0,12 mm (0,005 in) short, ± 0,71 mm (0,028 in)"
    assert both(16.501) == both(16.499)  # what is printed alike is the same value


def test_each_fact_that_an_opening_wants_has_a_name_and_says_what_to_do() -> None:
    made, facts = record(CAR), {"fed_through": "unknown", "area": "front-door"}
    seat = SpeakerOpening("door", "Door", (), **facts)  # type: ignore[arg-type]
    turned = replace(seat, bolts=Bolts("circle", 4, angle=Blank.UNKNOWN))
    for opening in (seat, turned, ReceiverOpening("dash", "Dash", ())):
        found = list(required(made, opening))
        assert all(say(fact.name) and (fact.known or say(fact.to_do)) for fact in found)
    assert {fact.key for fact in required(made, turned)} >= {"bolts/angle", "fed_through", "crash_sensor", "depth"}
