"""The `import` command on a terminal: what each column is, asked one by one with some of its cells."""

from collections.abc import Callable
from pathlib import Path

import pytest

from claiming import lay
from undertrim import cli
from undertrim.commands import prompts
from undertrim.commands.prompts import Stopped

SHEET = Path("taller.csv")
ROWS = """Marca;Modelo;Año;Radio del coche;Prof. puerta delantera (mm);Precio
BRINDLEWAY;otter;2016;plain;62;12,50
BRINDLEWAY;otter;2016;plain;sixty;
BRINDLEWAY;heron;2016;;60;
"""


@pytest.fixture(autouse=True)
def here(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    lay(tmp_path)
    monkeypatch.chdir(tmp_path)
    SHEET.write_text(ROWS, encoding="utf-8")


def run(capsys: pytest.CaptureFixture[str], *words: str) -> tuple[int, str, str]:
    code = cli.main(["import", *words])
    printed = capsys.readouterr()
    return code, printed.out, printed.err


class Asked:
    """Answers by what a question begins with; any other choice takes what is proposed."""

    def __init__(self, monkeypatch: pytest.MonkeyPatch, **said: str) -> None:
        self.said, self.asked = said, list[str]()
        monkeypatch.setattr("sys.stdin.isatty", lambda: True, raising=False)
        monkeypatch.setattr(prompts, "choose", self.choose)
        monkeypatch.setattr(prompts, "text", self.text)

    def choose(self, ask: str, choices: list[tuple[str, str]]) -> str:
        said = self._said(ask)
        if said == "STOP":
            raise Stopped
        return said or choices[0][0]

    def text(self, ask: str, check: Callable[[str], str], hint: str = "") -> str:
        assert check("")
        said = self._said(ask)
        assert not check(said), check(said)
        return said

    def _said(self, ask: str) -> str:
        self.asked.append(ask)
        return next((said for start, said in self.said.items() if ask.startswith(start.replace("_", " "))), "")


def test_on_a_terminal_the_columns_are_confirmed_one_by_one_and_the_rows_taken_at_once(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    answers = {"Radio": "other", "What_is_'Radio": "typed", "Its_address": "car/is/radio", "Precio": "skip"}
    person = Asked(monkeypatch, **answers, Who="rk", How="measured", Measured="Calliper 0.05 mm")
    code, out, _ = run(capsys, str(SHEET), "--as", "asked.toml", "--dry-run")
    assert "asked.toml written: 6 columns as you said." in out
    assert code == 1, "a row of no car, and a cell that is no size"
    assert "3 rows: 2 with something refused, 1 taken" in out
    assert "Prof. puerta delantera (mm)  (62; sixty; 60)" in person.asked
    text = Path("asked.toml").read_text(encoding="utf-8")
    assert "confirmed = true" in text
    assert '"Radio del coche" = "car/is/radio"' in text
    assert '"Precio" = "skip"' in text
    assert '"Prof. puerta delantera (mm)" = { about = "openings/front-door/depth/clear", unit = "mm" }' in text
    for line in ('by = "rk"', 'how = "measured"', 'with = "Calliper 0.05 mm"'):
        assert line in text
    again = len(person.asked)
    assert run(capsys, str(SHEET), "--as", "asked.toml", "--dry-run")[1] in out
    assert len(person.asked) == again


def test_who_stops_keeps_what_was_said(monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]) -> None:
    Asked(monkeypatch, Marca="skip", Modelo="other", What_is="id", Año="STOP")
    code, out, _ = run(capsys, str(SHEET), "--as", "left.toml")
    assert (code, "left.toml written as far as you came" in out) == (0, True)
    text = Path("left.toml").read_text(encoding="utf-8")
    assert "confirmed = false" in text
    assert '"Marca" = "skip"\n"Modelo" = "id"\n"Año" = "year"\n' in text


def test_a_sheet_of_gear_asks_for_the_unit_of_bare_numbers_and_the_kind(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    rows = "Maker;Model;Mounting depth;Thickness;Basket diameter (mm);Flange diameter (mm);Ohm\nSkerrowe;Grebe;1.8;0.1;127;165;4\n"
    Path("stock.csv").write_text(rows, encoding="utf-8")
    said = {"Thickness": "other", "What_is": "gasket", "In_which": "in", "Of_which": "speaker"}
    person = Asked(monkeypatch, **said)
    code, out, err = run(capsys, "stock.csv", "--as", "stock.toml", "--dry-run")
    assert (code, err) == (0, ""), out
    assert '"Thickness" = { about = "gasket", unit = "in" }' in Path("stock.toml").read_text(encoding="utf-8")
    assert "Thickness  (0.1)" in person.asked
