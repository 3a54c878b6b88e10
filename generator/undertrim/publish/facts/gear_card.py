"""What a record of gear says for the hands, beside its sizes: one line for each piece."""

from collections.abc import Iterator, Sequence

from undertrim.derive.fit.stock import Gear, Stock
from undertrim.derive.fit.verdict import Fit
from undertrim.publish.facts import words
from undertrim.record.model.kinds.receiver import ReceiverGear
from undertrim.record.model.kinds.speaker import SpacerGear, SpeakerGear
from undertrim.words import say

DEMO = "Demonstration data: this gear is invented"


def of_fit(fit: Fit, stock: Stock) -> list[str]:
    """The gear of a verdict and what of the stock goes between, each with what its record says; nothing for one that says no more."""
    meant = [item for item in stock.items if item.id == fit.gear or item.name in fit.parts]
    cards = (card(item) for item in sorted(meant, key=lambda item: item.id != fit.gear))
    return [said for said in cards if said]


def card(item: Gear) -> str:
    """One piece of gear in a line: `Sandmartin Skim-65: known as 6.5 in (a name, not a dimension). Terminals: tabs 2.8 mm.`"""
    said = [text.rstrip(".") for text in _said(item)]
    return f"{item.name}: {'. '.join(said)}." if said else ""


def _said(item: Gear) -> Iterator[str]:
    facts = item.facts
    if isinstance(facts, ReceiverGear | SpeakerGear | SpacerGear) and facts.nominal:
        yield f"Known as {facts.nominal} (a name, not a dimension)"
    if isinstance(facts, SpeakerGear) and facts.terminals:
        yield f"Terminals: {facts.terminals}"
    if isinstance(facts, ReceiverGear) and facts.least_load is not None:
        yield f"Lowest load on an output: {say(words.quantity(facts.least_load))}"
    if facts.alters:
        yield f"Alters the car: {words_of(facts.alters)}"
    if facts.note:
        yield facts.note
    if item.demo:
        yield DEMO


def words_of(names: Sequence[str]) -> str:
    """Words from an enum as a list: `cut, blow out`."""
    return ", ".join(names).replace("-", " ")
