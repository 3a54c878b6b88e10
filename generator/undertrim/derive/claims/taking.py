"""Takes one answer into a record: what it comes to, and the record's text with it."""

from collections.abc import Callable
from contextlib import suppress
from dataclasses import dataclass

from undertrim.derive import coverage
from undertrim.derive.claims import disputes, sources, tried
from undertrim.derive.claims.addresses import AtCar, place_of
from undertrim.derive.claims.outcome import Deed, Outcome, Refused
from undertrim.derive.claims.values import field_at, meant
from undertrim.derive.evidence.conflicts import Dispute
from undertrim.derive.evidence.facts import Fact, fact_at
from undertrim.derive.evidence.readings import Reading, read, same
from undertrim.derive.evidence.seen import answers, seen
from undertrim.derive.evidence.taken import USUAL
from undertrim.record import build
from undertrim.record.changing import CannotPut, Change, put
from undertrim.record.changing.edits import at
from undertrim.record.claims import Answer, Found
from undertrim.record.gear import AnyRecord
from undertrim.record.instruments import coarseness, scales
from undertrim.record.model import Blank, VehicleRecord
from undertrim.record.source import Data, Pointer, Source
from undertrim.record.spreading import SAYS_ONCE
from undertrim.record.units import Quantity
from undertrim.words import Message, Value, message

UNKNOWN = str(Blank.UNKNOWN)
_TAKEN = "claims/was-taken"


