"""A visit by its one text, on every verb that takes one: the same answers as by options, and what is not so is said."""

import shutil
from pathlib import Path

import pytest

from pdf_text import texts
from undertrim.cli import main

ROOT = Path(__file__).parents[2]
FINCH = "finch-2014-2018"
WORDS = f"{FINCH}?jobs=dash,front-door@left&radio=map&dash=skerrowe-broadside"
HERE = ("--in", str(ROOT))

SAME = [
    (
        ["plan", f"{FINCH}?jobs=dash,front-door@left&radio=map"],
        ["plan", FINCH, "--job", "dash", "--job", "front-door@left", "--variant", "radio=map"],
    ),
    (["plan", f"{FINCH}?jobs=dash&dash.kit=sandmartin-dk-f14"], ["plan", FINCH, "--job", "dash", "--kit", "sandmartin-dk-f14"]),
    (
        ["shop", WORDS],
        ["shop", FINCH, "--job", "dash", "--job", "front-door@left", "--variant", "radio=map", "--gear", "skerrowe-broadside"],
    ),
    (["shop", WORDS], ["shop", f"{FINCH}?radio=map&jobs=front-door@left", "--job", "dash", "--gear", "dash=skerrowe-broadside"]),
    (["fit", f"{FINCH}?dash=skerrowe-broadside&radio=map"], ["fit", FINCH, "dash", "skerrowe-broadside", "--variant", "radio=map"]),
    (["fit", f"{FINCH}?jobs=rear-door"], ["fit", FINCH, "rear-door"]),
    (
        ["wiring", f"{FINCH}?dash=skerrowe-broadside&radio=map"],
        ["wiring", FINCH, "skerrowe-broadside", "--variant", "radio=map"],
    ),
    (["wiring", f"{FINCH}?dash=skerrowe-broadside&dash.harness=none"], ["wiring", FINCH, "skerrowe-broadside", "--harness", "none"]),
    (["wiring", f"{FINCH}?radio=map"], ["wiring", FINCH, "--variant", "radio=map"]),
]  # fmt: skip


@pytest.mark.parametrize("kind", ["json", "text"])
@pytest.mark.parametrize(("words", "options"), SAME)
def test_text_and_options_say_the_same(
    capsys: pytest.CaptureFixture[str], words: list[str], options: list[str], kind: str
) -> None:
    one = main([*words, *HERE, "--format", kind]), capsys.readouterr()
    other = main([*options, *HERE, "--format", kind]), capsys.readouterr()
    assert one == other
    assert one[0] == 0


@pytest.mark.parametrize(
    ("arguments", "said"),
    [
        (["plan", WORDS, "--variant", "radio=plain"], "'radio' is 'map' and 'plain': say one of them"),
        (["shop", WORDS, "--gear", "skerrowe-chart-2"], "'dash' is 'skerrowe-broadside' and 'skerrowe-chart-2': say one of them"),
        (["shop", WORDS, "--gear", "dash=skerrowe-chart-2"], "'dash' is 'skerrowe-broadside' and 'skerrowe-chart-2': say one of them"),
        (["fit", WORDS, "dash", "skerrowe-chart-2"], "'dash' is 'skerrowe-broadside' and 'skerrowe-chart-2': say one of them"),
        (["wiring", WORDS, "skerrowe-chart-2"], "'dash' is 'skerrowe-broadside' and 'skerrowe-chart-2': say one of them"),
        (["wiring", f"{WORDS}&dash.harness=none", "--harness", "skerrowe-h-f14"], "'dash.harness' is 'none' and 'skerrowe-h-f14': say one of them"),
        (["sheet", f"{FINCH}?radio=map"], "nothing is worked at: write VEHICLE?jobs=OPENING, or --job OPENING"),
        (["plan", FINCH], "nothing is worked at: write VEHICLE?jobs=OPENING, or --job OPENING"),
        (["template", WORDS], "this visit has no one opening to answer for: say which of dash or front-door"),
        (["plan", "?jobs=dash"], "no vehicle ''"),
        (["fit", f"{FINCH}?jobs=dash&dash.kit=pellworth-dale-d2"], "'pellworth-dale-d2' does not suit 'dash'; kits that suit: sandmartin-dk-f14, none"),
    ],
)  # fmt: skip
def test_what_does_not_agree_or_is_not_so_exits_with_two(
    capsys: pytest.CaptureFixture[str], arguments: list[str], said: str
) -> None:
    assert main([*arguments, *HERE]) == 2
    caught = capsys.readouterr()
    assert (caught.out, caught.err.startswith(f"undertrim: {said}")) == ("", True), caught.err


