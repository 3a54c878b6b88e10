"""Draws the faces of a plug from its facts."""

from undertrim.publish.encoding import Published
from undertrim.publish.pictures.drawings import plugs


def face(facts: Published, wire: plugs.Wire = plugs.drawn) -> str:
    """One face (`publish.facts.plugs`) as SVG; its positions lead to the rows of the table of pins on the same page.

    `wire` draws the wires: `plugs.used` on a page that has their symbols.
    """
    positions, size = [_position(cell) for cell in facts["cells"]], (facts["rows"], facts["columns"])
    return plugs.face(facts["title"], facts["view"], facts["latch"], size, positions, wire)


def _position(cell: Published) -> plugs.Position:
    colour = cell["colour"] or {"base": "", "tracers": []}
    return plugs.Position(
        row=cell["row"],
        column=cell["column"],
        state=cell["state"],
        number=cell["number"],
        name=cell["words"],
        mark=cell["mark"],
        base=colour["base"] or "",
        tracers=tuple(colour["tracers"]),
        link=cell["link"],
        some_cars=bool(cell["when"]),
    )
