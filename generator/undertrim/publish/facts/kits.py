"""How kits in stock are built up, as lines of the step that builds them."""

from collections.abc import Mapping
from typing import Any

from undertrim.derive.cutting import may_go
from undertrim.derive.fit.stock import Stock
from undertrim.publish.facts import words
from undertrim.record.gear import Assembly
from undertrim.record.model import VehicleRecord, When
from undertrim.record.model.kinds.receiver import KitGear
from undertrim.words import Value, message, say

Data = dict[str, Any]


def built(record: VehicleRecord, address: str, shelf: Stock, opening: str) -> list[Data]:
    """The kits that are made for an opening, each with its steps at the bench.

    A step that is for some cars alone carries them, as does a kit.
    """
    found = []
    written = record.openings[opening].written if opening in record.openings else opening
    for item in shelf.of(KitGear):
        places = [place for place in item.facts.suits if (place.vehicle, place.opening) == (address, written)]
        allowed = opening in record.openings and may_go(record, record.openings[opening], item.facts.alters)
        if places and allowed:
            found.append(
                {
                    "id": item.id,
                    "name": item.name,
                    **_cars(record, places[0].when if len(places) == 1 else When()),
                    "lines": [
                        {"text": line.do, "moves": _moving(record, line), **_cars(record, line.when)}
                        for line in item.facts.assembly
                    ],
                }
            )
    return found


def _moving(record: VehicleRecord, line: Assembly) -> Value:
    """The part of the car that moves over, in words; empty where none does."""
    if not line.part:
        return ""
    named = (part.name for part in record.parts.values() if part.is_named(line.part))
    name = next(named, line.part.replace("-", " "))
    return message("kits/from-the-car", part=name)


def _cars(record: VehicleRecord, when: When) -> Mapping[str, Any]:
    return {"when": words.when(record, when), "clauses": words.clauses(when)}


def lines(step: Mapping[str, Any]) -> list[str]:
    """How each kit of a step is built up, as lines of plain text: its name, then numbered steps."""
    found = []
    for kit in step["kits"]:
        name = message("kits/built" if kit["lines"] else "kits/see", kit=kit["name"])
        found.append(say(_marked(kit["when"], name)))
        found += [
            say(message("kits/step", number=number, step=_marked(line["when"], _with_part(line))))
            for number, line in enumerate(kit["lines"], 1)
        ]
    return found


def _with_part(line: Data) -> Value:
    """What is done, and with which part of the car."""
    return message("kits/with", step=line["text"], part=line["moves"]) if line["moves"] else line["text"]


def _marked(when: Value, said: Value) -> Value:
    """In which cars, before what is so there."""
    return message("kits/in", cars=when, said=said) if when else said
