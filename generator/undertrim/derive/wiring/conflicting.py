"""What of a joint the evidence disagrees on: such a wire is metered before anything is joined to it, whatever else is known of it."""

from collections.abc import Iterator
from dataclasses import replace

from undertrim.derive.evidence.claims import claims, field
from undertrim.derive.evidence.conflicts import Dispute
from undertrim.derive.wiring.bench import Bench
from undertrim.derive.wiring.functions import functions
from undertrim.derive.wiring.leads import named
from undertrim.derive.wiring.needs import Point
from undertrim.derive.wiring.never import apart
from undertrim.derive.wiring.row import Row, State
from undertrim.words import Message, message

_STRONGER = (State.NEVER, State.CONFLICT)
_HOMELESS = (State.LEAD_ALONE, State.UNKNOWN, State.INTERFACE)


def doubted(bench: Bench, row: Row) -> Row:
    """The row with what is disputed about its wires, and about wires that may have its function after all."""
    own = tuple(words for point in row.car for words in _said(row, point))
    lead_alone = row.lead is not None and (not row.car or row.state in _HOMELESS)
    others = tuple(_may_be(bench, row)) if lead_alone else ()
    if not own and not others:
        return row
    words = (*row.words, *own, *others)
    if row.state in _STRONGER:
        return replace(row, words=words)
    do = message("joint/settle-then", do=row.do) if row.do else message("joint/settle-first")
    return replace(row, state=State.CONFLICT, words=words, do=do)


def _said(row: Row, point: Point) -> Iterator[Message]:
    for dispute in point.disputed:
        where = point.address or named(point.function)
        yield message("joint/disagrees-field", field=field(dispute), where=where, claims=claims(dispute))
        if row.lead is not None:
            yield from _if_it_is(row.lead.function, dispute)


def _if_it_is(lead: str, dispute: Dispute) -> Iterator[Message]:
    """Why the lead must not meet the wire if another claim is right."""
    for function in claimed(dispute):
        reason = apart(lead, function)
        if reason:
            yield message("joint/if-it-is", function=named(function), why=reason.words)


def _may_be(bench: Bench, row: Row) -> Iterator[Message]:
    """Wires that by one claim have the function of a lead which has no partner."""
    here = {point.address for point in row.car}
    for point in bench.points:
        for dispute in point.disputed:
            if point.address not in here and row.function in claimed(dispute):
                yield message("joint/disagrees", at=point.address, claims=claims(dispute))


def claimed(dispute: Dispute) -> tuple[str, ...]:
    """The functions that the claims give a wire; none where another field of it is disputed."""
    if field(dispute) != "function":
        return ()
    return tuple(claim.says for claim in dispute.claims if claim.says in functions().functions)
