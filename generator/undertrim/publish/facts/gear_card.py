"""What a record of gear says for the hands, beside its sizes: one line for each piece."""

from collections.abc import Collection, Iterator

from undertrim.derive.fit.place import altered
from undertrim.derive.fit.stock import Gear, Stock
from undertrim.derive.fit.verdict import Fit
from undertrim.publish.facts import words
from undertrim.publish.facts.kinds import CARDS
from undertrim.record.own_language import OwnLanguage
from undertrim.record.units import Quantity
from undertrim.words import Items, Message, Value, message, spoken

FITTING, DEMO = "gear-card/fitting", "gear-card/demo"


def of_fit(fit: Fit, stock: Stock, without: Collection[str] = ()) -> list[Message]:
    """The gear of a verdict and what of the stock goes between, each with what its record says; `without` are codes of what is said elsewhere; nothing for one that says no more."""
    meant = [item for item in stock.items if item.id == fit.gear or item.piece in fit.parts]
    cards = (card(item, without) for item in sorted(meant, key=lambda item: item.id != fit.gear))
    return [said for said in cards if said]


def card(item: Gear, without: Collection[str] = ()) -> Message | None:
    """One piece of gear in a line: `Sandmartin Skim-65: known as 6.5 in (a name, not a dimension). Terminals: tabs 2.8 mm.`"""
    said = tuple(one for one in _said(item) if not (isinstance(one, Message) and one.code in without))
    return message("gear-card/card", name=item.name, said=Items(said, "sentences")) if said else None


def _said(item: Gear) -> Iterator[Value]:
    """Sentences without their full stops."""
    facts = item.facts
    said = CARDS.get(type(facts))
    yield from said(facts) if said else ()
    if facts.alters:
        yield message("gear-card/alters", how=altered(facts.alters))
    if isinstance(facts.fitting, Quantity):
        yield message(FITTING, time=words.minutes(facts.fitting.value / 60))
    if facts.note:
        yield facts.note.rstrip(".")
    own = OwnLanguage(item.lang)
    if own.differs(spoken()):
        yield own.told("gear-card/own-language", spoken())
    if item.demo:
        yield message(DEMO)
