"""Steps as data, with all the words a page or sheet needs."""

from collections.abc import Mapping, Sequence
from dataclasses import replace
from itertools import pairwise

from undertrim.derive.procedure import closing, purposes, running, states, tally, waits
from undertrim.derive.procedure.fates import TetherLine
from undertrim.derive.procedure.seen import seen
from undertrim.derive.procedure.steps import FastenerLine, Step
from undertrim.publish.facts import doubts, places, words
from undertrim.publish.facts.shown_steps import (
    Head,
    Purchase,
    ShownFastenerLine,
    ShownTetherLine,
    ShownWait,
    Tally,
    ToldStep,
)
from undertrim.record.model import ALWAYS, Blank, Part, Prep, VehicleRecord
from undertrim.words import Value, message, word

VERBS = {"remove": message("verbs/remove"), "refit": message("sections/refit")}
"""What is done, for the kinds of step whose title only names a part."""


def section_title(section: str) -> Value:
    """What a section of the procedure is called."""
    return message(f"sections/{section}")


def step(record: VehicleRecord, item: Step, state: Mapping[str, str] | None = None) -> ToldStep:
    """One step; `state` is that of the car where it is another one than the step's own."""
    # Long because it is one table: what a step says, a line each.
    state = item.state if state is None else state
    thing = item.node.worked if item.node else None
    by_line = {line.tool for line in item.fasteners}
    return ToldStep(
        id=item.id,
        kind=item.kind,
        section=item.section,
        verb=VERBS.get(item.kind, ""),
        title=item.title,
        part=item.part,
        side=item.side,
        on_side=_on_side(record, thing) if isinstance(thing, Part | Prep) else "",
        text=[*item.text, *seen(item)],
        motion=_motion(thing) if item.kind == "remove" else "",
        directed=item.kind == "remove" and isinstance(thing, Part) and bool(thing.release and thing.direction),
        place=places.places(record, thing) if thing and item.kind != "wait" else [],
        area=thing.area if isinstance(thing, Part | Prep) else "",
        fasteners=[fastener_line(record, item, line) for line in item.fasteners],
        tethers=_said_once([tether_line(record, line) for line in item.tethers]),
        cautions=[words.caution(record, caution) for caution in item.cautions],
        minutes=item.minutes,
        time=words.minutes(item.minutes) if item.minutes else "",
        wait=wait(item),
        tools=[name for name in item.tools if name not in by_line],
        unknown=item.unknown,
        conflicts=doubts.of_step(record, item),
        state=dict(state),
        state_words=state_words(state),
        turns=running.turns(item),
        needs=dict(item.needs),
        uses=[purposes.purpose(name).label for name in item.uses],
        materials=[purchase(entry) for entry in tally.materials(item)],
        new=item.new,
        untimed=tally.time([item]).untimed,
        source=thing.source if isinstance(thing, Part | Prep) else (),
    )


def _on_side(record: VehicleRecord, thing: Part | Prep) -> str:
    """The side it is on in every car; empty where that is not one side, or not known."""
    fixed = len(record.vehicle.drive_side) == 1 or thing.mirrors == "no"
    return thing.on_side or "" if fixed else ""


def _motion(thing: object) -> Value:
    """How a part comes off: `pull towards the left`; empty where that is not recorded."""
    if not isinstance(thing, Part) or not thing.release:
        return ""
    motion = message(f"motions/{thing.release}")
    way = message(f"motions/way-{thing.direction}") if thing.direction else ""
    return message("motions/directed", motion=motion, way=way) if way else motion


