"""What follows from a vehicle and the gear in stock that joins a receiver to it: joints, steps of kits, what keeps a duty, what to order.

A file of its own for each vehicle, fetched by the pages when a visit wants it; they themselves hold whatever is in stock.
"""

from undertrim.derive.fit.answers import Vehicle
from undertrim.publish.encoding import Published, said
from undertrim.publish.facts import blockers, duties, joints, kits
from undertrim.publish.facts.own_words import with_language
from undertrim.publish.facts.shown_stock import StockDuty, WithStock
from undertrim.publish.facts.stock_joints import Tables
from undertrim.words import message


def with_stock(known: Vehicle) -> Published:
    """What the pages fetch, in the language of the reader. The record is one that is reckoned with."""
    record, address, stock = known.record, known.address, known.stock
    table = Tables()
    made = WithStock(
        blockers=blockers.blockers(record, address, stock),
        duties=[_duty(item) for item in duties.duties(record, address, stock)],
        kits={
            name: built for name, opening in record.openings.items()
            if opening.takes_over and (built := kits.built(record, address, stock, name))
        },
        joints=[table.joint(item) for item in joints.joints(known)],
        colours=table.colours,
    )  # fmt: skip
    found: Published = with_language(said(made))
    return found


def _duty(item: duties.ShownDuty) -> StockDuty:
    noted = message("plugs/with-note", what=item.kept_words, note=item.note) if item.note else item.kept_words
    return StockDuty(item.name, noted, item.conflicts, item.when, item.clauses)
