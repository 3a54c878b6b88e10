"""A vehicle has one record, however its make and model are spelt.

## What it finds

Two records that seem to be of one vehicle under two names:

* one model under two makes that are spelt nearly alike;
* two models of one make that are spelt nearly alike, with the same digits, and have months of build, a body and a drive side in
  common, unless both have a `tell` and they differ;
* a model that another record of the make names in `also_called`, likewise.

Also a make with few records that is spelt nearly like one with more. Names are compared without capitals, accents, spaces and
hyphens. Nearly alike are names of five letters or more that one letter left out, added, exchanged or swapped makes the same.

## Why it matters

Whoever looks for the car finds half of what is known of it, and whoever mends the one record never hears of the other.

## Bad

    # file: brindleway/otter-2014-2018.yaml
    vehicle:
      make: Brindleway
      model: Otter
      built: {from: 2014-01, to: 2018-01}
      drive_side: [left]
      high_voltage: no
    # file: brindlway/otter-2018-2021.yaml
    vehicle:
      make: Brindlway    # here
      model: Otter
      built: {from: 2018-01, to: 2021-01}
      drive_side: [left]
      high_voltage: no
    # file: brindleway/otters-2015-2018.yaml
    vehicle:
      make: Brindleway
      model: Otters    # here
      built: {from: 2015-01, to: 2018-01}
      drive_side: [left]
      high_voltage: no
    # file: brindleway/lutra-2014-2018.yaml
    vehicle:
      make: Brindleway
      model: Lutra    # here
      also_called: [Otter]
      built: {from: 2014-01, to: 2018-01}
      drive_side: [left, right]
      high_voltage: no

warning: 'Lutra' is also called 'Otter', which has a record of its own, 'records/vehicles/brindleway/otter-2014-2018.yaml' (make one record of them, or say in the 'tell' of each what sets it apart)
warning: 'Otters' is spelt nearly like 'Otter' in 'records/vehicles/brindleway/otter-2014-2018.yaml', for the same months (make one record of them, or say in the 'tell' of each what sets it apart)
warning: the make 'Brindlway' is spelt nearly like 'Brindleway' in 'records/vehicles/brindleway/otter-2014-2018.yaml', with the same model (write the one that stands on the car)

## Good

    # file: brindleway/otter-2014-2018.yaml
    vehicle:
      make: Brindleway
      model: Otter
      built: {from: 2014-01, to: 2018-01}
      drive_side: [left]
      high_voltage: no
    # file: brindleway/otters-2018-2020.yaml
    vehicle:
      make: Brindleway
      model: Otters
      built: {from: 2018-01, to: 2020-01}
      drive_side: [left]
      high_voltage: no
    # file: brindleway/sedge-3-2014-2018.yaml
    vehicle:
      make: Brindleway
      model: Sedge 3
      built: {from: 2014-01, to: 2018-01}
      drive_side: [left]
      high_voltage: no
    # file: brindleway/sedge-5-2014-2018.yaml
    vehicle:
      make: Brindleway
      model: Sedge 5
      built: {from: 2014-01, to: 2018-01}
      drive_side: [left]
      high_voltage: no
"""

from collections import defaultdict
from collections.abc import Iterator, Mapping, Sequence

from undertrim.check import months, names
from undertrim.check.findings import Card, Finding
from undertrim.check.vehicles import VehicleCard, alike, vehicles
from undertrim.record.problem import Level
from undertrim.words import message

LEVEL = Level.WARNING

Shelf = Mapping[str, list[VehicleCard]]


def check_all(cards: Sequence[Card]) -> Iterator[tuple[Card, Finding]]:
    """One finding for each record that seems to be of another one's vehicle, at the later of the two."""
    makes: dict[str, list[VehicleCard]] = defaultdict(list)
    for vehicle in vehicles(sorted(cards, key=lambda card: card.path)):
        makes[vehicle.make].append(vehicle)
    for pair in names.near_pairs(makes):
        few, many = sorted(pair, key=lambda make: (len(makes[make]), make != max(pair)))
        yield from _makes(makes[few], makes[many])
    for shelf in makes.values():
        yield from _models(shelf)


def _makes(few: Sequence[VehicleCard], many: Sequence[VehicleCard]) -> Iterator[tuple[Card, Finding]]:
    """A make that is nearly another, at each of its records that has a model of the other; at the first, if none has."""
    models = {vehicle.model: vehicle for vehicle in reversed(many)}
    twins = [vehicle for vehicle in few if vehicle.model in models]
    for vehicle in twins or few[:1]:
        other = models.get(vehicle.model, many[0])
        spelt = {"make": vehicle.facts.make, "other": other.facts.make, "file": other.file}
        if twins:
            found = message("rules/vehicle-twice/near-make-same-model", **spelt)
        else:
            found = message("rules/vehicle-twice/near-make", **spelt)
        yield vehicle.card, Finding(("vehicle", "make"), found, about=(other.id,))


def _models(shelf: Sequence[VehicleCard]) -> Iterator[tuple[Card, Finding]]:
    models: dict[str, list[VehicleCard]] = defaultdict(list)
    for vehicle in shelf:
        models[vehicle.model].append(vehicle)
    said: set[str] = set()
    for one, other in names.near_pairs(models):
        for vehicle, twin in () if other in said else _same_cars(models[other], models[one]):
            said.add(other)
            spelt = {"model": vehicle.facts.model, "other": twin.facts.model, "file": twin.file}
            found = message("rules/vehicle-twice/near-model", **spelt)
            yield vehicle.card, Finding(("vehicle", "model"), found, about=(twin.id,))
    for vehicle in shelf:
        yield from _called(vehicle, models)


def _called(vehicle: VehicleCard, models: Shelf) -> Iterator[tuple[Card, Finding]]:
    for name in vehicle.facts.also_called:
        others = [other for other in models.get(names.folded(name), ()) if other.model != vehicle.model]
        for _, twin in _same_cars([vehicle], others):
            model, file = vehicle.facts.model, twin.file
            found = message("rules/vehicle-twice/also-called", model=model, name=name, file=file)
            yield vehicle.card, Finding(("vehicle", "model"), found, about=(twin.id,))


def _same_cars(ones: Sequence[VehicleCard], others: Sequence[VehicleCard]) -> Iterator[tuple[VehicleCard, VehicleCard]]:
    """For each of some records the first of some others that could be of the same car."""
    for one in ones:
        twin = next((other for other in others if _could_be_one(one, other)), None)
        if twin:
            yield one, twin


def _could_be_one(one: VehicleCard, other: VehicleCard) -> bool:
    told_apart = one.facts.tell and other.facts.tell and one.facts.tell != other.facts.tell
    return bool(alike(one.facts, other.facts) and not told_apart and months.common(one.facts.built, other.facts.built))
