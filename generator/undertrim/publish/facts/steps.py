"""Steps as data, with all the words a page or sheet needs."""

from collections.abc import Mapping
from itertools import pairwise
from typing import Any

from undertrim.derive.procedure import closing, purposes, running, states, tally
from undertrim.derive.procedure.fates import TetherLine
from undertrim.derive.procedure.steps import FastenerLine, Step
from undertrim.publish.facts import doubts, places, words
from undertrim.record.model import ALWAYS, Blank, Part, Prep, VehicleRecord
from undertrim.record.units import show
from undertrim.resources import table

Data = dict[str, Any]

VERBS = {
    "todo": "", "prepare": "", "wait": "", "remove": "Take off", "move": "", "install": "", "power": "",
    "join": "", "test": "", "refit": "Refit", "restore": "", "try": "", "measure": "",
}  # fmt: skip
SECTION_TITLES = {
    "before": "Before you start",
    "prepare": "Prepare the car",
    "remove": "Take apart",
    "install": "Fit the new gear",
    "test": "Power up and test",
    "refit": "Refit",
    "restore": "Put the car back as it was",
    "try": "Try what was joined last",
    "after": "After the battery is back",
}
_CIRCUITS = {
    "ordinary": "",
    "restraint": "restraint wiring",
    "high-voltage": "high voltage: do not touch",
    "48-volt": "48 V: do not open",
}
_FATES = {
    "out": "out",
    "back": "back in",
    "moved": "moves over",
    "bagged": "bag it",
    "new": "fit new ones",
    "leave": "leave alone: it looks the same and is not part of this",
}
_LATER = {"": "", "bagged": "bag with the old part", "moved": "keep for the new gear", "binned": "single use: bin"}


def step(record: VehicleRecord, item: Step) -> Data:
    """One step."""
    thing = item.node.thing if item.node else None
    return {
        "id": item.id,
        "kind": item.kind,
        "section": item.section,
        "verb": VERBS[item.kind],
        "title": item.title,
        "part": item.part,
        "side": item.side,
        "on_side": _on_side(record, thing) if isinstance(thing, Part | Prep) else "",
        "text": list(item.text),
        "kits": [],
        "motion": _motion(thing) if item.kind == "remove" else "",
        "directed": item.kind == "remove" and isinstance(thing, Part) and bool(thing.release and thing.direction),
        "place": places.places(record, thing) if thing and item.kind != "wait" else [],
        "area": thing.area if isinstance(thing, Part | Prep) else "",
        "fasteners": [fastener_line(record, item, line) for line in item.fasteners],
        "tethers": _said_once([tether_line(record, line) for line in item.tethers]),
        "cautions": [words.caution(record, caution) for caution in item.cautions],
        "minutes": item.minutes,
        "time": words.minutes(item.minutes) if item.minutes else "",
        "wait": wait(item),
        "tools": [name for name in item.tools if name not in {line.tool for line in item.fasteners}],
        "unknown": item.unknown,
        "conflicts": doubts.of_step(record, item),
        "state": dict(item.state),
        "state_words": state_words(item.state),
        "turns": [list(turn) for turn in running.turns(item)],
        "needs": dict(item.needs),
        "uses": [purposes.purpose(name).label for name in item.uses],
        "materials": [purchase(entry) for entry in tally.materials(item)],
        "new": item.new,
        "untimed": tally.time([item]).untimed,
        "source": list(thing.source) if isinstance(thing, Part | Prep) else [],
    }


def _on_side(record: VehicleRecord, thing: Part | Prep) -> str:
    """The side it is on in every car; empty where that is not one side, or not known."""
    fixed = len(record.vehicle.drive_side) == 1 or thing.mirrors == "no"
    return thing.on_side or "" if fixed else ""


def _motion(thing: object) -> str:
    if not isinstance(thing, Part):
        return ""
    way = {"up": "up", "down": "down"}.get(
        thing.direction, f"towards the {thing.direction}" if thing.direction in ("left", "right") else thing.direction
    )
    return f"{thing.release} {way}".strip()


