"""Steps: what the tech does, one at a time, with everything the step needs; here their shape, made by the modules that end in `_steps`.

A step's id is `<kind>:<node>` or `<kind>:<node>:<detail>`, made of record ids only, so it stays the same as long as they do.
"""

from collections.abc import Mapping
from dataclasses import dataclass, field

from undertrim.derive.procedure.fates import TetherLine
from undertrim.derive.procedure.node import Node
from undertrim.derive.procedure.tools import tool_for
from undertrim.derive.procedure.usual_caution import AnyCaution
from undertrim.record.model import Assignment, Caution, Count, Fastener, Wait
from undertrim.words import Value

SECTIONS = ("before", "prepare", "remove", "install", "test", "refit", "restore", "try", "after")


@dataclass(frozen=True, slots=True)
class FastenerLine:
    """Fasteners of one sort in one step; `fate` is out, back, moved, bagged, binned, new or leave.

    `later` says where those end that come out and do not simply go back: bagged, moved or binned.
    """

    fastener: Fastener
    fate: str
    later: str = ""

    @property
    def count(self) -> Count | None:
        """How many; None where the record says nothing."""
        return self.fastener.count

    @property
    def tool(self) -> Value:
        """The tool for them in this step; empty for bare hands."""
        return tool_for(self.fastener, back=self.fate not in ("out", "leave"))


@dataclass(frozen=True, slots=True)
class Step:
    """One step of a procedure. `minutes` is None where no time is recorded; `unknown` marks a fact to look up.

    A test `needs` states of the car and whatever works through it of what it `uses` joined. `again` marks what was done before in the
    same visit, so that nothing is counted twice. `seal` is what the step seals its part with again.
    """

    id: str
    kind: str
    section: str
    title: Value
    text: tuple[Value, ...] = ()
    node: Node | None = None
    fasteners: tuple[FastenerLine, ...] = ()
    tethers: tuple[TetherLine, ...] = ()
    cautions: tuple[AnyCaution, ...] = ()
    minutes: float | None = None
    wait: Wait | None = None
    tools: tuple[Value, ...] = ()
    unknown: bool = False
    new: bool = False
    """Whether a new part goes in here in the place of one that was spoilt as it came off."""
    seal: str = ""
    state: Mapping[str, str] = field(default_factory=dict)
    needs: Mapping[str, str] = field(default_factory=dict)
    uses: tuple[str, ...] = ()
    again: bool = False
    builds: bool = False
    """Whether it tells how what goes between is built up."""
    last: bool = False
    """Whether it waits until all gear of the visit is in."""
    shared: str = ""
    """What it is about, if that serves several openings of a visit: of those with the same the first is enough."""
    along: str = ""
    """The id of the run along which cable is laid in it."""
    detail: str = ""
    """What it is within its kind: how the ignition is turned, the entry of what is to do, the usual step of a kind of opening."""

    @property
    def part(self) -> str:
        """The record id of the part, preparation or opening it is about; empty for a general step."""
        return self.node.thing.id if self.node else ""

    @property
    def side(self) -> str:
        """The side it is done at; empty where there is only one."""
        return (self.node.side or "") if self.node else ""


def text(*parts: Value) -> tuple[Value, ...]:
    """The text of a step, of those parts that say something."""
    return tuple(part for part in parts if part)


def live(cautions: tuple[Caution, ...], car: Assignment) -> tuple[Caution, ...]:
    """The cautions of a record that hold for this car."""
    return tuple(caution for caution in cautions if caution.when.holds(car))
