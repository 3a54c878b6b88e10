"""What a page can say "not so on my car" of: every fact of a record at its address, as a script, so that it also loads from a folder on disk."""

from collections.abc import Iterator

from undertrim.derive.evidence.every_fact import Place, Thing, things
from undertrim.publish.encoding import Published, said
from undertrim.publish.facts.meter import packed_script
from undertrim.record.gear import AnyRecord, GearRecord
from undertrim.record.model import VehicleRecord
from undertrim.words import Items, say


def file_name(vehicle: str) -> str:
    """The name of the file of a vehicle, by its id."""
    return f"{vehicle}.facts.js"


def script(record: VehicleRecord, address: str) -> str:
    """The script of a vehicle. It is packed (publish/packing.py)."""
    return f"undertrimFacts({packed_script(listed(record, address))});\n"


def listed(record: AnyRecord, address: str) -> Published:
    """The same as plain data, of a vehicle by its address or of gear by its id."""
    labels: dict[str, int] = {}
    found = [_thing(thing, labels) for thing in things(record)]
    named = {"vehicle": "", "gear": address} if isinstance(record, GearRecord) else {"vehicle": address, "gear": ""}
    return {**named, "labels": list(labels), "things": found}


def _thing(thing: Thing, labels: dict[str, int]) -> Published:
    return {
        "about": thing.about,
        "name": said(thing.name),
        "facts": [list(_fact(thing, one, labels)) for one in thing.facts],
    }


def _fact(thing: Thing, place: Place, labels: dict[str, int]) -> Iterator[str | int]:
    label = say(Items(place.labels, "comma"))
    yield place.about.removeprefix(thing.about).lstrip("/")
    yield labels.setdefault(label, len(labels))
    yield place.text
