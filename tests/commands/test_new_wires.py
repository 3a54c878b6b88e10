"""The `new` command for gear with wires: a harness and a lead set, told in one line or asked for one by one."""

from collections.abc import Callable
from pathlib import Path

import pytest

from undertrim import cli
from undertrim.commands import prompts

SUITS = ("suits/0/vehicle=kelbrook/finch-2014-2018", "suits/0/opening=dash")
HARNESS, LEADS = Path("records/gear/harnesses/skerrowe-tarn.yaml"), Path("records/gear/leads/skerrowe-tarn.yaml")
NAMED = ("maker=Skerrowe", "model=Tarn")


@pytest.fixture(autouse=True)
def workspace(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    (tmp_path / "records/gear").mkdir(parents=True)
    monkeypatch.chdir(tmp_path)


def new(kind: str, *words: str) -> int:
    return cli.main(["new", "--gear", kind, *NAMED, *words])


def test_a_harness_and_a_lead_set_in_one_line_each() -> None:
    wires = "plugs=radio-main: 4 battery-feed yellow, 8 ground black; radio-aux: A1 front-left-plus white/black"
    assert new("harness", *SUITS, wires) == 0
    text = HARNESS.read_text(encoding="utf-8")
    both = "{4: {function: battery-feed, colour: yellow}, 8: {function: ground, colour: black}}"
    assert f"radio-main: {both}" in text
    assert "A1: {function: front-left-plus, colour: white/black}" in text
    assert (
        new("leads", "leads=battery-feed yellow, ground, front-left-plus white, front-left-plus white/grey line") == 0
    )
    text = LEADS.read_text(encoding="utf-8")
    assert "battery-feed: {function: battery-feed, colour: yellow}\n    ground: {function: ground}\n" in text
    assert "line-front-left-plus: {function: front-left-plus, colour: white/grey, level: line}" in text
    HARNESS.unlink()  # made for a car that is not here
    assert cli.main(["check"]) == 0


@pytest.mark.parametrize(
    ("kind", "wires", "why"),
    [
        ("leads", "leads=battery-fed yellow", "did you mean 'battery-feed'?"),
        ("leads", "leads=ground black, ground white", "'ground' is told twice"),
        ("harness", "plugs=4 battery-feed yellow", "nothing says of which plug these contacts are"),
        ("harness", "plugs=radio-main: 4 ground black, 4 ground white", "'4' is told twice"),
        ("harness", "plugs=radio-main: battery-feed yellow", "a pin is a number such as 4"),
        ("harness", "fitting=15 min", "plugs"),
    ],
)
def test_what_is_wrong_is_said(kind: str, wires: str, why: str, capsys: pytest.CaptureFixture[str]) -> None:
    assert new(kind, *(SUITS if kind == "harness" else ()), wires) == 2
    assert why in capsys.readouterr().err
    assert not HARNESS.exists()


def test_on_a_terminal_they_are_asked_for_one_by_one(monkeypatch: pytest.MonkeyPatch) -> None:
    said = {
        "The next plug": ["radio-main", ""],
        "The next contact of radio-main": ["4 battery-feed yellow", "8 ground black", ""],
    }
    refused: list[str] = []

    def text(ask: str, check: Callable[[str], str], hint: str = "") -> str:
        found = next((left for start, left in said.items() if ask.startswith(start)), [])
        if ask.startswith("The next contact"):
            refused.append(check("4 battery-fed"))
        return found.pop(0) if found else ""

    monkeypatch.setattr("sys.stdin.isatty", lambda: True, raising=False)
    monkeypatch.setattr(prompts, "text", text)
    monkeypatch.setattr(prompts, "several", lambda *_: [])
    monkeypatch.setattr(prompts, "choose", lambda _, choices: choices[-1][0])
    assert new("harness", *SUITS) == 0
    text_of = HARNESS.read_text(encoding="utf-8")
    assert (
        "{radio-main: {4: {function: battery-feed, colour: yellow}, 8: {function: ground, colour: black}}}" in text_of
    )
    assert all("did you mean 'battery-feed'?" in one or "twice" in one for one in refused)
