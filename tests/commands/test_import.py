"""The `import` command: a shop's spreadsheet in a layout of its own, by a mapping that it proposes and somebody confirms."""

from pathlib import Path

import pytest
from openpyxl import Workbook
from openpyxl.worksheet.worksheet import Worksheet

from claiming import HOME, RECORD, lay
from undertrim import cli
from undertrim.check.runner import check_entry
from undertrim.record import units
from undertrim.record.model import VehicleRecord
from undertrim.record.model.kinds.speaker import SpeakerOpening
from undertrim.record.store import Entry, Workspace

CARS = 8
SHEET, MAP = Path("taller.xlsx"), Path("taller.toml")
HEADINGS = (
    *(
        "Marca",
        "Modelo",
        "Año",
        "Radio del coche",
        "Prof. puerta delantera (mm)",
        "Rejilla delantera [mm]",
        "Ohm front",
    ),
    *("Diámetro agujero delantera (mm)", "Sensor de presión puerta delantera", "Precio", "Observaciones"),
)
DEPTH, HOLE, COLUMNS = 4, 7, len(HEADINGS)
PROPOSED = """\
[columns]
"Marca" = "make"
"Modelo" = "model"
"Año" = "year"
"Radio del coche" = "?"
"Prof. puerta delantera (mm)" = { about = "openings/front-door/depth/clear", unit = "mm" }
"Rejilla delantera [mm]" = { about = "openings/front-door/room_to_grille", unit = "mm" }
"Ohm front" = { about = "openings/front-door/impedance", unit = "ohm" }
"Diámetro agujero delantera (mm)" = { about = "openings/front-door/hole/diameter", unit = "mm", also = { "openings/front-door/hole/shape" = "round" } }
"Sensor de presión puerta delantera" = "openings/front-door/crash_sensor"
"Precio" = "?"
"Observaciones" = "note"
"""


def rows_of(number: int) -> list[dict[int, object]]:
    """25 rows about one car: three facts that nobody knew, one that stands, one that differs, one that is no value, 13 of no car, and six that say nothing."""
    known: list[dict[int, object]] = [{DEPTH: 62}, {5: 21.5}, {6: 4}, {HOLE: "150"}, {DEPTH: "sixty"}, {8: "no"}]
    no_car: dict[int, object] = {1: f"Heron {number}", DEPTH: 60}
    nothing: dict[int, object] = {10: "clean"}
    return known + [no_car] * 13 + [nothing] * 6


