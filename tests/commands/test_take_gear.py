"""What is taken into gear records: a size that differs, one more witness, whether it went in, and what is refused."""

import json
import shutil
from collections.abc import Mapping
from pathlib import Path

import pytest

from undertrim import cli

GEAR = Path("records/gear/speakers/sandmartin-s65.yaml")
RECORD = """format: 1
demo: yes

gear:
  kind: speaker
  maker: Sandmartin
  model: S65
  basket: {shape: round, diameter: 130 mm}
  flange: {shape: round, diameter: 165 mm}
  depth: 58 mm  # from the box
  magnet: 90 mm
  impedance: 4 ohm
"""
TRIED = "gear/tried/kelbrook/finch-2014-2018/front-door"


@pytest.fixture(autouse=True)
def workspace(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    shutil.copytree("records/vehicles/kelbrook", tmp_path / "records/vehicles/kelbrook")
    for name in (
        "receivers/skerrowe-broadside",
        "kits/sandmartin-dk-f14",
        "harnesses/skerrowe-h-f14",
        "leads/skerrowe-lead-16",
    ):
        (tmp_path / f"records/gear/{name}.yaml").parent.mkdir(parents=True)
        shutil.copy(f"records/gear/{name}.yaml", tmp_path / f"records/gear/{name}.yaml")
    monkeypatch.chdir(tmp_path)
    GEAR.parent.mkdir(parents=True)
    GEAR.write_text(RECORD, encoding="utf-8")


def take(capsys: pytest.CaptureFixture[str], *answers: Mapping[str, object], **said: object) -> tuple[int, str]:
    top = {"gear": "sandmartin-s65", "by": "zz", "on": "2026-11-20", "how": "measured", "with": "Calliper 0.05 mm"}
    Path("found.json").write_text(json.dumps({"claims": 1, **top, **said, "answers": answers}), encoding="utf-8")
    code = cli.main(["take", "found.json"])
    shown = capsys.readouterr()
    return code, shown.out + shown.err


def told(capsys: pytest.CaptureFixture[str], *words: str) -> str:
    assert cli.main([*words]) == 0
    return " ".join(capsys.readouterr().out.split())


def test_a_size_that_differs_stands_in_a_conflict_and_the_cautious_one_is_reckoned_with(
    capsys: pytest.CaptureFixture[str],
) -> None:
    code, said = take(capsys, {"about": "gear/depth", "says": "61 mm"}, {"about": "gear/magnet", "says": "90 mm"})
    assert code == 0, said
    text = GEAR.read_text(encoding="utf-8")
    assert "depth: 58 mm # from the box" in text.replace("  #", " #")
    assert "depth: {about: gear/depth, claims: [{says: 58 mm}, {says: 61 mm, source: e1}]}" in text
    assert "source: e1\n" in text
    assert cli.main(["check", str(GEAR)]) == 0, capsys.readouterr().out
    assert cli.main(["format", "--check", str(GEAR)]) == 0
    capsys.readouterr()
    fit = told(capsys, "fit", "finch-2014-2018", "front-door", "sandmartin-s65")
    assert "Mounting depth is in dispute: 58 mm (nothing says where from) or 61 mm (e1). Reckoned with 61 mm" in fit
    assert "mounting depth 61 mm (2.4 in)" in fit
    again = take(capsys, {"about": "gear/depth", "says": "61 mm"}, {"about": "gear/magnet", "says": "90 mm"})
    assert again[0] == 0
    assert "2 answers: 2 already so" in again[1]
    assert GEAR.read_text(encoding="utf-8") == text


def test_that_it_did_not_go_in_stands_beside_what_is_reckoned(capsys: pytest.CaptureFixture[str]) -> None:
    car = {"year": 2016, "side": "left", "is": {"radio": "map"}}
    no = {"about": TRIED, "says": "no", "size": "depth", "hit": "Window regulator", "how": "seen", "car": car}
    assert take(capsys, no)[0] == 0
    assert "1 answer: 1 already so" in take(capsys, no)[1]
    text = GEAR.read_text(encoding="utf-8")
    trial = "{vehicle: kelbrook/finch-2014-2018, opening: front-door, went_in: no, size: depth, hit: Window regulator, source: e1}"
    assert f"tried: {{front-door: {trial}}}" in text
    who = "(zz, 2026-11-20, 2016, left-hand drive, radio map)"
    seen = f"it did not go in: mounting depth, met: Window regulator {who}"
    for words in (
        ["fit", "finch-2014-2018", "front-door", "sandmartin-s65"],
        ["fit", "--everywhere", "sandmartin-s65"],
    ):
        assert f"Tried: {seen}" in told(capsys, *words)
    assert take(capsys, no | {"by": "yy"}, how="seen")[0] == 0
    assert "source: [e1, e2]" in GEAR.read_text(encoding="utf-8")
    assert take(capsys, no | {"says": "yes", "size": "depth"})[0] == 0
    assert "front-door-2: {vehicle: kelbrook/finch-2014-2018, opening: front-door, went_in: yes" in GEAR.read_text(
        encoding="utf-8"
    )


def test_what_is_refused_says_why(capsys: pytest.CaptureFixture[str]) -> None:
    car = {"vehicle": "kelbrook/finch-2014-2018"}
    cases = {
        "no gear 'sandmartin-s66'; did you mean 'sandmartin-s65'?": {
            "gear": "sandmartin-s66",
            "about": "gear/depth",
            "says": "58 mm",
        },
        "names no opening of a vehicle": {"about": "gear/tried/kelbrook/finch-2014-2018", "says": "no"},
        "is said by 'yes' or 'no'": {"about": TRIED, "says": "perhaps"},
        "there is no opening 'front-dor' in 'kelbrook/finch-2014-2018'": {"about": TRIED[:-2] + "r", "says": "no"},
        "no vehicle 'kelbrook/finch-2015-2018'": {"about": "gear/tried/kelbrook/finch-2015-2018/dash", "says": "no"},
        "names both": {**car, "gear": "sandmartin-s65", "about": "gear/depth", "says": "58 mm"},
    }
    for why, answer in cases.items():
        code, said = take(capsys, answer)
        assert (code, why in said) == (1, True), said
    assert GEAR.read_text(encoding="utf-8") == RECORD


def test_a_look_that_contradicts_the_verdict_is_told(capsys: pytest.CaptureFixture[str]) -> None:
    no = {
        "gear": "skerrowe-broadside",
        "about": "gear/tried/kelbrook/finch-2014-2018/dash",
        "says": "no",
        "hit": "Heater pipe",
    }
    assert take(capsys, no, how="seen")[0] == 0
    file = "records/gear/receivers/skerrowe-broadside.yaml"
    line = next(number for number, text in enumerate(Path(file).read_text("utf-8").splitlines(), 1) if "tried:" in text)
    warning = "warning: in 'dash' of 'kelbrook/finch-2014-2018' it did not go in, and it is reckoned that it fits (tried-against-reckoned)"
    cli.main(["check"])
    found = capsys.readouterr().out
    assert f"{file}:{line}:" in found
    assert warning in found
    cli.main(["check", file])
    assert warning in capsys.readouterr().out
    fit = told(capsys, "fit", "finch-2014-2018", "dash", "skerrowe-broadside")
    assert "Not as reckoned. Tried: it did not go in: met: Heater pipe (zz, 2026-11-20)" in fit
    assert take(capsys, no | {"says": "yes"}, how="seen")[0] == 0
    cli.main(["check", file])
    assert capsys.readouterr().out.count("tried-against-reckoned") == 1
