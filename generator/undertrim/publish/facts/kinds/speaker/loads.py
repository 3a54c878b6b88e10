"""The loads that a form reckons a speaker with."""

from collections.abc import Iterator
from typing import Any

from undertrim.derive.fit.answers import Vehicle, kinds
from undertrim.derive.fit.channel_load import Driver, drivers
from undertrim.derive.fit.joined import Joined, Part, join
from undertrim.publish.facts.plain import plain
from undertrim.record.model.kinds.speaker import SpeakerOpening

Data = dict[str, Any]


def loads(vehicle: Vehicle, opening: SpeakerOpening) -> Iterator[Data]:
    """What drives a speaker and what is joined to it, in each kind of car that has the opening."""
    for car in kinds(vehicle, opening, {}):
        if opening.when.holds(car):
            joined = join(vehicle.record, opening, car, None, {})
            for driver in drivers(vehicle.record, car, {}):
                yield {"clauses": {name: [choice] for name, choice in car.items()}, **load_data(driver, joined)}


def load_data(driver: Driver, joined: Joined) -> Data:
    """One load as the script reckons it; the first part is the speaker asked about."""
    return {
        "what": driver.what,
        "least": plain(driver.least),
        "parts": [_part(part) for part in joined.parts],
        "unplaced": list(joined.unplaced),
    }


def _part(part: Part) -> Data:
    impedances = {"impedance": plain(part.impedance), "factory": plain(part.factory)}
    return {"name": part.name, **impedances, "fed_through": part.fed_through}
