"""The leads of a receiver, and which of several that do the same is the one to join."""

from collections.abc import Sequence

from undertrim.derive.fit.stock import Gear, Stock, Stocked, only
from undertrim.derive.wiring.functions import functions
from undertrim.derive.wiring.needs import natural
from undertrim.record.gear import GearFacts, Lead
from undertrim.record.model.kinds.receiver import LeadsGear
from undertrim.resources import table
from undertrim.words import Message, Word, message, word

SPEAKER = "speaker"


class NoLeads(ValueError):  # noqa: N818 - it names what is missing
    """Gear of which no leads are recorded; `said` is why, with its way out."""

    def __init__(self, said: Message) -> None:
        super().__init__(said)
        self.said = said


def lead_set(gear: Gear, stock: Stock) -> Stocked[LeadsGear]:
    """The gear whose leads are meant: a lead set itself, or the one that a receiver names. Raises NoLeads."""
    if isinstance(gear.facts, LeadsGear):
        return only(gear, LeadsGear)
    name = gear.facts.lead_set
    if name is None:
        raise NoLeads(message("joint/has-no-leads", gear=gear.name, kind=message(f"gear-kinds/a-{gear.facts.kind}")))
    if not name:
        raise NoLeads(message("joint/names-no-leads", gear=gear.name))
    found = next((item for item in stock.of(LeadsGear) if item.id == name), None)
    if found is None:
        raise NoLeads(message("joint/leads-not-in-stock", gear=gear.name, leads=name))
    return found


def leads_of(gear: GearFacts) -> tuple[Lead, ...]:
    """The leads of a lead set, in the order of the functions, then by id."""
    return tuple(sorted(gear.leads.values(), key=lambda lead: (table_order(lead.function), natural(lead.id))))


def table_order(function: str) -> int:
    """Where a function stands in the order that people read wiring tables in."""
    return list(functions().functions).index(function)


def named(function: str) -> Word:
    """A function in words."""
    return word("functions", "function", function, "words")


def is_sound(function: str) -> bool:
    """Whether a function goes to a speaker or an amplifier."""
    return functions().functions[function].group == "speaker"


def level(lead: Lead) -> str:
    """The level of a sound lead: speaker level where nothing is said."""
    return lead.level or SPEAKER


def rival(lead: Lead, leads: Sequence[Lead], levels: Sequence[str]) -> Lead | None:
    """The lead of the same function that is joined in place of this one; None where it is this one's turn.

    `levels` are the levels of sound that may reach the car, the best first; empty where nobody knows. Where none of several leads has such a
    level, the first of each level stands by itself: it is to be refused, or asked about.
    """
    if lead.function in table("joining")["shared"]:
        return None
    same = [other for other in leads if other.function == lead.function]
    if is_sound(lead.function):
        right = next((other for wanted in levels for other in same if level(other) == wanted), None)
        if right is not None:
            return None if right is lead else right
        same = [other for other in same if level(other) == level(lead)]
    return None if same[0] is lead else same[0]