def test_everything_that_is_not_so_is_told(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["plan", f"{FINCH}?jobs=dsah,dash&radoi=map", *HERE]) == 2
    assert capsys.readouterr().err.splitlines() == [
        "undertrim: 'radoi' is no word of this visit; did you mean 'radio'?",
        "undertrim: no opening 'dsah' in this record; did you mean 'dash'?",
    ]


def test_the_template_of_the_only_opening_shows_its_gear(
    capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    monkeypatch.chdir(tmp_path)
    assert main(["template", f"{FINCH}?front-door=tidewrack-haven-65", *HERE]) == 0
    assert (
        "Tidewrack Haven 65" in texts((tmp_path / "finch-2014-2018-front-door-tidewrack-haven-65.pdf").read_bytes())[0]
    )


def test_the_sheet_is_written_where_it_says(
    capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    monkeypatch.chdir(tmp_path)
    words = f"{FINCH}?jobs=front-door@left&front-door=tidewrack-haven-65"
    assert main(["sheet", words, "--paper", "letter", *HERE]) == 0
    assert capsys.readouterr().out == f"finch-2014-2018-front-door-left.pdf: the sheet of {words}\n"
    first = "".join(texts((tmp_path / "finch-2014-2018-front-door-left.pdf").read_bytes())[0].split())
    assert "finch-2014-2018.html?jobs=front-door@left&front-door=tidewrack-haven-65" in first
    assert main(["sheet", words, *HERE]) == 1
    assert "is there already" in capsys.readouterr().err
    assert main(["sheet", words, "--out", "other.pdf", *HERE]) == 0
    assert (tmp_path / "other.pdf").exists()


@pytest.mark.parametrize(
    ("settings", "code", "said"),
    [
        ("site_url: https://shop.invalid/trim/\ntheme: {name: material, custom_dir: gone}\n", 0, "https://shop.invalid/trim/vehicles/"),
        ("site_url: [", 2, "cannot be used"),
    ],
)  # fmt: skip
def test_the_sheet_wants_the_sites_address_alone(
    capsys: pytest.CaptureFixture[str], tmp_path: Path, settings: str, code: int, said: str
) -> None:
    (tmp_path / "records/vehicles/kelbrook").mkdir(parents=True)
    shutil.copy(ROOT / "records/vehicles/kelbrook/finch-2014-2018.yaml", tmp_path / "records/vehicles/kelbrook")
    (tmp_path / "mkdocs.yml").write_text(settings, encoding="utf-8")
    file = tmp_path / "x.pdf"
    assert main(["sheet", f"{FINCH}?jobs=front-door@left", "--out", str(file), "--in", str(tmp_path)]) == code
    found = "".join(texts(file.read_bytes())[0].split()) if file.exists() else capsys.readouterr().err
    assert said in found


def test_a_vehicle_that_several_makes_have_keeps_its_make(capsys: pytest.CaptureFixture[str], tmp_path: Path) -> None:
    for make in ("kelbrook", "farrow"):
        (tmp_path / "records/vehicles" / make).mkdir(parents=True)
        shutil.copy(ROOT / "records/vehicles/kelbrook/finch-2014-2018.yaml", tmp_path / "records/vehicles" / make)
    words = "kelbrook/finch-2014-2018?jobs=dash"
    assert main(["sheet", words, "--out", str(tmp_path / "x.pdf"), "--in", str(tmp_path)]) == 0
    assert capsys.readouterr().out.endswith(f"the sheet of {words}\n")
