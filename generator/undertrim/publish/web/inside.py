"""What the finder knows of one vehicle on its own pages: its openings, the parts that come off, plugs, pins with their colours, runs and button ladders."""

from collections.abc import Iterator
from urllib.parse import quote

from undertrim.publish.encoding import Published
from undertrim.publish.web.finder import Entry
from undertrim.publish.web.views import OPENINGS, VISIT, WIRING, View
from undertrim.record import colours
from undertrim.record.colours import ColourError
from undertrim.words import Items, message, say


def entries(made: Published) -> Iterator[Entry]:
    """What can be found in a vehicle; places are from the folder of its pages."""
    for opening in made["openings"]:
        yield _entry(
            "opening", opening["name"], say(message("sheet/opening")), _at(made, OPENINGS, f"opening-{opening['id']}")
        )
    for step in made["steps"]:
        if step["kind"] == "remove":
            yield _entry("part", step["title"], _kind("part"), _at(made, VISIT, f"step-{step['id']}"))
    yield from _wiring(made)


def _wiring(made: Published) -> Iterator[Entry]:
    for plug in made["connectors"]:
        yield _entry(
            "plug", plug["name"], say(message("openings/plug")), _at(made, WIRING, f"plug-{plug['id']}"), plug["id"]
        )
        for pin in plug["pins"]:
            colour = pin["colour"] or {"words": "", "iec": ""}
            where = say(message("finder/pin", plug=plug["name"], pin=pin["id"]))
            said = ", ".join(filter(None, (colour["words"], where)))
            others = " ".join(filter(None, (_in_order(colour["iec"]), colour["iec"], f"{plug['id']}/{pin['id']}")))
            yield _entry("pin", pin["function_words"], said, _at(made, WIRING, f"pin-{plug['id']}-{pin['id']}"), others)
    for ladder in made["ladders"]:
        yield _entry("ladder", ladder["name"], _kind("ladder"), _at(made, WIRING, f"ladder-{ladder['id']}"))
    for run in made["runs"]:
        yield _entry("run", run["name"], _kind("run"), _at(made, WIRING, f"run-{run['id']}"))


def _in_order(letters: str) -> str:
    """A colour as it is typed, base first: `grey/black`. One that cannot be read is nothing."""
    try:
        return say(Items(colours.parse(letters).all, "slash"))
    except ColourError:
        return ""


def _entry(sort: str, name: str, said: str, place: str, others: str = "") -> Entry:
    return [sort, str(name), said, place, others]


def _kind(sort: str) -> str:
    return say(message(f"finder/inside-{sort}"))


def _at(made: Published, view: View, place: str) -> str:
    return f"{view.file(made['id'])}#{quote(place)}"
