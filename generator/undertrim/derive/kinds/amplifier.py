"""Which facts a place for an amplifier wants."""

from collections.abc import Iterator

from undertrim.derive.opening_details import NOTHING, Details
from undertrim.derive.opening_fact import Fact, known
from undertrim.record.model import VehicleRecord
from undertrim.record.model.kinds.amplifier import AmplifierOpening
from undertrim.words import Message, message


def required(opening: AmplifierOpening) -> Iterator[Fact]:
    """The box and the way to it, what is under it and near it, and where feed, ground and signal come from."""
    space, way = opening.space, opening.way_in
    yield Fact(
        "space",
        all(known(side) for side in (space.width, space.height, space.depth)) if space else False,
        _to_do(opening, "space"),
    )
    yield Fact("way_in", known(way and way.width) and known(way and way.height), _to_do(opening, "way-in"))
    yield Fact("surface", known(opening.surface), _to_do(opening, "surface"))
    yield Fact("fixings", known(opening.fixings), _to_do(opening, "fixings"))
    underneath = bool(opening.underneath) and "unknown" not in opening.underneath
    yield Fact("underneath", underneath, _to_do(opening, "underneath"), safety=True)
    yield Fact("restraint_near", known(opening.restraint_near), _to_do(opening, "restraint"), safety=True)
    yield Fact("air", known(opening.air), _to_do(opening, "air"))
    ground, fuse = opening.ground_point, opening.fuse_place
    yield Fact("ground_point", ground is not None, _to_do(opening, "ground"))
    if ground:
        yield Fact("ground_point/paint", known(ground.paint), _to_do(opening, "paint"))
    yield Fact("fuse_place", known(fuse and fuse.from_battery), _to_do(opening, "fuse"))
    yield Fact("switched_on_by", known(opening.switched_on_by), _to_do(opening, "turn-on"))


def _to_do(opening: AmplifierOpening, what: str) -> Message:
    return message(f"wanted-amplifier/{what}", opening=opening.name)


def details(record: VehicleRecord, opening: AmplifierOpening, entry: str) -> Details:
    """What is underneath before a screw goes in, the ground point with its nut, where the main fuse goes, and whether others are on its run."""
    if entry == "offer":
        return Details(tuple(message(f"steps-amplifier/under-{thing}") for thing in opening.underneath or ("unknown",)))
    if entry == "ground" and opening.ground_point:
        point = opening.ground_point
        return Details((message("steps-amplifier/ground-at", at=point.at),), (point.nut,) if point.nut else ())
    if entry in ("cable", "fuse"):
        place = opening.fuse_place if entry == "fuse" else None
        said = (message("steps-amplifier/fuse-at", at=place.at),) if place else ()
        return Details((*said, *_for_all(record, opening, entry)))
    return NOTHING


def _for_all(record: VehicleRecord, opening: AmplifierOpening, entry: str) -> Iterator[Message]:
    """That one cable and one fuse serve all amplifiers on a run, where the record has places for several."""
    others = [one for one in record.openings_of(AmplifierOpening) if one.run == opening.run and one.id != opening.id]
    if opening.run in record.runs and others:
        yield message(f"steps-amplifier/one-{entry}", run=record.runs[opening.run].name)