@pytest.fixture(scope="module")
def shop(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A workspace of 8 cars, and a workbook of 200 rows about them below a title and an empty row."""
    folder = tmp_path_factory.mktemp("shop")
    lay(folder)
    book = Workbook()
    sheet = book.active
    assert isinstance(sheet, Worksheet)
    sheet.append(["Medidas del taller"])
    sheet.append([])
    sheet.append(list(HEADINGS))
    for number in range(CARS):
        text = RECORD.replace("model: Otter", f"model: Otter {number}")
        (folder / HOME / f"otter-{number}-2014-2018.yaml").write_text(text, encoding="utf-8")
        for said in rows_of(number):
            row = {0: "BRINDLEWAY", 1: f"otter-{number}", 2: 2016, 3: "plain", 9: 12.5} | said
            sheet.append([row.get(column) for column in range(COLUMNS)])
    book.save(folder / SHEET)
    return folder


@pytest.fixture(autouse=True)
def here(shop: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(shop)


def run(capsys: pytest.CaptureFixture[str], *words: str) -> tuple[int, str, str]:
    code = cli.main(["import", *words])
    printed = capsys.readouterr()
    return code, printed.out, printed.err


def confirmed(path: Path, **said: str) -> None:
    """What a person makes of a proposal."""
    text = path.read_text(encoding="utf-8").replace("confirmed = false", "confirmed = true")
    for old, new in said.items():
        text = text.replace(f'{old} = ""', f'{old} = "{new}"').replace(
            'how = "told"', f'how = "{said.get("how", "told")}"'
        )
    path.write_text(text, encoding="utf-8")


def entry(number: int) -> Entry:
    return Workspace(Path.cwd()).load(Path(HOME / f"otter-{number}-2014-2018.yaml").absolute())


def front(number: int) -> SpeakerOpening:
    record = entry(number).record
    assert isinstance(record, VehicleRecord)
    opening = record.openings["front-door"]
    assert isinstance(opening, SpeakerOpening)
    return opening


def test_two_hundred_rows_are_all_accounted_for(capsys: pytest.CaptureFixture[str]) -> None:
    # Long because it is one way through: propose, decide, confirm, try dry, take, take again.
    code, out, err = run(capsys, str(SHEET), "--as", str(MAP))
    assert (code, err) == (0, "")
    assert out.startswith("taller.toml written: 11 columns, 2 of which nothing is known ('?')")
    assert MAP.read_text(encoding="utf-8").endswith(PROPOSED)
    assert "headings = 3" in MAP.read_text(encoding="utf-8")
    code, _, err = run(capsys, str(SHEET), "--as", str(MAP))
    assert (code, "nobody has said what these columns are: Radio del coche, Precio" in err) == (2, True)
    text = MAP.read_text(encoding="utf-8")
    MAP.write_text(
        text.replace('"Radio del coche" = "?"', '"Radio del coche" = "car/is/radio"').replace('"?"', '"skip"'),
        encoding="utf-8",
    )
    code, _, err = run(capsys, str(SHEET), "--as", str(MAP))
    assert (code, "is a proposal that nobody has confirmed" in err) == (2, True)
    confirmed(MAP, by="zz", how="measured", **{"with": "Calliper 0.05 mm"})

    before = {path: path.read_bytes() for path in Path("records").rglob("*.yaml")}
    code, told, _ = run(capsys, str(SHEET), "--as", str(MAP), "--dry-run")
    assert before == {path: path.read_bytes() for path in Path("records").rglob("*.yaml")}
    code, out, err = run(capsys, str(SHEET), "--as", str(MAP))
    assert code == 1
    rows = "200 rows: 112 with something refused, 8 in conflict, 24 taken, 8 already so, 48 with nothing to write"
    assert rows in out
    assert rows in told
    assert "taller.xlsx, E8: openings/front-door/depth/clear" in err.replace("brindleway/otter-0-2014-2018/", "")
    assert "taller.xlsx, B10: : refused: there is no record of the BRINDLEWAY Heron 0 2016" in err
    assert err.count(": refused: ") == 112
    for number in (0, CARS - 1):
        depth = front(number).depth
        assert depth is not None
        assert depth.clear == units.parse("62 mm", "length")
        assert front(number).crash_sensor == "no"
        assert not [problem for problem in check_entry(entry(number)) if problem.level == "error"]
    assert "# Seen twice." in (HOME / "otter-0-2014-2018.yaml").read_text(encoding="utf-8")

    after = {path: path.read_bytes() for path in Path("records").rglob("*.yaml")}
    code, out, _ = run(capsys, str(SHEET), "--as", str(MAP))
    assert "200 rows: 112 with something refused, 40 already so, 48 with nothing to write" in out
    assert after == {path: path.read_bytes() for path in Path("records").rglob("*.yaml")}


def test_a_table_that_is_not_the_mappings_is_not_taken(capsys: pytest.CaptureFixture[str]) -> None:
    sheet, as_ = Path("other.csv"), Path("other.toml")
    sheet.write_text("make;model;front depth (in)\nBrindleway;Otter;2 3/16\n;;\n", encoding="utf-8")
    assert run(capsys, str(sheet), "--as", str(as_))[0] == 0
    confirmed(as_, by="zz")
    code, out, err = run(capsys, str(sheet), "--as", str(as_), "--dry-run")
    assert (code, err, "2 rows: 1 taken, 1 empty" in out) == (0, "", True)
    sheet.write_text("make;model;year;front depth (in)\nBrindleway;Otter;2016;2 3/16\n", encoding="utf-8")
    code, _, err = run(capsys, str(sheet), "--as", str(as_))
    assert (code, "the mapping does not know the columns year" in err) == (2, True)
    as_.write_text("confirmed = tru\n", encoding="utf-8")
    code, _, err = run(capsys, str(sheet), "--as", str(as_))
    assert (code, "cannot be read as a mapping" in err) == (2, True)


GEAR = """\
Marca;Modelo;Cesta (mm);Diámetro exterior (mm);Prof. (mm);Ohmios;Precio
Xylo;A1;127;165;58,5;4;30
Xylo;A2;127;165;59;4;30
Xylo;A2;127;165;59;4;30
Xylo;A3;127;165;thick;4;30
Xylo;A4;127;165;;4;30
"""


def test_gear_comes_in_too_and_a_record_that_is_there_stays(capsys: pytest.CaptureFixture[str]) -> None:
    sheet, as_ = Path("gear.csv"), Path("gear.toml")
    sheet.write_text(GEAR, encoding="utf-8")
    assert run(capsys, str(sheet), "--as", str(as_))[0] == 0
    as_.write_text(as_.read_text(encoding="utf-8").replace('"Precio" = "?"', '"Precio" = "skip"'), encoding="utf-8")
    assert 'decimal = ","' in as_.read_text(encoding="utf-8")
    confirmed(as_, kind="speaker")
    code, out, err = run(capsys, str(sheet), "--as", str(as_))
    assert (code, err.count(": refused: ")) == (1, 3), err
    assert "5 rows: 3 with something refused, 2 taken" in out
    assert "gear.csv, B4: speaker: refused: row 3 says the same piece" in err
    assert "gear.csv, E5: depth: refused: 'thick'" in err
    assert "these answers are lacking: depth" in err
    made = Path("records/gear/speakers/xylo-a1.yaml")
    assert "depth: 58.5 mm" in made.read_text(encoding="utf-8")
    assert cli.main(["check", "records/gear"]) == 0
    before = made.read_bytes()
    sheet.write_text(
        "\n".join(GEAR.splitlines()[:3]).replace("59;", "60;").replace("58,5", "5,85 cm") + "\n", encoding="utf-8"
    )
    code, out, _ = run(capsys, str(sheet), "--as", str(as_))
    assert (code, "depth is 59 mm in the record and 60 mm in the row" in out) == (0, True)
    assert "2 rows: 1 in conflict, 1 already so" in out
    assert made.read_bytes() == before
