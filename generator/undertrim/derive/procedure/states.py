"""The states of the car: how it arrives, the usual way to set each, and what needs which."""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache

from undertrim.record.model import Opening, Part, Prep, Reached, States
from undertrim.record.model.kinds.usual import usual_for
from undertrim.resources import table
from undertrim.words import Items, Value, Word, word

USUAL = "usual:"


@cache
def initial() -> Mapping[str, str]:
    """The value of each state when the car arrives; `unknown` where it may be any."""
    return {name: entry["initial"] for name, entry in table("states")["state"].items()}


def called(thing: Part | Prep | Opening | Reached) -> Value:
    """The name of a thing: as the record has it, or that of a usual preparation."""
    return thing.name or _usual_word(thing.id, "name")


def way(prep: Prep) -> Value:
    """How a preparation is done."""
    return prep.how or _usual_word(prep.id, "how")


def undoing(prep: Prep) -> Value:
    """How a preparation is undone; empty where nothing needs undoing."""
    return prep.restore or _usual_word(prep.id, "restore")


def way_back(prep: Prep) -> Value:
    """What undoing a preparation is called: its own words, or the usual ones for each state that it set."""
    back = dict.fromkeys(word("states", "state", state, "back") for state in prep.sets)
    return prep.restore_name or _usual_word(prep.id, "restore_name") or Items(tuple(back), "comma")


def _usual_word(prep: str, key: str) -> Value:
    """A word of a usual preparation; empty where it has none, or is none."""
    name = prep.removeprefix(USUAL)
    return word("states", "usual", name, key) if key in _usual_entry(prep) else ""


def _usual_entry(prep: str) -> Mapping[str, object]:
    entries: Mapping[str, Mapping[str, object]] = table("states")["usual"]
    return entries.get(prep.removeprefix(USUAL), {}) if prep.startswith(USUAL) else {}


@cache
def usual() -> Mapping[tuple[str, str], Prep]:
    """The usual preparation for each (state, value); its id starts with `usual:`, and its words are those of the table (`called`, `way`)."""
    preps = [_usual_prep(name, entry) for name, entry in table("states")["usual"].items()]
    return {next(iter(prep.sets.items())): prep for prep in preps}


def _usual_prep(name: str, entry: Mapping[str, States]) -> Prep:
    return Prep(id=f"{USUAL}{name}", name="", sets=entry["sets"], needs=entry.get("needs", {}), how="")


@cache
def together(state: str) -> bool:
    """Whether everything that sets a value of this state must be done for the car to be in it, as with several batteries."""
    return bool(table("states")["state"][state].get("together"))


def is_usual(thing: Part | Prep | Opening | Reached) -> bool:
    """Whether it is a usual preparation, and none of the record."""
    return thing.id.startswith(USUAL)


@dataclass(frozen=True, slots=True)
class TetherKind:
    """What is usual for a kind of tether; `undo`, `rejoin` and `park` are what the hand does, `usual_test` is empty where none is."""

    label: Word
    electric: bool
    mechanical: bool
    undo: Word
    rejoin: Word
    park: Word
    usual_test: Word | None = None
    serves: tuple[str, ...] = ()


@cache
def tether_kind(kind: str) -> TetherKind:
    """What is usual for this kind of tether."""
    entry = table("tethers")["kind"][kind]

    def said(key: str) -> Word:
        return word("tethers", "kind", kind, key)

    return TetherKind(
        said("label"), entry["electric"], entry["mechanical"], said("undo"), said("rejoin"), said("park"),
        said("usual_test") if "usual_test" in entry else None, tuple(entry.get("serves", ())),
    )  # fmt: skip


def needs_of(part: Part) -> States:
    """The states a part needs to come off: what it says, and the battery off where wiring is undone or restraint wiring moved."""
    wired = any(
        tether.circuit != "ordinary"
        or (tether.then not in ("leave", "goes-with") and tether_kind(tether.kind).electric)
        for tether in part.tethers.values()
    )
    implied = {"battery": "off"} if wired else {}
    return {**implied, **part.needs}


def needs(thing: Part | Prep | Opening | Reached) -> States:
    """The states a step needs: written, brought in by wiring, or usual for the kind of opening."""
    if isinstance(thing, Part):
        return needs_of(thing)
    if isinstance(thing, Prep):
        return thing.needs
    if isinstance(thing, Reached):
        return {}
    return usual_for(thing.kind).needs
