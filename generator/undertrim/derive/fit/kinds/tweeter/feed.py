"""What keeps the low tones away from a tweeter: the crossover of the car, what comes with it, one in stock, or a part to get."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from undertrim.derive.electrical import crossovers
from undertrim.derive.electrical.bounds import Refused
from undertrim.derive.electrical.numbers import Amount
from undertrim.derive.fit.margins import Check, Verdict, compare, found, typed, untold
from undertrim.derive.fit.stock import Stocked
from undertrim.record.model import Blank
from undertrim.record.model.kinds.tweeter import CrossoverGear, CrossoverPlace, HighPass, TweeterGear, TweeterOpening
from undertrim.record.units import Quantity
from undertrim.words import Items, Message, Value, message

_TITLE = message("fit-tweeter/high-pass")
ORDERS = ("first", "second", "third", "fourth")
"""How steep a filter is; the flattest first."""


@dataclass(frozen=True, slots=True)
class Fed:
    """One way to feed a tweeter: `part` is a crossover from stock, `to_get` what is not in stock."""

    checks: tuple[Check, ...] = ()
    part: Stocked[CrossoverGear] | None = None
    to_get: Message | None = None
    notes: tuple[Message, ...] = ()


def ways(facts: TweeterGear, opening: TweeterOpening, crossovers: Sequence[Stocked[CrossoverGear]]) -> list[Fed]:
    """The ways there are. At least one."""
    if opening.feed == "crossover":
        return [Fed((_staying(facts.high_pass, opening.corner),), notes=(message("fit-tweeter/fed-crossover"),))]
    told = (message(f"fit-tweeter/fed-{opening.feed or 'unknown'}"),)
    if own := next((thing for thing in ("crossover", "capacitor") if thing in facts.comes_with), ""):
        check = Check("high-pass", _TITLE, "fits", found(_TITLE, message(f"fit-tweeter/own-{own}")))
        return [Fed((check, *_own_place(own, opening)), notes=(*told, message(f"fit-tweeter/use-{own}")))]
    stocked = [_with(item, facts, opening, told) for item in crossovers]
    return [*(way for way in stocked if way), _to_get(facts, told)]


def _own_place(own: str, opening: TweeterOpening) -> Iterator[Check]:
    """A crossover that comes with the tweeter wants a place; its size is not recorded."""
    if own == "crossover" and opening.crossover_place is None:
        yield untold("crossover-place", message("fit-tweeter/crossover-place"), [message("fit-tweeter/no-place")])


def _staying(needed: HighPass | None, corner: Quantity | Blank | None) -> Check:
    """The crossover of the car against what the tweeter needs. Its slope cannot be measured in the bay, and is taken as it is."""
    least = needed.frequency if needed else None
    if not isinstance(least, Quantity):
        return untold("high-pass", _TITLE, [typed(message("fit-tweeter/needed"), least).named])
    if not isinstance(corner, Quantity):
        words = found(_TITLE, message("fit-tweeter/corner-unseen", least=least))
        return Check("high-pass", _TITLE, "marginal", words)
    verdict: Verdict = "fits" if corner.value >= least.value else "fails"  # nominal values, taken as exact
    return Check("high-pass", _TITLE, verdict, found(_TITLE, message("fit-tweeter/corner", corner=corner, least=least)))


def _with(
    item: Stocked[CrossoverGear], facts: TweeterGear, opening: TweeterOpening, told: tuple[Message, ...]
) -> Fed | None:
    """Through a crossover in stock; None where it is not made for such a tweeter, or does not go into its place."""
    needed, place, own = facts.high_pass, opening.crossover_place, item.facts
    if place is None or not needed or not _suits(own, facts, needed):
        return None
    checks = tuple(_boxed(item, place))
    if any(check.verdict == "fails" for check in checks):
        return None
    words = message("fit-tweeter/through", name=item.name, corner=own.frequency or "", order=_said(own.filter_order))
    pads = (message("fit-tweeter/pads", name=item.name, pads=Items(own.pads, "comma")),) if own.pads else ()
    return Fed((Check("high-pass", _TITLE, "fits", found(_TITLE, words)), *checks), item, None, (*told, *pads))


def _suits(crossover: CrossoverGear, facts: TweeterGear, needed: HighPass) -> bool:
    """Its corner is no lower and its slope no flatter than what is needed, and it is made for that impedance."""
    numbers = (crossover.frequency, needed.frequency, crossover.impedance, facts.impedance)
    if not all(isinstance(one, Quantity) for one in numbers):
        return False
    corner, least, load, tweeter = (one.value for one in numbers if isinstance(one, Quantity))
    return (
        corner >= least
        and ORDERS.index(crossover.filter_order) >= ORDERS.index(needed.filter_order)
        and load == tweeter
    )


def _said(order: str) -> Message:
    return message(f"filter-orders/{order}")


def _boxed(item: Stocked[CrossoverGear], place: CrossoverPlace) -> Iterator[Check]:
    """Whether its box goes into the place, laid as it lies best: side against side by length."""
    box = item.facts.box
    ours = _sides([box.width, box.height, box.depth] if box else [None] * 3)
    theirs = _sides([place.width, place.height, place.depth])
    for name, side, room in zip(("long", "middle", "short"), ours, theirs, strict=True):
        title = message(f"fit-tweeter/box-{name}")
        there, need = typed(message("fit-tweeter/room-at", at=place.at), room), typed(item.name, side)
        yield compare(f"crossover-{name}", title, [there], [need])


def _sides(sides: Sequence[Quantity | Blank | None]) -> list[Quantity | Blank | None]:
    """The longest first; what is not known last."""
    return sorted(sides, key=lambda one: -one.value if isinstance(one, Quantity) else 0)


def part(facts: TweeterGear) -> Message:
    """What would have to be got for a tweeter that is fed the whole range."""
    return _to_get(facts, ()).to_get or message("fit-tweeter/get-any")


def _to_get(facts: TweeterGear, told: tuple[Message, ...]) -> Fed:
    """A capacitor, or the parts of a steeper filter, that would have to be got."""
    needed, load = facts.high_pass, facts.impedance
    least = needed.frequency if needed else None
    if not needed or not isinstance(least, Quantity) or not isinstance(load, Quantity):
        numbers = (typed(message("fit-tweeter/needed"), least), typed(message("fit-tweeter/impedance"), load))
        missing = [number.named for number in numbers if number.value is None]
        return Fed((untold("high-pass", _TITLE, missing),), None, message("fit-tweeter/get-any"), told)
    check = Check("high-pass", _TITLE, "fits", found(_TITLE, message("fit-tweeter/none-there")))
    try:
        part, notes = _part(least, load, needed)
    except Refused:  # no such value can be meant: its own rule says so, and here it is not reckoned with
        part, notes = message("fit-tweeter/get-any"), ()
    return Fed((check,), None, part, (*told, *notes))


def _part(least: Quantity, load: Quantity, needed: HighPass) -> tuple[Message, tuple[Message, ...]]:
    """What to get, and how it was reckoned."""
    asked: dict[str, Value] = {"corner": least, "order": _said(needed.filter_order)}
    if needed.filter_order not in ORDERS[:2]:
        return message("fit-tweeter/get-steep", **asked), ()
    power = needed.power.value if isinstance(needed.power, Quantity) else None
    first = crossovers.series_capacitor(least.value, load.value, power or 1)
    volts = _volts(first) if power else message("fit-tweeter/volts-unknown")
    if needed.filter_order == "second":
        made = crossovers.second_order(least.value, load.value, "butterworth")
        values = {"capacitor": Amount(made.capacitance, "F"), "coil": Amount(made.inductance, "H")}
        return message("fit-tweeter/get-second", volts=volts, **values, **asked), ()
    sizes = {"standard": Amount(first.standard, "F"), "coarse": Amount(first.coarse, "F")}
    reckoned = {"exact": Amount(first.exact, "F"), "begins": Amount(first.corner, "Hz")}
    return message("fit-tweeter/get-capacitor", volts=volts, **sizes), (
        message("fit-tweeter/reckoned", load=load, standard=sizes["standard"], **reckoned, **asked),
    )


def _volts(found_: crossovers.Series) -> Message:
    """The rating, or the peak itself where no standard rating bears it."""
    return message("fit-tweeter/volts", rated=Amount(found_.rated or found_.volts, "V"), peak=Amount(found_.volts, "V"))
