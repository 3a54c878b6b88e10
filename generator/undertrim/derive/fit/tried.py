"""What people saw who tried gear in an opening, beside what is reckoned of it; neither makes the other go away."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from undertrim.derive.evidence.claims import claimed
from undertrim.derive.evidence.disputed import open_disputes
from undertrim.record.fields import node_of
from undertrim.record.gear import GearRecord, Tried
from undertrim.record.model import CarSeen, Evidence
from undertrim.words import Items, Message, Value, message

_AGAINST = {"no": ("fits", "fits-with"), "yes": ("does-not-fit",)}
"""The verdicts that somebody's look says the opposite of; one that leaves it open says the opposite of nothing."""


@dataclass(frozen=True, slots=True)
class SeenFit:
    """Who tried the gear in an opening of a vehicle (make/id), in words, and whether it went in; `cars` are those that were looked at, None where one is not said."""

    id: str
    vehicle: str
    opening: str
    went_in: str
    said: Message
    cars: tuple[CarSeen | None, ...] = ()

    def against(self, kind: str) -> bool:
        """Whether a verdict of this kind says the opposite."""
        return kind in _AGAINST[self.went_in]

    def shown(self, kind: str) -> Message:
        """The line that stands beside a verdict of this kind."""
        return message("tried/against" if self.against(kind) else "tried/seen", said=self.said)


def seen_fits(record: GearRecord) -> tuple[SeenFit, ...]:
    """Everything that was tried with a piece of gear."""
    return tuple(_seen(one, record.evidence) for one in record.gear.tried.values())


def _seen(one: Tried, evidence: Mapping[str, Evidence]) -> SeenFit:
    pieces = [evidence[name] for name in one.source if name in evidence]
    who = Items(tuple(map(_who, pieces)), "semicolon")
    way = tuple(_in_the_way(one))
    code, short = ("tried/in-why", "tried/in") if one.went_in == "yes" else ("tried/not-in-why", "tried/not-in")
    said = message(code, why=Items(way, "comma"), who=who) if way else message(short, who=who)
    return SeenFit(one.id, one.vehicle, one.opening, one.went_in, said, tuple(piece.car for piece in pieces))


def _in_the_way(one: Tried) -> Iterator[Value]:
    node = node_of(("gear", one.size)) if one.size else None
    if node:
        yield node.schema["title"]
    if one.hit:
        yield message("tried/hit", what=one.hit)


def told(piece: Evidence) -> Message:
    """A piece of evidence in a line: `e1: measured, rk, 2026-03-02`."""
    how = message(f"evidence/how-{piece.how}")
    said = (how, *_said(piece), *([piece.with_] if piece.with_ else []))
    return message("tried/evidence", id=piece.id, said=Items(said, "comma"))


def _who(piece: Evidence) -> Value:
    """Who it was, when and at which car: the record of the gear knows no more of it than this says."""
    return Items(tuple(_said(piece)), "comma")


def _said(piece: Evidence) -> Iterator[Value]:
    yield from (piece.by, piece.on)
    if car := piece.car:
        yield from filter(None, (car.text, str(car.year or "").replace("unknown", "")))
        if car.built:
            yield message("evidence/built", month=str(car.built))
        if car.side in ("left", "right"):
            yield message(f"evidence/side-{car.side}")
        yield from (message("evidence/choice", variant=name, choice=choice) for name, choice in car.is_.items())
    yield from filter(None, (piece.note.rstrip("."),))


def doubts(record: GearRecord) -> tuple[Message, ...]:
    """The sizes that are in dispute, each with what is said of it and what is reckoned with."""
    return tuple(
        message(
            "tried/doubt",
            size=_titles(item.fact.pointer),
            claims=Items(tuple(claimed(claim.says, claim.source) for claim in item.claims), "either"),
            value=item.cautious if item.cautious != "unknown" else item.fact.text,
        )
        for item in open_disputes(record)
        if item.fact
    )


def _titles(pointer: tuple[str | int, ...]) -> Value:
    nodes = (node_of(pointer[:depth]) for depth in range(2, len(pointer) + 1))
    return Items(tuple(node.schema["title"] for node in nodes if node and "title" in node.schema), "comma")