def fastener_line(record: VehicleRecord, item: Step, line: FastenerLine) -> Data:
    """Fasteners of one sort in a step. `condition` is empty where the step's own holds for them too."""
    fastener = line.fastener
    drive = fastener.drive
    own = fastener.when if fastener.when.clauses else ALWAYS
    return {
        "fate": line.fate,
        "fate_words": _FATES[line.fate],
        "later": line.later,
        "later_words": _LATER[line.later],
        "kind": fastener.kind,
        "count": line.count if isinstance(line.count, int) else "unknown",
        "text": words.fastener(fastener),
        "detail": words.fastener_detail(fastener),
        "hidden_by": record.parts[fastener.under].name if fastener.under in record.parts else "",
        "tool": line.tool,
        "either": list(tally.either(line)),
        "single_use": fastener.single_use,
        "head": {"family": drive.family, "label": drive.label} if drive else None,
        "sort": fastener.what,
        "at": dict(fastener.at),
        "counts": [count(entry) for entry in tally.of_line(item, line)],
        "buy": [purchase(entry) for entry in tally.replacement(item, line)],
        "when": words.when(record, own),
        "clauses": words.clauses(own),
    }


def _said_once(lines: list[Data]) -> list[Data]:
    """Plugs that are tried in one and the same way: how is said at the last of them."""
    for line, other in pairwise(lines):
        if line["act"] == other["act"] == "try" and (line["how"], line["clauses"]) == (other["how"], other["clauses"]):
            line["how"] = ""
    return lines


def tether_line(record: VehicleRecord, line: TetherLine) -> Data:
    """One tether in a step; `part` and `side` say what it is on where the step is about something else."""
    tether = line.tether
    usual = states.tether_kind(tether.kind)
    by_kind = {"undo": usual.undo, "rejoin": usual.rejoin, "park": usual.park}
    words_of = table("tethers")
    return {
        "id": tether.id,
        "name": tether.name,
        "kind": tether.kind,
        "kind_words": states.tether_kind(tether.kind).label,
        "restraint": tether.circuit == "restraint",
        "circuit_words": _CIRCUITS[tether.circuit],
        "act": line.act,
        "act_words": by_kind.get(line.act) or words_of["act"][line.act],
        "later": list(line.later),
        "later_words": ", or ".join(words_of["later"][act] for act in line.later),
        "part": line.node.thing.name if line.node else "",
        "side": (line.node.side or "") if line.node else "",
        "serves": [purposes.purpose(name).label for name in purposes.served(tether)],
        "how": _how(line),
        "when": words.when(record, line.when),
        "clauses": words.clauses(line.when),
    }


def _how(line: TetherLine) -> str:
    if line.act == "try":
        return closing.words(line.tether)
    return line.tether.how if line.act in ("leave", "goes-with", "undo") else ""


def wait(item: Step) -> Data | None:
    """A wait: the maker's time, or that nobody has recorded it."""
    if item.wait is None:
        return None
    known = None if isinstance(item.wait.time, Blank) else item.wait.time
    return {
        "seconds": known.value if known else None,
        "text": show(known) if known else words.LOOK_UP,
        "why": item.wait.why,
        "source": list(item.wait.source),
    }


def state_words(state: Mapping[str, str]) -> str:
    """The state of the car beside a step: `battery off, ignition off`."""
    return ", ".join(f"{states.label(name).lower()} {value}" for name, value in state.items())


def count(entry: tally.Count) -> Data:
    """Fasteners of one sort with what becomes of them."""
    sort = ", ".join(part for part in (_sort(entry), entry.detail) if part)
    return {"sort": sort, **{fate: getattr(entry, fate) for fate in (*tally.FATES, "unrecorded")}}


def _sort(entry: tally.Count) -> str:
    return f"{entry.what} {entry.kind}"


def purchase(entry: tally.Purchase) -> Data:
    """Something single-use."""
    return {"count": entry.count, "what": entry.what, "part": entry.part}
