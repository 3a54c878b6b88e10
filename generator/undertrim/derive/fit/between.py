"""What must stand between a receiver and the wires of one car: harness, interfaces, level converter."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from undertrim.derive.fit import sound
from undertrim.derive.fit.functions import needs as needed
from undertrim.derive.fit.need import Need
from undertrim.derive.fit.stock import Gear
from undertrim.record.gear import GearFacts
from undertrim.record.model import VehicleRecord


@dataclass(frozen=True, slots=True)
class Between:
    """Parts from stock, what would have to be got, the functions one by one, and notes."""

    parts: tuple[str, ...]
    to_get: tuple[str, ...]
    needs: tuple[Need, ...]
    notes: tuple[str, ...]


def between(record: VehicleRecord, car: Mapping[str, str], receiver: GearFacts, shelf: Sequence[Gear]) -> Between:
    """What stands between. `shelf` is all gear that suits the opening in this car, and what suits every car."""
    adapters = [item for item in shelf if item.facts.kind in ("harness", "interface")]
    wanted = needed(receiver.needs, record, car, adapters)
    chosen = _chosen(wanted, adapters)
    kept = _keepers(record, car, adapters, chosen)
    level = sound.match(record, car, receiver, [item for item in shelf if item.facts.gives])
    parts = [*chosen, *kept, *([level.part] if level.part else [])]
    lacking = tuple(need.function for need in wanted if need.by == "data" and not need.providers)
    to_get = (*_interface(lacking), *((level.to_get,) if level.to_get else ()))
    names = tuple(dict.fromkeys(item.name for item in parts))
    return Between(names, to_get, wanted, (level.words, *_duties(record, car, parts)))


def _chosen(wanted: Sequence[Need], adapters: Sequence[Gear]) -> list[Gear]:
    """The fewest adapters by greed: always the one that brings most of what is still to be brought; interfaces for data first."""
    chosen: list[Gear] = []
    for kind, sources in (("interface", ("data",)), ("harness", ("wire",))):
        left = {need.function for need in wanted if (need.by in sources or need.disputed) and need.providers}
        left -= {function for item in chosen for function in item.facts.brings}
        shelf = [item for item in adapters if item.facts.kind == kind]
        while shelf and left:
            best = max(shelf, key=lambda item: len(left & set(item.facts.brings)))
            if not left & set(best.facts.brings):
                break
            chosen.append(best)
            left -= set(best.facts.brings)
            shelf.remove(best)
    return chosen


def _keepers(
    record: VehicleRecord, car: Mapping[str, str], adapters: Sequence[Gear], chosen: Sequence[Gear]
) -> list[Gear]:
    """Interfaces that keep a duty which needs one and that none of the chosen keeps."""
    found: list[Gear] = []
    for name in _by_interface(record, car):
        if not any(name in item.facts.keeps for item in (*chosen, *found)):
            found += [item for item in adapters if name in item.facts.keeps][:1]
    return found


def _by_interface(record: VehicleRecord, car: Mapping[str, str]) -> list[str]:
    return [duty.id for duty in record.duties.values() if duty.kept_by == "interface" and duty.when.holds(car)]


def _interface(functions: Sequence[str]) -> tuple[str, ...]:
    if not functions:
        return ()
    return (f"an interface for {', '.join(name.replace('-', ' ') for name in functions)}",)


def _duties(record: VehicleRecord, car: Mapping[str, str], parts: Sequence[Gear]) -> tuple[str, ...]:
    """By what each duty of the factory unit that needs an interface is kept."""
    said = []
    for name in _by_interface(record, car):
        keepers = [item.name for item in parts if name in item.facts.keeps]
        how = f"kept by {' or '.join(keepers)}" if keepers else "needs an interface, none in stock keeps it"
        said.append(f"{name.replace('-', ' ')}: {how}")
    return tuple(said)
