"""What must stand between a receiver and the wires of one car: harness, interfaces, level converter."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from undertrim.derive.fit.duties import KEEPERS, Fate, Outcome, kept_by
from undertrim.derive.fit.factory_sound import TURN_ON, woken_by_data
from undertrim.derive.fit.kinds.receiver import sound
from undertrim.derive.fit.kinds.receiver.functions import needs as needed
from undertrim.derive.fit.margins import Check
from undertrim.derive.fit.need import Need
from undertrim.derive.fit.piece import Piece
from undertrim.derive.fit.stock import Gear
from undertrim.record.model import VehicleRecord
from undertrim.record.model.kinds.receiver import HarnessGear, InterfaceGear, ReceiverGear
from undertrim.words import Items, Message, message, word


@dataclass(frozen=True, slots=True)
class Between:
    """Parts from stock, what would have to be got, the functions one by one, notes, and checks that cannot be told."""

    parts: tuple[Piece, ...]
    to_get: tuple[Message, ...]
    needs: tuple[Need, ...]
    notes: tuple[Message, ...]
    checks: tuple[Check, ...] = ()


def between(
    record: VehicleRecord,
    car: Mapping[str, str],
    receiver: ReceiverGear,
    shelf: Sequence[Gear],
    kept: Sequence[Outcome] = (),
) -> Between:
    """What stands between. `shelf` is all gear that suits the opening in this car, and what suits every car; `kept` what becomes of the duties."""
    adapters = [item for item in shelf if isinstance(item.facts, KEEPERS)]
    wanted = needed((*receiver.needs, *_awake(record, car, receiver)), record, car, adapters)
    chosen = _chosen(wanted, adapters)
    keepers = _keepers(kept, adapters, chosen)
    level = sound.match(record, car, receiver, [item for item in shelf if item.facts.gives])
    parts = [*chosen, *keepers, *([level.part] if level.part else [])]
    lacking = tuple(need.function for need in wanted if need.by == "data" and not need.providers)
    to_get = (*_interface(lacking), *((level.to_get,) if level.to_get else ()))
    pieces = tuple(dict.fromkeys(item.piece for item in parts))
    lost = tuple(message("fit-receiver/get-keeper", duty=item.name) for item in kept if item.to_get)
    return Between(pieces, (*to_get, *lost), wanted, (level.words, *_kept(kept, parts)), level.checks)


def _awake(record: VehicleRecord, car: Mapping[str, str], receiver: ReceiverGear) -> tuple[str, ...]:
    """The turn-on of a factory amplifier that only data wakes, which the receiver need not ask for."""
    return (TURN_ON,) if woken_by_data(record, car) and TURN_ON not in receiver.needs else ()


def _chosen(wanted: Sequence[Need], adapters: Sequence[Gear]) -> list[Gear]:
    """The fewest adapters by greed: always the one that brings most of what is still to be brought; interfaces for data first."""
    chosen: list[Gear] = []
    for kind, sources in ((InterfaceGear, ("data",)), (HarnessGear, ("wire",))):
        left = {need.function for need in wanted if (need.by in sources or need.disputed) and need.providers}
        left -= {function for item in chosen for function in item.facts.brings}
        shelf = [item for item in adapters if isinstance(item.facts, kind)]
        while shelf and left:
            best = max(shelf, key=lambda item: len(left & set(item.facts.brings)))
            if not left & set(best.facts.brings):
                break
            chosen.append(best)
            left -= set(best.facts.brings)
            shelf.remove(best)
    return chosen


def _keepers(kept: Sequence[Outcome], adapters: Sequence[Gear], chosen: Sequence[Gear]) -> list[Gear]:
    """Gear that keeps a duty and that is not chosen yet: for each the first that does."""
    found: list[Gear] = []
    for item in kept:
        if item.fate is Fate.KEPT and not any(gear.piece in item.by for gear in (*chosen, *found)):
            found += [gear for gear in adapters if gear.piece in item.by][:1]
    return found


def _interface(functions: Sequence[str]) -> tuple[Message, ...]:
    if not functions:
        return ()
    names = Items(tuple(word("functions", "function", name, "words") for name in functions), "comma")
    return (message("fit-receiver/get-interface", functions=names),)


def _kept(kept: Sequence[Outcome], parts: Sequence[Gear]) -> tuple[Message, ...]:
    """By what of the order each duty is kept; what the receiver itself keeps by its own name."""
    said = []
    for item in kept:
        if item.fate is Fate.KEPT:
            ordered = [gear.piece for gear in parts if gear.piece in item.by]
            by = kept_by(tuple(dict.fromkeys(ordered or item.by)))
            said.append(message("duties/outcome", duty=item.name, becomes=by))
    return tuple(said)
