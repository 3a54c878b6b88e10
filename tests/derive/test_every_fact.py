"""Every fact of a record at its address: each leads to its value, and what conflicts are about is among them."""

import pytest

from publishing import shipped
from undertrim.derive.evidence.every_fact import ABOUT_OTHERS, things
from undertrim.derive.evidence.facts import fact_at
from undertrim.publish.facts import claimable
from undertrim.record.model import VehicleRecord
from undertrim.record.store import Entry

ENTRIES = shipped()


def record_of(entry: Entry) -> VehicleRecord:
    assert isinstance(entry.record, VehicleRecord)
    return entry.record


@pytest.mark.parametrize("entry", ENTRIES, ids=lambda entry: entry.path.stem)
def test_each_address_leads_to_its_value(entry: Entry) -> None:
    record, seen = record_of(entry), {}
    for thing in things(record):
        for place in thing.facts:
            fact = fact_at(record, place.about)
            assert fact is not None
            assert fact.text == place.text
            assert place.about.startswith(thing.about)
            assert not ABOUT_OTHERS & set(place.about.split("/")[2:])
            seen[place.about] = place.text
    assert len(seen) > 300
    assert {dispute.about for dispute in record.conflicts.values()} <= seen.keys()


def test_a_fact_says_what_it_is_from_its_thing_downwards() -> None:
    finch = next(entry for entry in ENTRIES if entry.path.stem == "finch-2014-2018")
    made = claimable.listed(record_of(finch), finch.address)
    door = next(thing for thing in made["things"] if thing["about"] == "openings/front-door")
    assert door["name"] == "Front door speakers"
    (depth,) = (fact for fact in door["facts"] if fact[0] == "depth/clear")
    assert (made["labels"][depth[1]], depth[2]) == ("Depth, Clear depth", "64 mm")
    names = {thing["about"]: thing["name"] for thing in made["things"]}
    assert names["parts/vent-trim"] == "Upper vent trim"
    assert names["restraint"] == "Restraint system"
    (pin,) = (
        fact
        for thing in made["things"]
        for fact in thing["facts"]
        if thing["about"] == "connectors/radio-main" and fact[0] == "pins/4/colour"
    )
    assert made["labels"][pin[1]].startswith("Pins, 4, ")
