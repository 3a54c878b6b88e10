"""A form, filled in at random, becomes a claim, the claim a fact of the record, and the fact is what was typed: its question is gone, and nothing else changed.

Records are made at random: what is known of each field, what is unknown and what is silent differs. `UNDERTRIM_TESTS=thorough` makes 10,000 of them, anew each time.
"""

import json
import os
import random
from pathlib import Path
from typing import Any

import pytest

from claiming import RECORD
from undertrim.derive.claims import Deed, Taking
from undertrim.derive.claims.addresses import AtCar, place_of
from undertrim.derive.questions.interview import Interview
from undertrim.derive.questions.question import AnswerForm, Field
from undertrim.record.changing.edits import at
from undertrim.record.claims import Answer, reading
from undertrim.record.model import VehicleRecord
from undertrim.record.source import Data, Source, read_text
from undertrim.record.store import Entry, Workspace

THOROUGH = os.environ.get("UNDERTRIM_TESTS") == "thorough"
RECORDS, PIECES = (10_000, 20) if THOROUGH else (24, 2)
HERE = Workspace(Path("nowhere").absolute())
PLACE = HERE.records / "vehicles" / "brindleway" / "otter-2014-2018.yaml"
CAR: dict[str, Any] = {"year": "2015", "is": {"radio": "plain"}}
FUNCTIONS = ("reverse", "speed", "parking-brake", "illumination", "ground", "battery-feed", "mute")
COLOURS = ("red", "red/white", "light green", "brown/yellow")


def text_of(draw: random.Random) -> str:
    """A record: the one of these tests with other fields known, unknown and silent."""
    # Long because each line is a piece of the record.

    def or_unknown(value: str) -> str:
        return draw.choice((value, "unknown"))

    def maybe(text: str) -> str:
        return draw.choice((text, ""))

    made = RECORD
    waits = f"{{wait: {or_unknown('2 min')}, memory_keeper: {or_unknown('forbidden')}, read_faults_first: {or_unknown('yes')}, source: e1}}"
    clear = f"{{when: {{radio: plain}}, clear: {or_unknown(f'{draw.randint(120, 190)} mm')}}}"
    depth = f"{{clear: {or_unknown('58 mm')}{maybe(', obstruction: glass')}, datum: skin, over: whole-travel}}"
    unknown = draw.sample(FUNCTIONS, draw.randint(1, 4))
    pins = "".join(
        f"\n      {n}: {{colour: {or_unknown(draw.choice(COLOURS))}, function: {name}}}"
        for n, name in enumerate(FUNCTIONS, 1)
        if name not in unknown
    )
    plug = f"connectors:\n  power:\n    name: Power plug\n    at: radio/main\n    face: {{view: wires, rows: 1, columns: 8, latch: {or_unknown('top')}, numbering: unknown}}\n    pins:{pins}\n    source: e1\n\n"
    for old, new in (
        ("{wait: unknown, memory_keeper: unknown, read_faults_first: unknown}", waits),
        ("{when: {radio: plain}, clear: unknown}", clear),
        ("{clear: unknown, datum: skin, over: whole-travel}", depth),
        ("crash_sensor: unknown", f"crash_sensor: {or_unknown('no')}"),
        ("{functions: [reverse, speed]}", f"{{functions: [{', '.join(unknown)}]}}"),
        ("{output: unknown}", f"{{output: {or_unknown('speaker')}{maybe(', least_load: unknown')}}}"),
        (
            "sizes: {hole",
            draw.choice(
                ("sizes: {hole", "sizes: {room_to_grille: unknown, hole", "sizes: {factory_spacer: unknown, hole")
            ),
        ),
        (
            "    source: [e1, e2]\n  front-door-speaker",
            "    tethers: {main: [Main plug, plug, sound]}\n    source: [e1, e2]\n  front-door-speaker",
        ),
        ("functions:\n", f"{plug}functions:\n"),
    ):
        assert old in made, old
        made = made.replace(old, new, 1)
    return made


def entry(text: str) -> Entry:
    return HERE.entry(PLACE, read_text(text, PLACE))


