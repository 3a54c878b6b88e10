"""What a record still wants to know: nothing unknown is left unasked, nothing known is asked, and each answer has its form."""

from functools import cache
from pathlib import Path

import pytest
from markdown.extensions.toc import slugify

from claiming import FILE, RECORD
from pages import HANDBOOK, prose
from spoiling import RECORDS, ROOT
from undertrim.derive.claims.addresses import AtCar, address_of, place_of
from undertrim.derive.evidence.fingerprint import BY_ID, WHOLE
from undertrim.derive.questions import AnswerForm, Question, Sort, questions
from undertrim.record.model import VehicleRecord
from undertrim.record.source import Data, Pointer, read_text
from undertrim.record.store import Entry, Workspace
from undertrim.resources import table
from undertrim.words import say


@cache
def entry(path: Path) -> Entry:
    return Workspace(ROOT).load(path)


def asked(item: Entry) -> tuple[Question, ...]:
    assert isinstance(item.record, VehicleRecord)
    return questions(item.record, item.source)


def of(text: str) -> dict[str, Question]:
    item = Workspace(ROOT).entry(ROOT / FILE, read_text(text, FILE))
    assert not item.problems, item.problems
    return {question.about: question for question in asked(item)}


def unknown(data: Data, place: Pointer = ()) -> list[Pointer]:
    if isinstance(data, dict):
        return [found for key, inner in data.items() for found in unknown(inner, (*place, key))]
    if isinstance(data, list):
        words = [place] if "unknown" in data else []
        return words + [
            found
            for number, inner in enumerate(data)
            if inner != "unknown"
            for found in unknown(inner, (*place, number))
        ]
    return [place] if data == "unknown" else []


@pytest.mark.parametrize("path", RECORDS, ids=lambda path: path.stem)
def test_every_unknown_is_asked_for_and_every_field_leads_to_the_record(path: Path) -> None:
    item = entry(path)
    fields = {field.about: field for question in asked(item) for field in question.fields}
    wanted = {address_of(item.source, place) for place in unknown(item.source.data) if place[0] in (*BY_ID, *WHOLE)}
    assert wanted <= fields.keys() | {"after_battery", "after_battery/not_listed"}
    for question in asked(item):
        assert say(question.ask)
        assert say(question.why)
        choices = {name: said if isinstance(said, str) else said[0] for name, said in question.cars.items()}
        for field in question.fields:
            assert place_of(item.source, tuple(field.about.split("/")), AtCar(choices))
            assert field.stands in ("", "unknown") or question.sort in (Sort.CONFLICT, Sort.COARSE)


@pytest.mark.parametrize("path", RECORDS, ids=lambda path: path.stem)
def test_no_field_is_asked_twice_of_one_car(path: Path) -> None:
    every = [(field.about, str(question.cars)) for question in asked(entry(path)) for field in question.fields]
    assert len(every) == len(set(every))


def test_a_form_says_what_may_be_answered() -> None:
    found = of(RECORD)
    depth = found["openings/front-door/depth"]
    forms = {field.about.split("/")[-1]: field.form for field in depth.fields}
    assert forms["clear"] == AnswerForm("quantity", "length", ("mm", "in"), "20 mm", "500 mm", unknown=True)
    assert forms["obstruction"].choices == ("glass", "metal", "plastic", "soft", "wiring")
    assert "datum" not in forms
    sensor = found["openings/front-door/crash_sensor"].fields[0]
    assert sensor.form == AnswerForm("choice", choices=("yes", "no"), unknown=True)
    assert found["openings/front-door/crash_sensor"].sort is Sort.SAFETY
    reverse = found["functions/reverse"].fields
    assert [field.about for field in reverse] == ["functions/reverse/by", "functions/reverse/note"]
    assert reverse[1].only_if == ("functions/reverse/by", ("wire",))


def test_what_depends_on_another_answer_says_so() -> None:
    hole = of(
        RECORD.replace("hole: [round, 146 mm]", "room_to_grille: 22 mm").replace(
            "depth: {clear: unknown", "hole: {shape: round, diameter: 146 mm}\n    depth: {clear: unknown"
        )
    )
    assert "openings/front-door/hole" not in hole
    panel = of(RECORD)["openings/front-door/panel"].fields
    assert [field.about.split("/")[-1] for field in panel] == ["width", "height"]


def test_what_nobody_ever_said_is_asked() -> None:
    found = of(RECORD)
    assert found["functions/illumination"].sort is Sort.FUNCTION
    assert "functions/reverse" in found
    assert found["areas/rear-door"].fields == ()
    assert say(found["areas/rear-door"].ask).startswith("look whether there is a speaker in the area")
    assert "areas/rear-door" not in of(RECORD.replace("bodies: hatchback", "bodies: coupe"))


def test_a_coarse_instrument_is_asked_again() -> None:
    coarse = of(RECORD.replace("with: Calliper 0.05 mm", "with: Tape 1 cm").replace("146 mm", "150 mm"))
    assert coarse["openings/front-door/hole/diameter"].sort is Sort.COARSE
    assert coarse["openings/front-door/hole/diameter"].fields[0].stands == "150 mm"
    assert "openings/front-door/hole/diameter" not in of(RECORD)


def test_a_dispute_is_asked_with_what_is_claimed() -> None:
    about = "openings/front-door/hole/diameter"
    text = f"{RECORD}\nconflicts:\n  hole: {{about: {about}, claims: [[146 mm, e1], [144 mm, e2]]}}\n"
    question = of(text)[about]
    assert question.sort is Sort.CONFLICT
    assert say(question.why) == "it stands against each other: 146 mm (e1) or 144 mm (e2)"


def test_a_question_for_some_cars_names_them() -> None:
    found = {
        str(question.cars): question for question in of(RECORD).values() if question.about == "openings/dash/depth"
    }
    assert {"openings/dash/depth"} == {question.about for question in found.values()}


def test_safety_comes_first() -> None:
    order = list(Sort)
    sorts = [order.index(question.sort) for question in asked(entry(RECORDS[0]))]
    assert sorts == sorted(sorts)


def test_the_handbook_has_the_sections() -> None:
    for row in table("questions")["how"]:
        page, _, anchor = row["at"].partition("#")
        headings = [line.lstrip("# ") for line in prose(HANDBOOK / page).splitlines() if line.startswith("#")]
        assert not anchor or anchor in {slugify(heading, "-") for heading in headings}, row