@dataclass(frozen=True, slots=True)
class Taking:
    """One record as it is, and how its text is read: to its source as a whole, and from that to the record."""

    source: Source
    record: AnyRecord
    read: Callable[[str], Source]
    build: Callable[[Source], AnyRecord | None]
    before: Source
    """The record as it was before any answer was taken."""
    stamped: frozenset[str] = frozenset()
    """The blocks of facts that a stamp vouches for: one more witness is not worth the stamp."""

    def take(self, answer: Answer) -> tuple[Source, Outcome]:
        """The record's source with the answer in it, and what was done; the same source where nothing was, or nothing can be."""
        try:
            changed, deed, said = self._take(answer)
        except (Refused, CannotPut) as error:
            return self.source, Outcome(Deed.REFUSED, error.said)
        return changed, Outcome(deed, said)

    def _take(self, answer: Answer) -> tuple[Source, Deed, Message]:
        # Long because it is one list: what comes first of all that an answer may come to.
        if answer.keys[:1] == ("openings",) and len(answer.keys) == 2 and answer.found is Found.NONE:
            return self._not_there(answer)
        if answer.keys[:2] == tried.KEYS:
            return self._tried(answer)
        place = place_of(self.source, answer.keys, at_car(self.record, self.source, answer))
        if answer.found is Found.NOT_SO:
            return self._not_so(answer, place)
        field = field_at(self.record, place, answer.about)
        value, stands = meant(answer, field), at(self.source.data, place)
        implied = fact_at(self.record, "/".join(map(str, place)))
        said = _text(value)
        dispute = disputes.dispute_of(self.record, place)
        if answer.found is Found.CANNOT_TELL:
            return self._could_not_tell(field, place, stands)
        if dispute:
            return self._in_dispute(answer, place, said, dispute)
        if stands is None and implied and same(_read(field, implied.text), _read(field, said)):
            return self.source, Deed.ALREADY, message("claims/already-follows", value=said)
        if stands is None or stands == UNKNOWN:
            return self._filled(answer, place, value, stands)
        alike, code = same(_read(field, _text(stands)), _read(field, said)), self._unseen(answer, place)
        if code == _TAKEN or (code and not alike):
            with suppress(CannotPut):  # what cannot be said here alone stands in a conflict with the other car
                return self._instead(answer, place, value, message(code, value=said, usual=_text(stands)))
        if alike:
            return self._seen_again(answer, place, _read(field, said))
        return self._disputed(answer, place, _text(stands), said)

    def _could_not_tell(self, field: Fact, place: Pointer, stands: Data) -> tuple[Source, Deed, Message]:
        """What nobody said becomes unknown, if it can; what is known stays."""
        if stands == UNKNOWN:
            return self.source, Deed.ALREADY, message("claims/already-unknown")
        if stands is not None:
            return self.source, Deed.KEPT, message("claims/known", value=_text(stands))
        if not field.says_unknown:
            return self.source, Deed.KEPT, message("claims/unsaid")
        return self._put(Change(place, UNKNOWN)), Deed.FILLED, message("claims/now-unknown")

    def _filled(self, answer: Answer, place: Pointer, value: Data, stands: Data) -> tuple[Source, Deed, Message]:
        others = tuple(spot for spot in sources.siblings(self.source, place) if at(self.source.data, spot) is None)
        changed = self._put(Change(place, value, may_be_unknown=() if stands else others))
        told = message("claims/filled" if stands is None else "claims/was-unknown", value=_text(value))
        return self._with_source(changed, answer, place), Deed.FILLED, told

    def _unseen(self, answer: Answer, place: Pointer) -> str:
        """How it is said that nobody has seen on this car what stands there: it was there before, and is taken from another car, or rests on what is usual and on nothing but this look."""
        if at(self.before.data, place) != at(self.source.data, place):
            return ""
        if self.source.origin and self.source.origin.is_taken(place):
            return _TAKEN
        known, (own, _) = sources.names(self.source, place), sources.evidence_of(self.source, answer)
        usual = [name for name in known if name in self.record.evidence and self.record.evidence[name].how == USUAL]
        return "claims/was-usual" if usual and not {*known} - {*usual, own} else ""

    def _instead(self, answer: Answer, place: Pointer, value: Data, said: Message) -> tuple[Source, Deed, Message]:
        """What nobody saw on this car is no look at it: whoever looked says what is so, and there is no conflict."""
        return self._with_source(self._put(Change(place, value)), answer, place), Deed.FILLED, said

    def _seen_again(self, answer: Answer, place: Pointer, reading: Reading) -> tuple[Source, Deed, Message]:
        """The same from somebody else is one more witness; on a stamped record it is none, since the stamp would go for it."""
        name, new = sources.evidence_of(self.source, answer)
        known, says = sources.names(self.source, place), {"value": _said(reading)}
        if new is None and name in known:
            return self.source, Deed.ALREADY, message("claims/already", **says)
        if {str(place[0]), "/".join(map(str, place[:2]))} & self.stamped:
            return self.source, Deed.ALREADY, message("claims/already-verified", **says)
        if isinstance(reading, Quantity) and self._is_coarser(reading, known, answer):
            return self.source, Deed.ALREADY, message("claims/already-finer", **says)
        if sources.holder(self.source, place) is None:
            return self.source, Deed.ALREADY, message("claims/already", **says)
        return self._with_source(self.source, answer, place), Deed.SEEN_AGAIN, message("claims/seen-again", **says)

    def _is_coarser(self, reading: Quantity, known: tuple[str, ...], answer: Answer) -> bool:
        """Whether the instrument would make facts beside this one less sure than they are."""
        pieces = [self.record.evidence[name] for name in known if name in self.record.evidence]
        before = coarseness(reading, [scales(piece.with_) for piece in pieces])
        return coarseness(reading, [scales(answer.with_)]) > before

    def _disputed(self, answer: Answer, place: Pointer, stands: str, said: str) -> tuple[Source, Deed, Message]:
        changed, name = self._with_evidence(self.source, answer)
        known = tuple(one for one in sources.names(self.source, place) if one != name)
        both = disputes.Said(stands, known), disputes.Said(said, (name,))
        changed = put(changed, disputes.begun(self.record, place, *both, short=self._is_short), self.read)
        return self._cautious(changed, place), Deed.DISPUTED, message("claims/disputed", value=stands, other=said)

    def _in_dispute(self, answer: Answer, place: Pointer, said: str, dispute: Dispute) -> tuple[Source, Deed, Message]:
        """One more voice in a conflict that stands; one that is settled stays so."""
        name, new = sources.evidence_of(self.source, answer)
        if new is None and any(
            name in claim.source and dispute.says_same(claim.says, said) for claim in dispute.claims
        ):
            return self.source, Deed.ALREADY, message("claims/already-claimed", conflict=dispute.conflict.id)
        changed, name = self._with_evidence(self.source, answer)
        changed = put(changed, disputes.joined(dispute, said, name, short=self._is_short), self.read)
        says = {"conflict": dispute.conflict.id, "value": said}
        if dispute.settled:
            settled = message("claims/settled", by=dispute.conflict.settled_by, **says)
            return changed, Deed.DISPUTED, settled
        return self._cautious(changed, place), Deed.DISPUTED, message("claims/joined", **says)

    def _not_so(self, answer: Answer, place: Pointer) -> tuple[Source, Deed, Message]:
        """What stands is doubted, and nothing is said in its place: of the two, the cautious side is that nobody knows."""
        stands = at(self.source.data, place)
        if not isinstance(stands, str):
            raise Refused(message("claims/not-so-thing", about=answer.about))
        field = field_at(self.record, place, answer.about)
        dispute = disputes.dispute_of(self.record, place)
        if dispute:
            return self._in_dispute(answer, place, UNKNOWN, dispute)
        if stands == UNKNOWN:
            return self.source, Deed.ALREADY, message("claims/already-unknown")
        if answer.was and not same(_read(field, answer.was), _read(field, stands)):
            return self.source, Deed.KEPT, message("claims/was-other", was=answer.was, value=stands)
        return self._disputed(answer, place, stands, UNKNOWN)

    def _tried(self, answer: Answer) -> tuple[Source, Deed, Message]:
        """Whether gear went in: each look stands by itself, the same again is one more witness."""
        changed, name = self._with_evidence(self.source, answer)
        change, deed, said = tried.entered(self.record, answer, name)
        return (put(changed, change, self.read) if change else self.source), deed, said

    def _not_there(self, answer: Answer) -> tuple[Source, Deed, Message]:
        """An opening that this car does not have: the record says so of cars that are alike in what openings differ by."""
        assert isinstance(self.record, VehicleRecord)
        opening = next((one for one in self.record.openings.values() if one.is_named(answer.keys[1])), None)
        if opening is None:
            raise Refused(message("claims/no-such-thing", about=answer.about, hint=""))
        car = at_car(self.record, self.source, answer).choices
        alike = [kind for kind in coverage.kinds_of_car(self.record) if kind.items() <= car.items()]
        if not alike or not alike[0]:
            raise Refused(message("claims/which-car", about=answer.about))
        state = coverage.state(opening, alike[0])
        if state == coverage.VALUE:
            raise Refused(message("claims/there", about=answer.about))
        if state == coverage.NONE:
            return self.source, Deed.ALREADY, message("claims/already-not-there")
        place = ("openings", opening.id, "not_in")
        changed = self._put(Change(place, [*(at(self.source.data, place) or []), dict(alike[0])]))
        return self._with_source(changed, answer, place), Deed.FILLED, message("claims/not-there")

    # The text

    @property
    def _is_short(self) -> bool:
        return bool(self.source.as_typed.data.get("format") == SAYS_ONCE)

    def _put(self, change: Change) -> Source:
        return put(self.source, change, self.read)

    def _with_evidence(self, source: Source, answer: Answer) -> tuple[Source, str]:
        name, new = sources.evidence_of(source, answer)
        return (put(source, new, self.read) if new else source), name

    def _with_source(self, source: Source, answer: Answer, place: Pointer) -> Source:
        """With the answer's evidence, named where the fact names it; without, where nothing can name it."""
        block = sources.holder(source, place)
        if block is None:
            return source
        changed, name = self._with_evidence(source, answer)
        return (
            changed
            if name in sources.names_at(changed, block)
            else put(changed, sources.naming(changed, block, name), self.read)
        )

    def _cautious(self, source: Source, place: Pointer) -> Source:
        """With the cautious value, where people can be hurt by the other."""
        record = self.build(source)
        dispute = disputes.dispute_of(record, place) if record else None
        if dispute is None or not dispute.rule.safety or not dispute.open or dispute.holds_cautious:
            return source
        if dispute.cautious == UNKNOWN and not (dispute.fact and dispute.fact.says_unknown):
            return source
        return put(source, Change(place, dispute.cautious), self.read)


def at_car(record: AnyRecord, source: Source, answer: Answer) -> AtCar:
    """What is known of the car that an answer was found at."""
    if not isinstance(record, VehicleRecord):
        return AtCar({})
    car = build.car_seen(sources.car_of(source, answer.car)) if answer.car else None
    return AtCar(answers(record, seen(record, car)), answer.side)


def _read(field: Fact, says: str) -> Reading:
    return read(says, field.kind, field.form, field.scheme)


def _said(reading: Reading) -> Value:
    return reading.text if isinstance(reading, Quantity) else reading


def _text(value: Data) -> str:
    return ", ".join(map(str, value)) if isinstance(value, list) else str(value)
