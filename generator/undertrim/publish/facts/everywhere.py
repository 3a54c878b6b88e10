"""What the page of a piece of gear needs of a vehicle to say into which of its openings the gear goes: the openings as they are reckoned with, by the kind of gear that they take."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from undertrim.derive import cars
from undertrim.publish.encoding import Published
from undertrim.record.model import VehicleRecord
from undertrim.words import Value


@dataclass(frozen=True, slots=True)
class PlaceOpening:
    """An opening: its id, the one that it is written under, its name, what kinds of gear may stand between there, and its form (`fit_page.Form`)."""

    id: str
    written: str
    name: str
    between: Sequence[str]
    form: Published


@dataclass(frozen=True, slots=True)
class PlaceVehicle:
    """A vehicle with some of its openings; `variants` are its questions with their choices, `labels` the words for these."""

    address: str
    title: str
    demo: bool
    variants: Mapping[str, Sequence[str]]
    labels: Mapping[str, Mapping[str, Value]]
    openings: Sequence[PlaceOpening]


def places(record: VehicleRecord, made: Published) -> dict[str, PlaceVehicle]:
    """A vehicle by the kinds of gear that go into it; `made` are its facts as they were said."""
    kinds = dict.fromkeys(opening["form"]["gear"] for opening in made["openings"])
    return {kind: _vehicle(record, made, _taking(made, kind)) for kind in kinds}


def _taking(made: Published, kind: str) -> list[Published]:
    return [one for one in made["openings"] if one["form"]["gear"] == kind]


def _vehicle(record: VehicleRecord, made: Published, openings: Sequence[Published]) -> PlaceVehicle:
    known = made["visit_words"]
    return PlaceVehicle(
        address=made["address"],
        title=f"{made['title']} {made['years']}",
        demo=made["demo"],
        variants=known["variants"],
        labels={name: _labels(variant) for name, variant in cars.variants(record).items()},
        openings=[
            PlaceOpening(one["id"], known["written"][one["id"]], one["name"], known["between"][one["id"]], one["form"])
            for one in openings
        ],
    )


def _labels(variant: cars.AnyVariant) -> dict[str, Value]:
    return {one.id: one.label for one in variant.choices.values()}
