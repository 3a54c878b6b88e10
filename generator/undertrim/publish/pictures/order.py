"""Draws what hides what from a vehicle's facts, with a way to each step."""

from collections.abc import Collection, Iterator, Sequence

from undertrim.publish.encoding import Published, compact
from undertrim.publish.pictures.drawings import order_map
from undertrim.publish.pictures.drawings.order_map import Link, Node
from undertrim.words import Items, message, say


def on_page(facts: Published) -> str:
    """The map with a link to each step of the page it stands on; empty where nothing hides anything."""
    parts = facts["removal_order"]
    if not parts:
        return ""
    steps = {step["id"] for step in facts["steps"]}
    nodes = [_node(parts, part, steps) for part in parts]
    return order_map.drawn(nodes, say(message("drawings/what-hides-what")), {"class": "ut-order"})


def on_paper(parts: Sequence[Published]) -> Iterator[str]:
    """The same for a sheet: each group that hangs together by itself, so that they can stand side by side; nothing where nothing hides anything."""
    nodes = [Node(part["name"], part["goal"], (), part["after"], part["either"]) for part in parts]
    for group in order_map.apart(nodes):
        yield order_map.drawn(group, say(message("drawings/what-hides-what")), order_map.INKED, order_map.PRINTED)


def _node(parts: Sequence[Published], part: Published, known: Collection[str]) -> Node:
    """A box; one on a way that no job goes leads nowhere."""
    links = list(_links(parts, part, known))
    only = {"data_clauses": compact(part["clauses"])} if part["clauses"] else {}
    steps = {"data_steps": " ".join(step["step"] for step in part["steps"])} if part["steps"] else {}
    looks = {"role": "img", "aria_label": _label(parts, part, part["name"])} if not links else {}
    looks |= {"class": "ut-goal"} if part["goal"] else {}
    return Node(part["name"], part["goal"], links, part["after"], part["either"], {**only, **steps, **looks})


def _links(parts: Sequence[Published], part: Published, known: Collection[str]) -> Iterator[Link]:
    for step in part["steps"] if not part["goal"] else ():
        if step["step"] not in known:
            continue
        side = say(message(f"sides/{step['side']}")) if step["side"] else ""
        name = say(message("drawings/part-at", part=part["name"], side=side)) if side else part["name"]
        yield Link(side, f"#step-{step['step']}", _label(parts, part, name))


def _label(parts: Sequence[Published], part: Published, name: str) -> str:
    """What somebody is told who does not see the lines."""
    before = [parts[at]["name"] for at in part["after"]]
    ways = [parts[at]["name"] for at in part["either"]]
    if not before and not ways:
        return say(message("drawings/off-first", part=name))
    after = Items(tuple(before), "comma") if before else ""
    either = Items(tuple(ways), "comma-or") if ways else ""
    if after and either:
        return say(message("drawings/after-and-either", part=name, after=after, either=either))
    return say(
        message("drawings/after", part=name, after=after)
        if after
        else message("drawings/after-either", part=name, either=either)
    )