def fastener_line(record: VehicleRecord, item: Step, line: FastenerLine) -> ShownFastenerLine:
    """Fasteners of one sort in a step. `condition` is empty where the step's own holds for them too."""
    # Long because it is one table: what is said of them, a line each.
    fastener = line.fastener
    drive = fastener.drive
    own = fastener.when if fastener.when.clauses else ALWAYS
    return ShownFastenerLine(
        fate=line.fate,
        fate_words=message(f"fasteners/{line.fate}"),
        later=line.later,
        later_words=message(f"fasteners/later-{line.later}") if line.later else "",
        kind=fastener.kind,
        count=line.count if isinstance(line.count, int) else "unknown",
        text=words.fastener(fastener),
        detail=words.fastener_detail(fastener),
        hidden_by=record.parts[fastener.under].name if fastener.under in record.parts else "",
        tool=line.tool,
        either=tally.either(line),
        single_use=fastener.single_use,
        head=Head(drive.family, drive.label) if drive else None,
        sort=fastener.what,
        at=dict(fastener.at),
        where=fastener.where,
        torque=words.tightness(fastener),
        counts=[count(entry) for entry in tally.of_line(item, line)],
        buy=[purchase(entry) for entry in tally.replacement(item, line)],
        when=words.when(record, own),
        clauses=words.clauses(own),
    )


def _said_once(lines: Sequence[ShownTetherLine]) -> list[ShownTetherLine]:
    """Plugs that are tried in one and the same way: how is said at the last of them."""
    again = [
        line.act == other.act == "try" and (line.how, line.clauses) == (other.how, other.clauses)
        for line, other in pairwise(lines)
    ]
    return [replace(line, how="") if known else line for line, known in zip(lines, (*again, False), strict=False)]


def tether_line(record: VehicleRecord, line: TetherLine) -> ShownTetherLine:
    """One tether in a step; `part` and `side` say what it is on where the step is about something else."""
    tether = line.tether
    usual = states.tether_kind(tether.kind)
    by_kind = {"undo": usual.undo, "rejoin": usual.rejoin, "park": usual.park}
    return ShownTetherLine(
        id=tether.id,
        name=tether.name,
        kind=tether.kind,
        kind_words=states.tether_kind(tether.kind).label,
        restraint=tether.circuit == "restraint",
        circuit_words="" if tether.circuit == "ordinary" else message(f"tethers/{tether.circuit}"),
        act=line.act,
        act_words=by_kind.get(line.act) or word("tethers", "act", line.act, "label"),
        later=line.later,
        later_words=words.listed(*(word("tethers", "later", act, "label") for act in line.later), joined="comma-or"),
        part=line.node.thing.name if line.node else "",
        side=(line.node.side or "") if line.node else "",
        serves=[purposes.purpose(name).label for name in purposes.served(tether)],
        how=_how(line),
        when=words.when(record, line.when),
        clauses=words.clauses(line.when),
    )


def _how(line: TetherLine) -> Value:
    if line.act == "try":
        return closing.words(line.tether)
    return line.tether.how if line.act in ("leave", "goes-with", "undo") else ""


def wait(item: Step) -> ShownWait | None:
    """A wait: the maker's time, or that nobody has recorded it."""
    if item.wait is None:
        return None
    known = None if isinstance(item.wait.time, Blank) else item.wait.time
    return ShownWait(
        seconds=known.value if known else None,
        text=known or words.LOOK_UP,
        why=waits.why(item.wait),
        source=item.wait.source,
    )


def state_words(state: Mapping[str, str]) -> Value:
    """The state of the car beside a step: `battery off, ignition off`."""
    return words.listed(*(message(f"states/{name}-{value}".replace(" ", "-")) for name, value in state.items()))


def count(entry: tally.Count) -> Tally:
    """Fasteners of one sort with what becomes of them."""
    sort = message("fasteners/of-sort", kind=word("fasteners", entry.kind, "label"), sort=entry.what)
    return Tally(
        sort=words.listed(sort, entry.detail),
        out=entry.out,
        back=entry.back,
        moved=entry.moved,
        bagged=entry.bagged,
        binned=entry.binned,
        new=entry.new,
        unrecorded=entry.unrecorded,
    )


def purchase(entry: tally.Purchase) -> Purchase:
    """Something single-use."""
    return Purchase(entry.count, entry.what, entry.part)
