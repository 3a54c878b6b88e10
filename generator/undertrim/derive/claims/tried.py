"""Takes into a record of gear that it went into an opening of a car, or did not."""

from undertrim.derive.claims.outcome import Deed, Refused
from undertrim.record.changing import Change
from undertrim.record.claims import Answer
from undertrim.record.gear import AnyRecord, GearRecord, Tried
from undertrim.record.source import Data
from undertrim.words import Message, message

KEYS = ("gear", "tried")
_WITH_CAR = 5
"""Keys of an address: these two, make and id of the vehicle, and the opening."""
_SAID = ("yes", "no")


def entered(record: AnyRecord, answer: Answer, evidence: str) -> tuple[Change | None, Deed, Message]:
    """The change of the record, if there is one: who saw the same is named beside those who did. Raises Refused."""
    if not isinstance(record, GearRecord) or len(answer.keys) != _WITH_CAR:
        raise Refused(message("claims/tried-where", about=answer.about))
    if answer.says not in _SAID:
        raise Refused(message("claims/tried-yes-or-no", about=answer.about))
    told = message(f"claims/tried-{answer.says}")
    known = record.gear.tried
    same = next((one for one in known.values() if _what(one) == _said(answer)), None)
    if same is None:
        place = (*KEYS, _name(answer.keys[-1], known))
        return Change(place, {**_typed(answer), "source": evidence}), Deed.FILLED, told
    if evidence in same.source:
        return None, Deed.ALREADY, message("claims/tried-already")
    again = Change((*KEYS, same.id, "source"), [*same.source, evidence])
    return again, Deed.SEEN_AGAIN, message("claims/tried-again")


def _said(answer: Answer) -> tuple[str, ...]:
    vehicle, opening = "/".join(answer.keys[2:4]), answer.keys[4]
    return vehicle, opening, answer.says, answer.size, answer.hit


def _what(one: Tried) -> tuple[str, ...]:
    return one.vehicle, one.opening, one.went_in, one.size, one.hit


def _typed(answer: Answer) -> dict[str, Data]:
    vehicle, opening, went_in, size, hit = _said(answer)
    said: dict[str, Data] = {"vehicle": vehicle, "opening": opening, "went_in": went_in}
    return said | ({"size": size} if size else {}) | ({"hit": hit} if hit else {})


def _name(opening: str, known: dict[str, Tried]) -> str:
    """An id for a trial from its opening."""
    numbered = (f"{opening}-{number}" for number in range(2, len(known) + 3))
    return next(name for name in (opening, *numbered) if name not in known)
