"""The steps of a part: take it off, put it back, move it over to new parts, and test what is joined to it."""

from collections.abc import Iterator

from undertrim.derive.procedure import fates, states
from undertrim.derive.procedure.fastener_lines import coming_out, returning
from undertrim.derive.procedure.fates import TetherLine
from undertrim.derive.procedure.naming import named, sided
from undertrim.derive.procedure.node import Node, minutes
from undertrim.derive.procedure.steps import FastenerLine, Step, live, text
from undertrim.record.model import Assignment, Part
from undertrim.words import Value, message


def remove(node: Node, car: Assignment, section: str, *, returns: bool = False) -> Iterator[Step]:
    """Take a part off; `returns` says that some visits put it back though new gear replaces it."""
    part = node.thing
    assert isinstance(part, Part)
    lines = coming_out(part, car)
    tethers = fates.coming_off(part, car, returns=returns)
    yield Step(
        f"remove:{node.id}", "remove", section, named(node), text(part.how, _laid(part), _spoilt(part)), node, lines, tethers,
        live(part.cautions, car), minutes(part.takes),
    )  # fmt: skip


def refit(node: Node, car: Assignment) -> Iterator[Step]:
    """Put a part back."""
    part = node.thing
    assert isinstance(part, Part)
    lines = returning(part.held_by, car)
    tethers = fates.refitted(part, car)
    takes = minutes(part.refit_takes if part.refit_takes is not None else part.takes)
    yield Step(
        f"refit:{node.id}", "refit", "refit", named(node), text(_renewed(part), part.refit_how, _sealed(part)), node, lines, tethers,
        live(part.cautions, car), takes, new=part.reuse == "no", seal=part.seal,
    )  # fmt: skip
    yield from _tether_tests(node, tethers, "refit")


def _sealed(part: Part) -> Value:
    return message("steps/seal-again", seal=part.seal) if part.seal else ""


def _laid(part: Part) -> Value:
    return message("steps/laid", laid=part.laid) if part.laid else ""


def _spoilt(part: Part) -> Value:
    return message("steps/spoilt") if part.reuse == "no" else ""


def _renewed(part: Part) -> Value:
    return message("steps/renewed") if part.reuse == "no" else ""


def move_over(node: Node, opening: Node, car: Assignment) -> Iterator[Step]:
    """Move a part over to the new parts of an opening."""
    part = node.thing
    assert isinstance(part, Part)
    lines = tuple(
        FastenerLine(line.fastener, "moved" if line.fate == "back" else line.fate)
        for line in returning(part.held_by, car)
    )
    tethers = fates.going_back(part, car)
    yield Step(
        f"move:{node.id}", "move", "install", message("steps/move-over", part=named(node)),
        text(message("steps/goes-to", opening=opening.thing.name), _renewed(part), _sealed(part)),
        node, lines, tethers, minutes=minutes(part.takes), new=part.reuse == "no", seal=part.seal,
    )  # fmt: skip
    yield from _tether_tests(node, tethers, "install")


def _tether_tests(node: Node, lines: tuple[TetherLine, ...], section: str) -> Iterator[Step]:
    """The tests that follow once cables or rods are joined again, or were moved with their part; `moved` marks those on a part that moved over."""
    moved = "moved:" if section == "install" else ""
    for line in lines:
        tether, usual = line.tether, states.tether_kind(line.tether.kind)
        if line.act in ("rejoin", "lay-in") and not usual.electric and (tether.test or usual.mechanical):
            yield Step(
                f"test:{node.id}:{moved}{tether.id}", "test", section,
                message("steps/test", tether=sided(tether.name, node.side)), text(tether.test or usual.usual_test or ""), node,
            )  # fmt: skip
