"""The plan command from the shell's side: what it prints, and how it refuses."""

import json
import re
import shutil
from pathlib import Path

import pytest

from undertrim.check import runner
from undertrim.cli import main
from undertrim.derive.procedure import cheapest

ROOT = Path(__file__).parents[2]


@pytest.fixture
def workspace(tmp_path: Path) -> Path:
    """The finch, and a car of the same id by another make."""
    shipped, ours = (root / "records" / "vehicles" for root in (ROOT, tmp_path))
    for make, name in (
        ("kelbrook", "kelbrook/finch-2014-2018"),
        ("farrow", "kelbrook/finch-2014-2018"),
        ("farrow", "harrowby/sedge-2011-2016"),
    ):
        (ours / make).mkdir(parents=True, exist_ok=True)
        shutil.copy(shipped / f"{name}.yaml", ours / make)
    return tmp_path


def run(workspace: Path, *arguments: str) -> int:
    return main(["plan", *arguments, "--in", str(workspace)])


FINCH = "kelbrook/finch-2014-2018"


def test_text_prints_every_step_in_order_by_name(workspace: Path, capsys: pytest.CaptureFixture[str]) -> None:
    chosen = (FINCH, "--job", "dash", "--job", "front-door@left", "--variant", "radio=map")
    assert run(workspace, *chosen) == 0
    text = capsys.readouterr().out
    assert run(workspace, *chosen, "--format", "json") == 0
    data = json.loads(capsys.readouterr().out)
    titles = [line.split(". ", 1)[1] for line in text.splitlines() if re.match(r" *\d+\. ", line)]
    said = [f"{step['verb']} {step['title']}".strip() for step in data["steps"]]
    assert len(titles) == len(said)
    assert all(title.startswith(words) for title, words in zip(titles, said, strict=True))
    assert "remove:front-door-panel@left" not in text
    assert text.endswith("The maker's information, local codes and licensed practice come first.\n")


