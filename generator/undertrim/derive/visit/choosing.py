"""Gear by its id for the openings of a visit: what can be meant, or why it cannot, and what could."""

from collections.abc import Mapping, Sequence

from undertrim.derive.fit.answers import Vehicle
from undertrim.derive.fit.stock import Gear, Stock
from undertrim.derive.visit.asked import NONE
from undertrim.derive.visit.between import kinds, suiting
from undertrim.record.model import OPENINGS, Opening
from undertrim.record.model.gear import AnyGear
from undertrim.record.model.kinds.receiver import KitGear, LeadsGear
from undertrim.record.nearness import suggestion
from undertrim.words import Items, Message, Value, message

KIT = KitGear.kind


def no_gear(shelf: Stock, name: str, known: Sequence[str], what: Value) -> Message:
    """Why a piece of gear cannot be had, and the way out; `known` are the ids of those that could be meant, `what` what they are."""
    if shelf.refused(name):
        return message("commands/gear-refused", name=name, see=message("commands/see-check"))
    return message("commands/no-gear", name=name, hint=suggestion(name, list(known), what))


def no_job(name: str, worked: Sequence[str]) -> Message:
    """That an opening is not worked at, and which are."""
    near = suggestion(name, list(worked), message("jobs/openings"))
    return message("visit-arguments/no-job", name=name, hint=near)


def named(shelf: Stock, name: str) -> Gear | None:
    """A piece of gear by its id."""
    return next((item for item in shelf.items if item.id == name), None)


def gear(shelf: Stock, opening: Opening, name: str) -> Gear | Message:
    """The gear of a name, if it is of the kind that goes into an opening."""
    found, kind = named(shelf, name), opening.takes.kind
    if found is None:
        return no_gear(shelf, name, [item.id for item in shelf.taken(opening)], message(f"gear-kinds/many-{kind}"))
    if isinstance(found.facts, opening.takes):
        return found
    wanted, other = message(f"gear-kinds/{kind}"), message(f"gear-kinds/a-{found.facts.kind}")
    takes = message(f"gear-kinds/a-{kind}")
    return message(
        "visit-arguments/wrong-kind", gear=name, wanted=wanted, found=other, opening=opening.written, takes=takes
    )


def between(
    vehicle: Vehicle, forms: Sequence[Opening], kind: str, value: str, among: Sequence[Mapping[str, str]]
) -> tuple[tuple[Gear, ...], list[Message]]:
    """The pieces of a kind that are to stand between, and what is said of those that do not suit there.

    `forms` is one opening, or one for each kind of car that is written under one id: what suits any of them may be meant.
    `none` is no piece. Leads are joined in any case, those of one set.
    """
    opening, wanted = forms[0], kinds(forms[0])[kind]
    joined = wanted is LeadsGear
    if value == NONE and not joined:
        return (), []
    suit = {item.id: item for form in forms for item in suiting(vehicle, form, wanted, among)}
    names, offered = list(dict.fromkeys(value.split(","))), [*suit, *([] if joined else [NONE])]
    said = [_unsuitable(vehicle.stock, opening, wanted, name, offered) for name in names if name not in suit]
    if joined and len(names) > 1 and not said:
        said = [message("visit/said-twice", word=f"{opening.written}.{kind}", first=names[0], second=names[1])]
    return tuple(suit[name] for name in names if name in suit), said


def _unsuitable(shelf: Stock, opening: Opening, kind: type[AnyGear], name: str, known: Sequence[str]) -> Message:
    many, found = message(f"gear-kinds/many-{kind.kind}"), named(shelf, name)
    if found is None:
        return no_gear(shelf, name, known, many)
    hint = message("visit/what-suits", what=many, names=Items(tuple(known), "comma"))
    if not isinstance(found.facts, kind):
        wanted, other = message(f"gear-kinds/{kind.kind}"), message(f"gear-kinds/a-{found.facts.kind}")
        return message("visit/other-kind", gear=name, wanted=wanted, found=other, hint=hint)
    return message("visit/does-not-suit", gear=name, opening=opening.written, hint=hint)


def place(shelf: Stock, openings: Sequence[Opening], name: str) -> tuple[str, Gear] | Message:
    """The one of some openings that takes a piece of gear, by the id it is written under."""
    found = named(shelf, name)
    if found is None:
        taken = tuple(opening.takes for opening in OPENINGS.values())
        known = [item.id for item in shelf.items if isinstance(item.facts, taken)]
        return no_gear(shelf, name, known, message("visit-arguments/any-gear"))
    taking = list(dict.fromkeys(opening.written for opening in openings if isinstance(found.facts, opening.takes)))
    if len(taking) == 1:
        return taking[0], found
    if not taking:
        kind = message(f"gear-kinds/a-{found.facts.kind}")
        return message("visit-arguments/taken-nowhere", kind=kind, gear=name)
    either = Items(tuple(message("visit-arguments/opening-gear", opening=one, gear=name) for one in taking), "either")
    return message("visit-arguments/taken-by-several", gear=name, either=either)


def of_kit(vehicle: Vehicle, worked: Sequence[str], name: str) -> list[str] | Message:
    """The openings that a kit is made for, of those worked at, by the ids they are written under."""
    made_for = {
        kit.id: [at.opening for at in kit.facts.suits if at.vehicle == vehicle.address and at.opening in worked]
        for kit in vehicle.stock.of(KitGear)
    }
    known = [kit for kit, places in made_for.items() if places]
    if name in known:
        return made_for[name]
    what = message("gear-kinds/many-kit")
    if vehicle.stock.refused(name):
        return no_gear(vehicle.stock, name, known, what)
    return message("plan/no-kit", kit=name, hint=suggestion(name, known, what))
