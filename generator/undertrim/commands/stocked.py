"""What the verbs share that answer with gear: a vehicle beside the stock, and gear that is not in it.

By itself, since the stock is what the rules pass, and to load all rules takes longer than the answer of a verb without gear.
"""

import sys
from collections.abc import Sequence

from undertrim.check.shelf import stock
from undertrim.commands.details import see_check
from undertrim.commands.usage import Usage
from undertrim.derive.fit.answers import Vehicle
from undertrim.derive.fit.clearances import clearances
from undertrim.derive.fit.stock import Stock
from undertrim.record.lookup import NotFound, vehicle_file
from undertrim.record.model import VehicleRecord
from undertrim.record.nearness import suggestion
from undertrim.record.store import Workspace
from undertrim.words import Message, Value, message, say


def vehicle_and_stock(place: Workspace, name: str) -> Vehicle | None:
    """A vehicle with the stock of its workspace; None, and why on standard error, where its record cannot be relied on. Raises Usage."""
    try:
        entry = place.load(vehicle_file(place, name))
    except NotFound as error:
        raise Usage(error.said) from error
    if not isinstance(entry.record, VehicleRecord) or entry.problems:
        said = message("commands/no-answer", path=str(entry.source.path), see=see_check())
        print(f"undertrim: {say(said)}", file=sys.stderr)
        return None
    return Vehicle(entry.record, entry.address, stock(place), clearances())


def no_gear(shelf: Stock, name: str, known: Sequence[str], what: Value) -> Message:
    """Why a piece of gear cannot be had, and the way out; `known` are the ids of those that could be meant, `what` what they are."""
    if shelf.refused(name):
        return message("commands/gear-refused", name=name, see=see_check())
    return message("commands/no-gear", name=name, hint=suggestion(name, list(known), what))
