"""What a record of gear says for the hands, beside its sizes: one line for each piece."""

from collections.abc import Iterator

from undertrim.derive.fit.place import altered
from undertrim.derive.fit.stock import Gear, Stock
from undertrim.derive.fit.verdict import Fit
from undertrim.publish.facts import words
from undertrim.publish.facts.kinds import amplifier
from undertrim.record.model.kinds.amplifier import AmplifierGear
from undertrim.record.model.kinds.receiver import ReceiverGear
from undertrim.record.model.kinds.speaker import SpacerGear, SpeakerGear
from undertrim.record.model.kinds.tweeter import CrossoverGear, TweeterGear
from undertrim.record.own_language import OwnLanguage
from undertrim.words import Items, Message, Value, message, spoken

DEMO = message("gear-card/demo")


def of_fit(fit: Fit, stock: Stock) -> list[Message]:
    """The gear of a verdict and what of the stock goes between, each with what its record says; nothing for one that says no more."""
    meant = [item for item in stock.items if item.id == fit.gear or item.name in fit.parts]
    cards = (card(item) for item in sorted(meant, key=lambda item: item.id != fit.gear))
    return [said for said in cards if said]


def card(item: Gear) -> Message | None:
    """One piece of gear in a line: `Sandmartin Skim-65: known as 6.5 in (a name, not a dimension). Terminals: tabs 2.8 mm.`"""
    said = tuple(_said(item))
    return message("gear-card/card", name=item.name, said=Items(said, "sentences")) if said else None


def _said(item: Gear) -> Iterator[Value]:
    """Sentences without their full stops."""
    facts = item.facts
    if isinstance(facts, ReceiverGear | SpeakerGear | SpacerGear | TweeterGear) and facts.nominal:
        yield message("gear-card/known-as", nominal=facts.nominal.rstrip("."))
    if isinstance(facts, SpeakerGear) and facts.terminals:
        yield message("gear-card/terminals", terminals=facts.terminals.rstrip("."))
    if isinstance(facts, AmplifierGear | ReceiverGear) and facts.least_load is not None:
        yield message("gear-card/least-load", load=words.quantity(facts.least_load))
    if isinstance(facts, AmplifierGear):
        yield from amplifier.said(facts)
    if isinstance(facts, TweeterGear):
        yield from _tweeter(facts)
    if isinstance(facts, CrossoverGear):
        yield from _crossover(facts)
    if facts.alters:
        yield message("gear-card/alters", how=altered(facts.alters))
    if facts.note:
        yield facts.note.rstrip(".")
    own = OwnLanguage(item.lang)
    if own.differs(spoken()):
        yield own.told("gear-card/own-language", spoken())
    if item.demo:
        yield DEMO


def _tweeter(facts: TweeterGear) -> Iterator[Value]:
    """What must keep low tones away from it, and what is in the box."""
    if needed := facts.high_pass:
        said = {"corner": words.quantity(needed.frequency), "power": words.quantity(needed.power)}
        yield message("gear-card/high-pass", order=message(f"filter-orders/{needed.filter_order}"), **said)
    if facts.comes_with:
        things = tuple(message(f"gear-card/with-{thing}") for thing in facts.comes_with)
        yield message("gear-card/comes-with", things=Items(things, "comma"))


def _crossover(facts: CrossoverGear) -> Iterator[Value]:
    """Where and how steeply it parts high from low, for which load, how large it is, and its pads."""
    corner, load = words.quantity(facts.frequency), words.quantity(facts.impedance)
    order = message(f"filter-orders/{facts.filter_order}")
    yield message("gear-card/parts-at", corner=corner, order=order, load=load)
    if facts.box:
        sides = {name: words.quantity(getattr(facts.box, name)) for name in ("width", "height", "depth")}
        yield message("gear-card/box", **sides)
    if facts.pads:
        yield message("gear-card/pads", pads=Items(facts.pads, "comma"))
