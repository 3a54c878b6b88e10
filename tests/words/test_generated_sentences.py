"""Every sentence that the program itself makes for a step, over all records and all their choices: short, one action, condition first.

Texts that a record typed are its writer's. A name of a record within a sentence of the program counts as one word.
"""

import re
from collections.abc import Iterator
from functools import cache
from pathlib import Path

import pytest

from undertrim.derive import cars
from undertrim.derive.evidence.disputed import reckoned
from undertrim.derive.procedure import running
from undertrim.derive.procedure.choices import Choices, choices
from undertrim.derive.procedure.planning import Planner, targets
from undertrim.derive.procedure.seen import seen
from undertrim.derive.procedure.steps import Step
from undertrim.derive.procedure.usual_caution import UsualCaution
from undertrim.publish.facts import blockers
from undertrim.publish.facts import steps as facts
from undertrim.record.model import VehicleRecord
from undertrim.record.store import Workspace
from undertrim.resources import table
from undertrim.words import Items, Message, Value, WayOut, Word, say, word
from undertrim.words.catalogue import english

WORKSPACE = Workspace.holding(Path(__file__))
SHIPPED = WORKSPACE.files([WORKSPACE.records / "vehicles"])
MOST_WORDS = 20
NAME = "It"
"""What stands for a name of a record."""


@cache
def record(path: Path) -> VehicleRecord:
    found = WORKSPACE.load(path).record
    assert isinstance(found, VehicleRecord)
    return reckoned(found)


@cache
def made(path: Path) -> Choices:
    return choices(Planner(record(path)))


def bare(value: Value) -> Value:
    """A value with every text of a record taken for one word."""
    if isinstance(value, Message):
        return Message(value.code, {name: bare(inner) for name, inner in value.values.items()})
    if isinstance(value, Items):
        return Items(tuple(map(bare, value.values)), value.joined)
    return NAME if isinstance(value, str) else value


def own(values: list[Value]) -> Iterator[str]:
    """The sentences among some values that are the program's own."""
    for value in values:
        if isinstance(value, Message | Items | Word | WayOut):
            yield from sentences(say(bare(value)))


def sentences(text: str) -> list[str]:
    return [part for part in re.split(r"(?<=[.!?])\s+", text.strip()) if part]


def told(about: VehicleRecord, step: Step) -> Iterator[Value]:
    """All that is said in a step."""
    yield step.title
    yield from (*step.text, *seen(step))
    for caution in step.cautions:
        if isinstance(caution, UsualCaution):
            yield from (caution.hazard, caution.consequence, caution.avoid)
    for tether in step.tethers:
        line = facts.tether_line(about, tether)
        yield from (line.act_words, line.later_words, line.how)
    for fastener in step.fasteners:
        shown = facts.fastener_line(about, step, fastener)
        yield from (shown.fate_words, shown.later_words)
    if wait := facts.wait(step):
        yield wait.why


def of_record(path: Path) -> list[str]:
    """Every sentence of the program in the steps of a record, and in what stands above them."""
    about = record(path)
    above = [text for item in blockers.blockers(about, path.stem) for text in (item.title, item.text)]
    steps = [value for step in made(path).steps for value in told(about, step)]
    return list(dict.fromkeys(own([*above, *steps])))


def of_tables() -> list[str]:
    """The sentences that a step may have, whether or not a shipped record brings them in."""
    found: list[Value] = []
    for name in table("cautions")["caution"]:
        found += [
            word("cautions", "caution", name, part)
            for part in ("hazard", "consequence", "avoid")
            if part in table("cautions")["caution"][name]
        ]
    for name, entry in table("states")["usual"].items():
        found += [word("states", "usual", name, part) for part in ("how", "restore") if part in entry]
    for name, entry in table("purposes")["purpose"].items():
        found += [word("purposes", "purpose", name, "try")] if "try" in entry else []
    for name, entry in table("tethers")["kind"].items():
        found += [
            word("tethers", "kind", name, part) for part in ("undo", "rejoin", "park", "usual_test") if part in entry
        ]
    for kind in ("receiver", "speaker"):
        for part in ("install", "test"):
            found += [word(f"kinds/{kind}", part, name, "text") for name in table(f"kinds/{kind}")[part]]
    rooms = ("steps", "seen", "blockers", "closed", "cautions")
    texts = [text for room in rooms for entry in english(room).values() for text in entry.values()]
    return [*own(found), *(part for text in texts for part in sentences(re.sub(r"\{\w+(:\w+)?\}", NAME, text)))]


