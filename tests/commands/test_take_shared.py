"""What is taken into a record that takes from another car: whoever looked at this car says what is so on it."""

import json
import shutil
from pathlib import Path

import pytest

from undertrim import cli

DABCHICK = Path("records/vehicles/wexcombe/dabchick-2015-2018.yaml")
SEEN = {
    "openings/rear-door/impedance": "4 ohm",
    "openings/front-door/impedance": "8 ohm",
    "connectors/radio-main/pins/4/colour": "green",
    "openings/rear-door/depth/clear": "64 mm",
}


def test_what_another_car_lends_is_no_witness(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    shutil.copytree("records/vehicles/kelbrook", tmp_path / "records/vehicles/kelbrook")
    (tmp_path / DABCHICK).parent.mkdir()
    shutil.copy(DABCHICK, tmp_path / DABCHICK)
    monkeypatch.chdir(tmp_path)
    shared = {"claims": 1, "vehicle": "wexcombe/dabchick-2015-2018", "by": "zz", "on": "2026-11-20", "how": "measured", "with": "Calliper 0.05 mm", "car": {"year": 2016}}  # fmt: skip
    answers = [{"about": about, "says": says} for about, says in SEEN.items()]
    Path("found.json").write_text(json.dumps({**shared, "answers": answers}), encoding="utf-8")
    assert cli.main(["take", "found.json"]) == 0, capsys.readouterr().err
    out = capsys.readouterr().out
    assert "front-door/impedance: written down: 8 ohm; 4 ohm was taken from another car" in out
    assert "rear-door/depth/clear: the record says '52 mm' and the answer '64 mm'" in out, (
        "a depth stands with its face"
    )
    assert "4 answers: 3 written down, 1 in conflict" in out
    text = DABCHICK.read_text(encoding="utf-8")
    for line in ("  rear-door:", "impedance: 4 ohm", "impedance: 8 ohm", "{4: {colour: green}}", "source: e4"):
        assert line in text
    assert "[{says: 52 mm}, [64 mm, e4]]" in text
    assert cli.main(["check", str(DABCHICK)]) == 0, capsys.readouterr().out
    capsys.readouterr()
    assert cli.main(["take", "found.json"]) == 0
    assert "4 answers: 4 already so" in capsys.readouterr().out
