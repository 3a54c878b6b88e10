"""The states of the car: how it arrives, the usual way to set each, and what needs which."""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache

from undertrim.record.model import Opening, Part, Prep, States
from undertrim.record.model.kinds.usual import usual_for
from undertrim.resources import table

USUAL = "usual:"


@cache
def initial() -> Mapping[str, str]:
    """The value of each state when the car arrives; `unknown` where it may be any."""
    return {name: entry["initial"] for name, entry in table("states")["state"].items()}


@cache
def label(state: str) -> str:
    """The name of a state as shown."""
    text: str = table("states")["state"][state]["label"]
    return text


def way_back(prep: Prep) -> str:
    """What undoing a preparation is called: its own words, or the usual ones for each state that it set."""
    back = (str(table("states")["state"][state]["back"]) for state in prep.sets)
    return prep.restore_name or ", ".join(dict.fromkeys(back))


@cache
def usual() -> Mapping[tuple[str, str], Prep]:
    """The usual preparation for each (state, value); its id starts with `usual:`."""
    preps = [_usual_prep(entry) for entry in table("states")["usual"]]
    return {next(iter(prep.sets.items())): prep for prep in preps}


def _usual_prep(entry: dict[str, object]) -> Prep:
    needs, sets = entry.get("needs", {}), entry["sets"]
    assert isinstance(needs, dict)
    assert isinstance(sets, dict)
    return Prep(
        id=f"{USUAL}{entry['id']}",
        name=str(entry["name"]),
        sets=sets,
        needs=needs,
        how=str(entry["how"]),
        restore=str(entry.get("restore", "")),
        restore_name=str(entry.get("restore_name", "")),
    )


@cache
def together(state: str) -> bool:
    """Whether everything that sets a value of this state must be done for the car to be in it, as with several batteries."""
    return bool(table("states")["state"][state].get("together"))


@dataclass(frozen=True, slots=True)
class TetherKind:
    """What is usual for a kind of tether."""

    label: str
    noun: str
    electric: bool
    mechanical: bool
    undo: str
    rejoin: str
    park: str
    drawing: str = ""
    usual_test: str = ""
    serves: tuple[str, ...] = ()


@cache
def tether_kind(kind: str) -> TetherKind:
    """What is usual for this kind of tether."""
    entry = table("tethers")["kind"][kind]
    return TetherKind(**{**entry, "serves": tuple(entry.get("serves", ()))})


def needs_of(part: Part) -> States:
    """The states a part needs to come off: what it says, and the battery off where wiring is undone or restraint wiring moved."""
    wired = any(
        tether.circuit != "ordinary"
        or (tether.then not in ("leave", "goes-with") and tether_kind(tether.kind).electric)
        for tether in part.tethers.values()
    )
    implied = {"battery": "off"} if wired else {}
    return {**implied, **part.needs}


def needs(thing: Part | Prep | Opening) -> States:
    """The states a step needs: written, brought in by wiring, or usual for the kind of opening."""
    if isinstance(thing, Part):
        return needs_of(thing)
    if isinstance(thing, Prep):
        return thing.needs
    usual_here: States = usual_for(thing.kind)["needs"]
    return usual_here
