"""What follows from a vehicle and the gear in stock that joins a receiver to it: joints, steps of kits, what keeps a duty, what to order.

Two files of its own for each vehicle, fetched by the pages of visit and wiring when they want them; they themselves hold whatever is in stock.
"""

from collections.abc import Mapping

from undertrim.derive.fit.answers import Vehicle
from undertrim.publish.encoding import Published, said
from undertrim.publish.facts import blockers, duties, joints, kits
from undertrim.publish.facts.own_words import with_language
from undertrim.publish.facts.shown_stock import StockDuty, StockVisit, StockWiring
from undertrim.publish.facts.stock_joints import Tables
from undertrim.words import message

VISIT, WIRING = "visit", "wiring"
"""The pages that fetch something, by their names."""


Unsaid = Mapping[str, StockVisit | StockWiring]
"""What each of these pages fetches, before it is said."""


def with_stock(known: Vehicle) -> dict[str, Published]:
    """What each of these pages fetches, in the language of the reader. The record is one that is reckoned with."""
    return {view: in_words(facts) for view, facts in worked_out(known).items()}


def worked_out(known: Vehicle) -> Unsaid:
    """The same before it is said: that is most of the work, and the same in each language."""
    return {VISIT: _visit(known), WIRING: _wiring(known)}


def in_words(facts: StockVisit | StockWiring) -> Published:
    """One of them in the language of the reader."""
    return dict(with_language(said(facts)))


def _visit(known: Vehicle) -> StockVisit:
    record, address, stock = known.record, known.address, known.stock
    built = {name: kits.built(record, address, stock, name) for name, one in record.openings.items() if one.takes_over}
    return StockVisit(
        blockers.blockers(record, address, stock), {name: found for name, found in built.items() if found}
    )


def _wiring(known: Vehicle) -> StockWiring:
    table = Tables()
    found = duties.duties(known.record, known.address, known.stock)
    return StockWiring(
        duties=[_duty(item) for item in found],
        joints=[table.joint(item) for item in joints.joints(known)],
        colours=table.colours,
    )


def _duty(item: duties.ShownDuty) -> StockDuty:
    noted = message("plugs/with-note", what=item.kept_words, note=item.note) if item.note else item.kept_words
    return StockDuty(item.name, noted, item.conflicts, item.when, item.clauses)