ALL = pytest.mark.parametrize("where", [*SHIPPED, None], ids=lambda path: path.stem if path else "tables")


def every(where: Path | None) -> list[str]:
    return of_record(where) if where else of_tables()


@ALL
def test_a_sentence_has_at_most_twenty_words(where: Path | None) -> None:
    assert [text for text in every(where) if len(text.split()) > MOST_WORDS] == []


ACTIONS = (
    "add|bag|bin|build|call|cap|change|check|clip|close|compare|cover|deal|draw|feel|find|fit|fix|fold|handle|have|"
    "hold|hook|insulate|join|keep|label|latch|lay|leave|let|listen|lock|look|lower|measure|meter|move|open|order|play|"
    "plug|press|prop|pull|push|put|read|refit|release|route|seal|see|set|shut|slide|stop|switch|take|test|tie|"
    "tighten|touch|try|tune|turn|unclip|unhook|unlock|unplug|wait|watch|work|write"
)
_ACTION = re.compile(rf"(?:^|, and |, then |, | and |; |: )(?:then )?({ACTIONS})\b", re.IGNORECASE)
_BAN = re.compile(r"(?:do not|never|no) ", re.IGNORECASE)


def actions(text: str) -> list[str]:
    """What a sentence tells the hands to do; a ban is one, however much it bans."""
    rest = _after_condition(text)
    return [] if _BAN.match(rest) else [found.lower() for found in _ACTION.findall(rest)]


@ALL
def test_a_sentence_tells_one_action(where: Path | None) -> None:
    assert [text for text in every(where) if len(actions(text)) > 1] == []


@pytest.mark.parametrize(
    ("text", "count"),
    [
        ("Open the bonnet and prop it.", 2),
        ("Insulate it, label it and tie it back.", 3),
        ("If you see orange, stop.", 1),
        ("Where a colour differs from the table, meter it first.", 1),
        ("Do not cut, drill or blow out this door.", 0),
        ("Look it up, and open no connector.", 2),
        ("Lay the receiver, kit and harness beside the factory unit.", 1),
    ],
)
def test_actions_are_counted(text: str, count: int) -> None:
    assert len(actions(text)) == count


_CONDITION = re.compile(r"(?<!\bas)(?<![,:])\s(?:if|unless|when|whenever|once|before)\s", re.IGNORECASE)


@ALL
def test_a_condition_comes_first(where: Path | None) -> None:
    """Who reads one thing at a time has done it before a condition behind it is read."""
    told_to = [text for text in every(where) if actions(text) or _BAN.match(text)]
    assert [text for text in told_to if _CONDITION.search(_after_condition(text))] == []


def _after_condition(text: str) -> str:
    """The text without the condition at its head."""
    head = re.match(r"(?:After|Before|If|Once|Unless|Until|When|Where|While|With)\b.*?, ", text)
    return text[head.end() :] if head else text


@pytest.mark.parametrize("path", SHIPPED, ids=lambda path: path.stem)
def test_a_step_about_the_state_of_the_car_names_what_to_see(path: Path) -> None:
    about = record(path)
    planner, every_place = Planner(about), targets(about)
    visits = [*((place,) for place in every_place), every_place]
    steps = {
        step.id: step
        for car in cars.assignments(about)
        for visit in visits
        for step in planner.plan(visit, car).steps
        if step.kind in ("prepare", "restore", "power")
    }
    assert [name for name, step in steps.items() if not seen(step)] == []
    assert any(say(one) == "Battery off: the dash stays dark." for step in steps.values() for one in seen(step))


def test_every_state_has_something_to_see() -> None:
    values = {(state, entry["initial"]) for state, entry in table("states")["state"].items()}
    values |= {pair for entry in table("states")["usual"].values() for pair in entry["sets"].items()}
    named = {f"{state}-{value}".replace(" ", "-") for state, value in (*values, ("battery", running.PARTLY))}
    assert named <= set(english("seen"))
