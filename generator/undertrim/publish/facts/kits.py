"""How kits in stock are built up, as lines of the step that builds them."""

from collections.abc import Sequence
from dataclasses import dataclass

from undertrim.derive.cutting import may_go
from undertrim.derive.fit.stock import Stock, Stocked
from undertrim.publish.encoding import Published
from undertrim.publish.facts import words
from undertrim.record.gear import Assembly
from undertrim.record.model import VehicleRecord, When
from undertrim.record.model.kinds.receiver import KitGear
from undertrim.words import Value, message, say


@dataclass(frozen=True, slots=True)
class KitLine:
    """A step at the bench; `moves` is the part of the car that moves over, in words, empty where none does."""

    text: Value
    moves: Value
    when: Value
    clauses: words.Clauses


@dataclass(frozen=True, slots=True)
class KitWork:
    """A kit that is made for an opening, and how it is built up; `when` are the cars that it is for, empty for all."""

    id: str
    name: str
    when: Value
    clauses: words.Clauses
    lines: Sequence[KitLine]


TOLD_ELSEWHERE = message("kits/told-elsewhere")


def built(record: VehicleRecord, address: str, shelf: Stock, opening: str) -> list[KitWork]:
    """The kits that are made for an opening, each with its steps at the bench.

    A step that is for some cars alone carries them, as does a kit.
    """
    found = []
    written = record.openings[opening].written if opening in record.openings else opening
    for item in shelf.of(KitGear):
        places = [place for place in item.facts.suits if (place.vehicle, place.opening) == (address, written)]
        allowed = opening in record.openings and may_go(record, record.openings[opening], item.facts.alters)
        if places and allowed:
            found.append(_built(record, item, places[0].when if len(places) == 1 else When()))
    return found


def _built(record: VehicleRecord, kit: Stocked[KitGear], when: When) -> KitWork:
    lines = [_line(record, line) for line in kit.facts.assembly]
    return KitWork(kit.id, kit.name, words.when(record, when), words.clauses(when), lines)


def _line(record: VehicleRecord, line: Assembly) -> KitLine:
    return KitLine(line.do, _moving(record, line), words.when(record, line.when), words.clauses(line.when))


def _moving(record: VehicleRecord, line: Assembly) -> Value:
    """The part of the car that moves over, in words; empty where none does."""
    if not line.part:
        return ""
    named = (part.name for part in record.parts.values() if part.is_named(line.part))
    name = next(named, line.part.replace("-", " "))
    return message("kits/from-the-car", part=name)


def lines(step: Published) -> list[str]:
    """How each kit of a step is built up, as lines of plain text: its name, then numbered steps; where no stock was asked, who tells them."""
    if "kits" not in step:
        return [say(TOLD_ELSEWHERE)] if step["builds"] else []
    found = []
    for kit in step["kits"]:
        name = message("kits/built" if kit["lines"] else "kits/see", kit=kit["name"])
        found.append(say(_marked(kit["when"], name)))
        found += [
            say(message("kits/step", number=number, step=_marked(line["when"], _with_part(line))))
            for number, line in enumerate(kit["lines"], 1)
        ]
    return found


def _with_part(line: Published) -> Value:
    """What is done, and with which part of the car."""
    return message("kits/with", step=line["text"], part=line["moves"]) if line["moves"] else line["text"]


def _marked(when: Value, said: Value) -> Value:
    """In which cars, before what is so there."""
    return message("kits/in", cars=when, said=said) if when else said