def filled(draw: random.Random, form: AnswerForm) -> str:
    """What somebody may fill in: a word of the list, a number in one of the offered units and within its range, or text."""
    if form.quantity:
        least, most = (float(text.split()[0]) for text in (form.least or "1", form.most or "9"))
        unit = form.least.partition(" ")[2]
        number = draw.uniform(least, most)
        return f"{number:.{draw.randint(0, 2)}f} {unit}".strip() if number >= 1 else f"{number:.3f} {unit}".strip()
    if form.sort == "choices":
        return ", ".join(draw.sample(form.choices, draw.randint(1, len(form.choices)))) if form.choices else ""
    if form.choices:
        return draw.choice(form.choices)
    sorts = {"number": str(draw.randint(1, 8)), "colour": draw.choice(COLOURS), "drive": "T20", "pin": "power/1"}
    return sorts.get(form.sort, draw.choice(("Cross-beam", "Left, behind the lever: a bar", "'Quoted' \"text\" #1")))


def claim(folder: Path, field: Field, says: str) -> Answer:
    """The answer as it leaves a form: a claims file, read as 'take' reads it."""
    data = {
        "claims": 1, "vehicle": "brindleway/otter-2014-2018", "by": "zz", "on": "2026-11-20", "how": "measured", "with": "Calliper 0.05 mm, 1 deg, 1 ohm, 1 s",
        "car": CAR, "answers": [{"about": field.about, "says": says}],
    }  # fmt: skip
    file = folder / "x.json"
    file.write_text(json.dumps(data), encoding="utf-8")
    read = reading.read(file)
    assert not read.bad, (data, read.bad)
    (found,) = read.answers
    return found


def asked(item: Entry) -> dict[str, Field]:
    """The fields that this car can still answer, by their addresses."""
    assert isinstance(item.record, VehicleRecord), item.problems
    interview = Interview.at(item.record, item.source, CAR)
    every = (field for question in interview.questions() for field in question.fields)
    told = (field for field in every if interview.asks(field, {}) and field.stands in ("", "unknown"))
    return {field.about: field for field in told}


def taken(item: Entry, answer: Answer) -> tuple[Entry, Deed, str]:
    def read(text: str) -> Source:
        return HERE.whole(PLACE, read_text(text, PLACE))

    def build(source: Source) -> VehicleRecord | None:
        record = HERE.entry(PLACE, source.as_typed).record
        return record if isinstance(record, VehicleRecord) else None

    assert isinstance(item.record, VehicleRecord)
    source, outcome = Taking(item.source, item.record, read, build, item.source).take(answer)
    return entry(source.as_typed.text), outcome.deed, str(outcome.said)


def leaves(data: Data, way: tuple[Any, ...] = ()) -> dict[tuple[Any, ...], str]:
    """Every text of a record but those that say where it is from, and 'unknown', which is what silence says too."""
    if isinstance(data, dict | list):
        inside = data.items() if isinstance(data, dict) else enumerate(data)
        return {
            place: text
            for key, inner in inside
            if key != "source"
            for place, text in leaves(inner, (*way, key)).items()
        }
    return {} if data in (None, "unknown") or way[0] == "evidence" else {way: str(data)}


@pytest.mark.parametrize("piece", range(PIECES))
def test_what_was_filled_in_is_what_the_record_says(piece: int, tmp_path: Path) -> None:
    # Long because one answer is followed from its form to the next form.
    seed = random.SystemRandom().randrange(1 << 32) if THOROUGH else piece
    for number in range(RECORDS // PIECES):
        draw = random.Random(f"{seed}-{number}")  # noqa: S311 - a draw, no secret
        text = text_of(draw)
        before = entry(text)
        assert not before.problems, (text, before.problems)
        fields = asked(before)
        field = fields[draw.choice(sorted(fields))]
        says = filled(draw, field.form)
        after, deed, said = taken(before, claim(tmp_path, field, says))
        told = (seed, number, field.about, says, said)
        assert deed is Deed.FILLED, told
        place = place_of(after.source, tuple(field.about.split("/")), AtCar(CAR["is"]))
        value = at(after.source.data, place)
        assert (", ".join(value) if isinstance(value, list) else value) == says, told
        assert field.about not in asked(after), told
        was, now = leaves(before.source.data), leaves(after.source.data)
        assert {
            way for way in was.keys() | now.keys() if was.get(way) != now.get(way) and way[: len(place)] != place
        } == set(), told
        again, deed, _ = taken(after, claim(tmp_path, field, says))
        assert (deed, again.source.as_typed.text) == (Deed.ALREADY, after.source.as_typed.text), told
