"""An opening that is written once for several kinds of car is asked for by the id it is written under, in every word of a visit."""

import shutil
from pathlib import Path

import pytest

from undertrim.check.shelf import stock
from undertrim.cli import main
from undertrim.derive.fit.answers import Vehicle
from undertrim.derive.fit.clearances import clearances
from undertrim.derive.visit import text
from undertrim.derive.visit.understanding import understood, visit
from undertrim.record.lookup import vehicle_file
from undertrim.record.model import VehicleRecord
from undertrim.record.store import Workspace
from undertrim.words import say

ROOT = Path(__file__).parents[3]
FINCH = "finch-2014-2018"
FORMS = ["dash-plain", "dash-map"]


@pytest.fixture(scope="module")
def place(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The shipped records; in the Finch the cross-beam is nearer behind the map radio, so that its dash stands in two forms."""
    folder = tmp_path_factory.mktemp("forms")
    shutil.copytree(ROOT / "records", folder / "records")
    file = folder / f"records/vehicles/kelbrook/{FINCH}.yaml"
    old = "depth: {clear: 172 mm, datum: face,"
    new = "depth: {clear: [{when: {radio: plain}, is: 172 mm}, {when: {radio: map}, is: 168 mm}], datum: face,"
    assert file.read_text("utf-8").count(old) == 1
    file.write_text(file.read_text("utf-8").replace(old, new), "utf-8")
    return folder


@pytest.fixture(scope="module")
def finch(place: Path) -> Vehicle:
    held = Workspace(place)
    entry = held.load(vehicle_file(held, FINCH))
    assert isinstance(entry.record, VehicleRecord), entry.problems
    return Vehicle(entry.record, entry.address, stock(held), clearances())


ALL = "jobs=dash&dash=skerrowe-broadside&dash.kit=sandmartin-dk-f14"


@pytest.mark.parametrize(
    ("words", "forms", "written"),
    [
        ("jobs=dash", FORMS, "jobs=dash"),
        ("jobs=dash-plain,dash-map", FORMS, "jobs=dash"),
        ("jobs=dash-map", ["dash-map"], "jobs=dash-map"),
        ("jobs=dash&radio=map", ["dash-map"], "jobs=dash&radio=map"),
        ("jobs=dash-map&radio=map", ["dash-map"], "jobs=dash&radio=map"),
        ("radio=map&dash=skerrowe-broadside", ["dash-map"], "jobs=dash&radio=map&dash=skerrowe-broadside"),
        (ALL, FORMS, ALL),
        (ALL.replace("&dash=", "&dash.gear="), FORMS, ALL),
        (
            "jobs=dash&dash-map=skerrowe-broadside",
            FORMS,
            "jobs=dash&dash-map=skerrowe-broadside",
        ),
        (
            "jobs=dash,front-door@left&dash-map=skerrowe-broadside&dash-plain=skerrowe-chart-2",
            [*FORMS, "front-door"],
            "jobs=dash,front-door@left&dash-plain=skerrowe-chart-2&dash-map=skerrowe-broadside",
        ),
    ],
)
def test_an_id_as_typed_means_the_forms_of_the_cars_left_open(
    finch: Vehicle, words: str, forms: list[str], written: str
) -> None:
    made = visit(finch, text.parse(f"{FINCH}?{words}"))
    assert [opening.id for opening in made.openings] == forms
    assert text.words(made) == written
    again = visit(finch, text.parse(text.write(made)))
    assert (again.targets, again.gear, again.between) == (made.targets, made.gear, made.between)


@pytest.mark.parametrize(
    ("words", "said"),
    [
        ("jobs=dsah", "no opening 'dsah' in this record; did you mean 'dash'?"),
        ("jobs=front-door&dash=skerrowe-broadside", "'dash' is no opening of these jobs; openings: front-door"),
        ("dsah=skerrowe-broadside", "'dsah' is no word of this visit; did you mean 'dash'?"),
        ("dash.kti=none", "'kti' is nothing that can be chosen at 'dash'; did you mean 'kit'?"),
        ("dash.kit=pellworth-dale-d2", "'pellworth-dale-d2' does not suit 'dash'; kits that suit: sandmartin-dk-f14"),
        ("dash@left=skerrowe-broadside", "'dash@left' names one side"),
        ("dash=tidewrack-haven-65", "'tidewrack-haven-65' is no receiver, but a speaker: 'dash' takes a receiver"),
        ("dash=skerrowe-broadside&dash-map=skerrowe-chart-2", "'dash' is 'skerrowe-broadside' and 'skerrowe-chart-2'"),
    ],
)
def test_what_is_not_so_is_said_once_and_by_the_id_as_typed(finch: Vehicle, words: str, said: str) -> None:
    found = understood(finch, text.parse(f"{FINCH}?{words}"))
    (only,) = [say(one) for one in (*found.said, *found.absent)]
    assert only.startswith(said)


def test_a_kit_suits_each_form(finch: Vehicle) -> None:
    made = visit(finch, text.parse(f"{FINCH}?{ALL}"))
    assert {name: [item.id for item in held["kit"]] for name, held in made.between.items()} == {
        form: ["sandmartin-dk-f14"] for form in FORMS
    }
    assert {answer.opening.id for answer in made.verdicts if answer.fits} == set(FORMS)
    assert all([one.id for one in made.parts(form)] for form in made.openings)


WHOLE = f"{FINCH}?{ALL}&radio=map"
VERBS = [
    ["plan", f"{FINCH}?jobs=dash&dash.kit=sandmartin-dk-f14"],
    ["plan", FINCH, "--job", "dash", "--kit", "sandmartin-dk-f14"],
    ["plan", WHOLE],
    ["shop", WHOLE],
    ["shop", FINCH, "--job", "dash", "--gear", "skerrowe-broadside"],
    ["shop", FINCH, "--job", "dash", "--gear", "dash=skerrowe-broadside"],
    ["fit", WHOLE],
    ["fit", FINCH, "dash", "skerrowe-broadside"],
    ["fit", FINCH, "dash", "--variant", "radio=map"],
    ["wiring", WHOLE],
    ["wiring", f"{FINCH}?{ALL}"],
    ["wiring", FINCH, "skerrowe-broadside", "--opening", "dash"],
    ["wiring", FINCH, "skerrowe-broadside"],
]


@pytest.mark.parametrize("words", VERBS)
def test_every_verb_takes_the_id_as_typed(place: Path, capsys: pytest.CaptureFixture[str], words: list[str]) -> None:
    assert main([*words, "--in", str(place)]) == 0, capsys.readouterr().err


def test_the_joint_of_each_form_says_its_cars(place: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["wiring", f"{FINCH}?{ALL}", "--in", str(place)]) == 0
    printed = capsys.readouterr().out
    assert printed.index("Plain radio") < printed.index("Map radio")


def test_a_sheet_and_a_template_are_made_by_the_id_as_typed(
    place: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    sheet = tmp_path / "sheet.pdf"
    assert main(["sheet", f"{FINCH}?{ALL}", "--out", str(sheet), "--in", str(place)]) == 0
    assert f"{FINCH}?{ALL}" in capsys.readouterr().out
    template = ["--output", str(tmp_path / "template.pdf"), "--in", str(place)]
    assert main(["template", FINCH, "dash", "--variant", "radio=map", *template]) == 0
    assert main(["template", FINCH, "dash", *template]) == 2
    assert "say which of dash-plain or dash-map" in capsys.readouterr().err
