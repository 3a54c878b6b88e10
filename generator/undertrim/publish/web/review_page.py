"""A review as one HTML file: before and now beside each other, with pictures of the panels and plugs that changed. It loads nothing and runs nothing."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from markupsafe import Markup

from undertrim import resources
from undertrim.derive.procedure.steps import Step
from undertrim.derive.review.change import Side, Sort, StepChange
from undertrim.derive.review.outcome import Review, VehicleChange
from undertrim.publish.encoding import Published, said
from undertrim.publish.facts import plugs
from undertrim.publish.facts import steps as step_facts
from undertrim.publish.pictures import plugs as plug_pictures
from undertrim.publish.pictures import small
from undertrim.publish.terminal.reviewing import MARKS, more, summary
from undertrim.publish.web.pages import environment
from undertrim.publish.web.policy import digest
from undertrim.record.model import Connector
from undertrim.words import message, say, spoken

_SIZE = "17em"


@dataclass(frozen=True, slots=True)
class Beside:
    """One picture before and now; empty on the side on which there is none."""

    title: str
    before: Markup
    now: Markup


def page(found: Review, shown: Published) -> str:
    """The whole file; `shown` is what is said of the same review."""
    style = resources.inside("publish", "web", "templates", "review.css").read_text(encoding="utf-8")
    pictures = {one.address: list(_pictures(one)) for one in found.vehicles}
    return (
        environment()
        .get_template("review.html.j2")
        .render(
            found=shown,
            title=say(message("review/title", base=shown["base"])),
            summary=summary(shown),
            more=lambda visit: " ".join(more(visit)),
            pictures=pictures,
            marks={weight: say(message(code)) for weight, code in MARKS.items()},
            language=spoken().tag,
            style=Markup(style),  # noqa: S704 - our own file
            policy=f"default-src 'none'; style-src '{digest(style)}'; form-action 'none'; base-uri 'none'",
        )
    )


def _pictures(one: VehicleChange) -> Iterator[Beside]:
    if one.sides:
        yield from _panels(one.sides, [step for visit in one.visits for step in visit.steps])
        yield from _plugs(one)


def _panels(sides: tuple[Side, Side], changes: Sequence[StepChange]) -> Iterator[Beside]:
    """The panels whose fasteners are others now, new or gone, as each comes off."""
    told: set[str] = set()
    for change in changes:
        drawn = change.sort is not Sort.CHANGED or any(one.what in ("fasteners", "tools") for one in change.details)
        if change.step.kind == "remove" and drawn and change.sort is not Sort.MOVED and change.id not in told:
            told.add(change.id)
            before, now = (_panel(side, step) for side, step in zip(sides, (change.before, change.after), strict=True))
            if before or now:
                yield Beside(say(change.step.title), before, now)


def _panel(side: Side, step: Step | None) -> Markup:
    if step is None:
        return Markup()
    facts = said(step_facts.step(side.record, step))
    drawn = small.panel(facts)
    return Markup(drawn.picture(small.panel_title(facts), _SIZE)) if drawn else Markup()  # noqa: S704 - drawn by us, its texts escaped there


def _plugs(one: VehicleChange) -> Iterator[Beside]:
    """The faces of the plugs of which a fact is another one, from the side from which each is recorded."""
    assert one.sides
    names = {str(fact.pointer[1]): None for fact in one.facts if fact.pointer[0] == "connectors"}
    was = {
        fact.after: fact.before for fact in one.facts if fact.sort is Sort.RENAMED and fact.pointer[0] == "connectors"
    }
    before, now = (side.record.connectors for side in one.sides)
    for name in names:
        ends = (before.get(was.get(name, name)), now.get(name))
        drawn = [_face(side, plug) for side, plug in zip(one.sides, ends, strict=True)]
        if any(drawn):
            plug = ends[1] or ends[0]
            assert plug
            yield Beside(plug.name, *drawn)


def _face(side: Side, plug: Connector | None) -> Markup:
    faces = said(plugs.plug(side.record, plug))["faces"] if plug else []
    recorded = next((face for face in faces if face["recorded"]), None)
    if recorded is None:
        return Markup()
    return Markup(plug_pictures.face({**recorded, "cells": [_unlinked(cell) for cell in recorded["cells"]]}))  # noqa: S704 - as above


def _unlinked(cell: Mapping[str, object]) -> dict[str, object]:
    """A position that leads nowhere: there is no table of pins here."""
    return {**cell, "link": ""}