def test_json_carries_what_tools_need(workspace: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert run(workspace, FINCH, "--job", "dash", "--variant", "radio=map", "--format", "json") == 0
    data = json.loads(capsys.readouterr().out)
    assert (data["vehicle"], data["jobs"], data["variant"]) == (FINCH, ["dash"], {"radio": "map"})
    steps = {step["id"]: step for step in data["steps"]}
    trim = steps["remove:vent-trim"]
    assert (trim["kind"], trim["part"], trim["minutes"]) == ("remove", "vent-trim", 3)
    assert [(line["count"], line["sort"]) for line in trim["fasteners"]] == [(6, "push")]
    assert [(line["id"], line["act"], line["restraint"]) for line in trim["tethers"]] == [
        ("passenger-lamp", "leave", True)
    ]
    assert trim["cautions"][0]["signal"] == "WARNING"
    assert steps["move:climate-panel"]["kind"] == "move"


def test_a_caution_is_printed_before_the_step_it_guards(workspace: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert run(workspace, FINCH, "--job", "dash", "--variant", "radio=map") == 0
    lines = capsys.readouterr().out.splitlines()
    step = next(i for i, line in enumerate(lines) if "Take off Upper vent trim" in line)
    warning = max(i for i, line in enumerate(lines[:step]) if "! WARNING: Airbag or belt wiring" in line)
    assert not any(line.lstrip()[:1].isdigit() for line in lines[warning:step])


def test_variants_left_open_are_named_and_their_steps_marked(
    workspace: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert run(workspace, FINCH, "--job", "dash") == 0
    text = capsys.readouterr().out
    assert "Not chosen, so every kind is covered: Which radio is in the dash?" in text
    assert "    --variant radio=map  Map radio: A key marked MAP left of the screen" in text
    assert "Take off Brace across the map radio [Map radio]" in text
    assert "For: Plain radio" in text
    assert "For: Map radio" in text


@pytest.mark.parametrize(
    ("arguments", "message"),
    [
        (("kelbrook/finch-2014-2081", "--job", "dash"), "no vehicle 'kelbrook/finch-2014-2081'; did you mean 'finch-2014-2018'?"),
        (("finch-2014-2018", "--job", "dash"), "several makes have 'finch-2014-2018': say farrow/finch-2014-2018 or kelbrook/finch-2014-2018"),
        ((FINCH, "--job", "front-dor"), "no opening 'front-dor' in this record; did you mean 'front-door'?"),
        ((FINCH, "--job", "dash", "--variant", "radoi=map"), "no variant 'radoi' in this record; did you mean 'radio'?"),
        ((FINCH, "--job", "dash", "--variant", "radio=maps"), "variant 'radio' has no choice 'maps'; did you mean 'map'?"),
        ((FINCH, "--job", "dash", "--variant", "radio"), "'radio' is no variant: write NAME=CHOICE, for example radio=map"),
    ],
)  # fmt: skip
def test_what_is_not_there_gets_exit_2_and_the_nearest_name(
    workspace: Path, capsys: pytest.CaptureFixture[str], arguments: tuple[str, ...], message: str
) -> None:
    assert run(workspace, *arguments) == 2
    caught = capsys.readouterr()
    assert caught.out == ""
    assert caught.err.startswith(f"undertrim: {message}")


def test_a_vehicle_goes_by_its_id_where_only_one_make_has_it(
    workspace: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert run(workspace, "sedge-2011-2016", "--job", "dash", "--variant", "drive-side=right") == 0
    assert "(farrow/sedge-2011-2016): Radio opening" in capsys.readouterr().out


def write(workspace: Path, old: str, new: str) -> None:
    path = workspace / "records" / "vehicles" / "kelbrook" / "finch-2014-2018.yaml"
    text = path.read_text(encoding="utf-8")
    assert old in text
    path.write_text(text.replace(old, new), encoding="utf-8")


def test_a_job_out_of_reach_is_exit_1_and_the_others_are_planned(
    workspace: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    write(
        workspace,
        "      radio-surround:\n        after: lower-trim\n",
        "      radio-surround:\n        after: [lower-trim, factory-radio]\n",
    )
    assert run(workspace, FINCH, "--job", "dash") == 1
    caught = capsys.readouterr()
    assert caught.out == ""
    assert "each needs the next first: Radio surround -> Factory radio -> Radio surround" in caught.err
    assert "undertrim check" in caught.err
    assert run(workspace, FINCH, "--job", "front-door") == 0


def test_a_job_with_too_many_routes_is_exit_1(
    workspace: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(cheapest, "MOST_STATES", 0)
    assert run(workspace, FINCH, "--job", "dash") == 1
    assert "too many interlocking routes to free Radio opening" in capsys.readouterr().err


def test_an_opening_that_the_chosen_car_lacks_is_exit_2(workspace: Path, capsys: pytest.CaptureFixture[str]) -> None:
    write(workspace, "    name: Radio opening\n", "    name: Radio opening\n    when: {radio: map}\n")
    assert run(workspace, FINCH, "--job", "dash", "--variant", "radio=plain") == 2
    assert "no car with Plain radio has 'Radio opening'" in capsys.readouterr().err
    assert run(workspace, FINCH, "--job", "dash") == 0


def test_a_file_that_cannot_be_read_is_exit_1(workspace: Path, capsys: pytest.CaptureFixture[str]) -> None:
    write(workspace, "vehicle:\n", "vehicle: [\n")
    assert run(workspace, FINCH, "--job", "dash") == 1
    assert "cannot be read as a record" in capsys.readouterr().err


def test_a_vehicle_with_too_many_routes_is_named_and_stops_no_build(
    workspace: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(cheapest, "MOST_STATES", 0)
    monkeypatch.setattr(runner, "check", lambda *_, **__: runner.Report(0, ()))
    assert main(["build", "--no-pdf", "--in", str(workspace)]) == 1
    message = capsys.readouterr().err
    assert "finch-2014-2018.yaml: too many interlocking routes" in message
    assert ": it is not in the site\n    run 'undertrim check' for the details\n" in message
    assert message.endswith("3 vehicles could not be published anew\n")
    assert (workspace / "site/index.html").is_file()
    assert not (workspace / "site/vehicles/farrow").exists()
