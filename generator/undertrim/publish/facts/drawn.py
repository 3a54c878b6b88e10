"""What is drawn of an opening, as data: its dimensions, and the gear that is chosen for it with what goes between."""

from collections.abc import Mapping, Sequence

from undertrim.derive.fit import disputed
from undertrim.derive.fit.answers import Answer, Vehicle
from undertrim.publish.facts.kinds import Drawing, room
from undertrim.record.model import Opening


def drawn(vehicle: Vehicle, opening: Opening, answers: Sequence[Answer]) -> Mapping[str, Drawing]:
    """The inputs of the drawings by their name, with the gear of the first answer in them, if there is any; empty where nothing of the opening is measured."""
    reckoned, _ = disputed.cautious(vehicle.record, opening)
    fit = next((answer.fits[0] for answer in answers if answer.there and answer.fits), None)
    gear = {item.id: item for item in vehicle.stock.items}
    shown = gear[fit.gear] if fit else None
    between = gear.get(fit.way.between) if fit else None
    return room(reckoned).drawn(vehicle.usual, fit, shown, between)
