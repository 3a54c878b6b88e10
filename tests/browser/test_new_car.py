"""A car that no record has: described by touch on a phone from a folder on disk, it becomes a claims file, and that a record which passes."""

import json
import re
import shutil
from pathlib import Path
from typing import Any

import pytest
from asked_by_touch import NEXT, WRONG, on
from browsing import ROOT
from playwright.sync_api import Page, expect
from test_for_everyone import LEAST, SIDEWAYS, SMALL

from undertrim import cli
from undertrim.record import claims
from undertrim.record.model import VehicleRecord
from undertrim.record.store import Workspace

TYPED = {"by": "rk", "make": "Brindleway", "model": "Heron", "tell": "A grey grille", "from": "2015-02", "to": "2018-12", "note": "The radio sits behind one lid with the heater knobs."}  # fmt: skip
CHOSEN = [
    "Hatchback",
    "Estate",
    "Left-hand drive",
    "Right-hand drive",
    "A radio two slots high",
    "Front door",
    "Rear door",
]
WANTED: dict[str, Any] = {
    "make": "Brindleway",
    "model": "Heron",
    "tell": "A grey grille",
    "built": {"from": "2015-02", "to": "2019-01"},
    "bodies": ["hatchback", "estate"],
    "drive_side": ["left", "right"],
    "high_voltage": "no",
    "forty_eight_volt": "unknown",
    "dash": "double",
    "doors": ["front", "rear"],
    "boot": "yes",
    "note": "The radio sits behind one lid with the heater knobs.",
}
PICKED = {
    "High voltage, hybrid or electric": "No",
    "48 V beside the 12 V, a mild hybrid": "Cannot tell",
    "Boot or load space": "Yes",
}


def fill(page: Page) -> None:
    """What is on the screen: lines by their names, choices by what they are called."""
    for name, text in TYPED.items():
        if page.locator(f".ut-asking [name={name}]").count():
            page.locator(f".ut-asking [name={name}]").fill(text)
    for box in page.locator(".ut-asking fieldset").all():
        picked = PICKED.get(box.locator("legend").text_content() or "")
        for words in [picked] if picked else CHOSEN:
            exact = box.locator(".ut-pick").filter(has_text=re.compile(f"^{re.escape(words)}$", re.IGNORECASE))
            if exact.count():
                exact.tap()


@pytest.fixture
def described(phone: Page, site: Path) -> Page:
    """The page with all of a car said."""
    phone.goto((site / "index.html").as_uri())
    phone.locator(".ut-home").get_by_role("link", name="A car we do not have").tap()
    phone.get_by_role("button", name="Describe this car").tap()
    while phone.locator(".ut-asking[open]").count():
        fill(phone)
        assert phone.evaluate(SMALL, LEAST) == []
        on(phone)
    return phone


def test_what_is_described_begins_a_record(
    described: Page, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    with described.expect_download() as download:
        described.get_by_role("button", name="Save as a file").tap()
    file = tmp_path / download.value.suggested_filename
    assert file.name == "undertrim-brindleway-heron.json"
    download.value.save_as(file)
    read = claims.read(file)
    assert read.problems == ()
    assert read.new
    assert (read.new.said, read.new.by) == (WANTED, "rk")
    shutil.copytree(ROOT / "records", tmp_path / "records")
    monkeypatch.chdir(tmp_path)
    assert cli.main(["take", str(file)]) == 0, capsys.readouterr().err
    assert cli.main(["check"]) == 0, capsys.readouterr().out
    record = Workspace(tmp_path).load(tmp_path / "records/vehicles/brindleway/heron-2015-2019.yaml").record
    assert isinstance(record, VehicleRecord)
    vehicle = record.vehicle
    assert (vehicle.make, vehicle.bodies, vehicle.drive_side) == (
        "Brindleway",
        ("hatchback", "estate"),
        ("left", "right"),
    )
    assert (str(vehicle.built.from_), str(vehicle.built.to), vehicle.high_voltage) == ("2015-02", "2019-01", "no")
    assert cli.main(["take", str(file)]) == 0, "taken again nothing happens"
    assert cli.main(["coverage", "heron-2015-2019", "--questions"]) == 0
    assert "look up the maker's wait" in capsys.readouterr().out


def test_it_lasts_and_is_changed(described: Page) -> None:
    described.reload()
    expect(described.get_by_text("The description is complete.")).to_be_visible()
    described.get_by_text("When was it built?").tap()
    assert described.locator("[name=to]").input_value() == "2018-12"
    described.locator("[name=to]").fill("2014-01")
    on(described)
    expect(described.locator(WRONG)).to_have_text("The last month lies before the first.")
    described.get_by_role("button", name="List").tap()
    expect(described.get_by_text("1 screen is still to be filled in.")).to_be_visible()
    expect(described.get_by_role("button", name="Save as a file")).to_have_count(0)
    described.set_viewport_size({"width": 320, "height": 700})
    assert described.evaluate(SIDEWAYS) == [False]
    described.get_by_role("button", name="Another car: begin anew").tap()
    assert json.loads(described.evaluate("localStorage.getItem('undertrim:new-car')")) == {}


def test_what_must_be_said_is_asked_for(phone: Page, site: Path) -> None:
    phone.goto((site / "new-car.html").as_uri())
    phone.get_by_role("button", name="Describe this car").tap()
    phone.locator(NEXT).tap()
    expect(phone.locator(WRONG)).to_have_text("Type your initials.")
    phone.locator("[name=by]").fill("rk")
    on(phone)
    phone.locator("[name=make]").fill("Brindleway")
    on(phone)
    expect(phone.locator(WRONG)).to_have_text("This is needed: Model, without the year")
