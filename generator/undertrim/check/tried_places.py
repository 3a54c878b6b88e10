"""Whether there is an opening of a vehicle in which somebody says that gear was tried."""

from undertrim.derive import jobs
from undertrim.derive.claims.tried import KEYS
from undertrim.record.claims import Answer
from undertrim.record.lookup import NotFound, vehicle_file
from undertrim.record.model import VehicleRecord
from undertrim.record.nearness import suggestion
from undertrim.record.store import Workspace
from undertrim.words import Message, message

_WITH_CAR = 5


def nowhere(place: Workspace, answer: Answer) -> Message | None:
    """Why the trial can be entered nowhere; None where it can, and for any other answer."""
    if answer.keys[:2] != KEYS or len(answer.keys) != _WITH_CAR:
        return None
    vehicle, name = "/".join(answer.keys[2:4]), answer.keys[4]
    try:
        record = place.load(vehicle_file(place, vehicle)).record
    except NotFound as error:
        return error.said
    if isinstance(record, VehicleRecord) and not jobs.openings(record, name):
        hint = suggestion(name, jobs.ids(record), message("jobs/openings"))
        return message("claims/tried-no-opening", opening=name, vehicle=vehicle, hint=hint)
    return None
