"""Not so on my car: from what a page tells to a claim on the device, and from there to a file that is as its schema says."""

import json
from pathlib import Path
from typing import Any
from urllib.parse import parse_qs, urlsplit

import pytest
from in_bay import FINCH, press, start
from jsonschema import Draft202012Validator
from playwright.sync_api import Page, expect

from publishing import shipped
from undertrim.derive.evidence.facts import fact_at
from undertrim.record.model import VehicleRecord
from undertrim.resources import top

SCHEMA = json.loads((top("schema") / "claim.schema.json").read_text(encoding="utf-8"))
OPENINGS, RECORD = "vehicles/kelbrook/finch-2014-2018.openings.html", "vehicles/kelbrook/finch-2014-2018.record.html"


def asked(page: Page, site: Path, name: str = OPENINGS, within: str = "#opening-front-door") -> None:
    page.goto(f"{(site / name).as_uri()}")
    page.locator(f"{within} .ut-not-so button").click()
    page.get_by_role("dialog", name="Not so on my car").wait_for()


def keep(page: Page, about: str, **more: str) -> None:
    page.get_by_label("What is not so?").select_option(about)
    for label, value in more.items():
        page.locator(f".ut-claim [name={label}]").fill(value)
    page.get_by_role("button", name="Keep it").click()


def saved(page: Page) -> dict[str, Any]:
    """The file of all claims, which is as its schema says."""
    with page.expect_download() as download:
        page.get_by_role("button", name="Save as a file").click()
    found: dict[str, Any] = json.loads(Path(str(download.value.path())).read_text(encoding="utf-8"))
    assert list(Draft202012Validator(SCHEMA).iter_errors(found)) == []
    return found


def test_the_schema_is_one() -> None:
    Draft202012Validator.check_schema(SCHEMA)
    claim = {"vehicle": "a/b-2014", "about": "restraint/wait", "how": "seen", "on": "2026-03-02"}
    valid = Draft202012Validator(SCHEMA).is_valid
    assert valid({"format": 1, "claims": [{**claim, "found": "none"}, {**claim, "says": "3 min"}]})
    for wrong in (
        {},
        {"says": "3 min", "found": "none"},
        {"says": ""},
        {"says": "1", "about": "a b"},
        {"says": "1", "mood": "good"},
    ):
        assert not valid({"format": 1, "claims": [{**claim, **wrong}]}), wrong


def test_what_is_so_instead_becomes_a_claim(phone: Page, site: Path) -> None:
    asked(phone, site)
    expect(phone.locator(".ut-claim-stands")).to_contain_text("openings/front-door/name")
    keep(
        phone,
        "openings/front-door/depth/clear",
        says="61 mm",
        by="rk",
        car="2016, left-hand drive",
        **{"with": "Calliper 0.05 mm"},
    )
    (claim,) = saved(phone)["claims"]
    assert claim.pop("on").startswith("20")
    assert claim == {
        "vehicle": "kelbrook/finch-2014-2018", "about": "openings/front-door/depth/clear", "says": "61 mm", "stood": "64 mm",
        "how": "measured", "by": "rk", "with": "Calliper 0.05 mm", "car": "2016, left-hand drive",
    }  # fmt: skip


@pytest.mark.parametrize(
    ("words", "found"), [("There is none: I looked", "none"), ("I looked and cannot tell", "cannot-tell")]
)
def test_that_there_is_none_is_an_answer(phone: Page, site: Path, words: str, found: str) -> None:
    asked(phone, site)
    phone.get_by_label(words).check()
    keep(phone, "openings/front-door/crash_sensor")
    (claim,) = saved(phone)["claims"]
    assert (claim["found"], claim.get("says")) == (found, None)


def test_an_empty_value_is_no_claim(phone: Page, site: Path) -> None:
    asked(phone, site)
    keep(phone, "openings/front-door/depth/clear", says="  ")
    expect(phone.get_by_role("alert")).to_contain_text("Type what is so")
    assert phone.evaluate("localStorage.getItem('undertrim:claims')") is None


def test_from_a_step_with_the_car_that_is_worked_on(phone: Page, site: Path) -> None:
    start(phone, site, FINCH)
    while phone.locator(".ut-screen-area").get_attribute("data-step") != "remove:vent-trim":
        if phone.locator(".ut-clock").count():
            phone.keyboard.press("ArrowRight")
        else:
            press(phone)
    phone.locator(".ut-screen .ut-not-so button").click()
    expect(phone.locator(".ut-claim [name=car]")).to_have_value("Map radio")
    keep(phone, "parts/vent-trim/held_by/0/count", says="7")
    (claim,) = saved(phone)["claims"]
    assert (claim["is"], claim["stood"]) == ({"radio": "map"}, "6")


def test_they_stand_with_the_record_until_they_are_taken_off(phone: Page, site: Path) -> None:
    asked(phone, site)
    keep(phone, "openings/front-door/impedance", says="8 ohm")
    keep(phone, "openings/front-door/nominal", says="6.75 in")
    phone.goto((site / RECORD).as_uri())
    expect(phone.get_by_role("heading", name="2 findings on this device")).to_be_visible()
    phone.get_by_role("button", name="Take it off").first.click()
    expect(phone.get_by_role("heading", name="1 finding on this device")).to_be_visible()
    assert [claim["says"] for claim in saved(phone)["claims"]] == ["6.75 in"]


def test_a_repository_gets_a_ready_made_text(phone: Page, site: Path) -> None:
    asked(phone, site)
    keep(phone, "openings/front-door/impedance", says="8 ohm & more")
    assert phone.get_by_role("link", name="Write to the repository").count() == 0
    phone.evaluate("""() => {
      const named = document.createElement("meta");
      named.name = "undertrim-repository";
      named.content = "https://code.example/shop/records/";
      document.head.append(named);
      document.dispatchEvent(new CustomEvent("ut-claims"));
    }""")
    address = urlsplit(phone.get_by_role("link", name="Write to the repository").get_attribute("href") or "")
    assert f"{address.scheme}://{address.netloc}{address.path}" == "https://code.example/shop/records/issues/new"
    words = parse_qs(address.query)
    assert words["title"] == ["Not so on my car: kelbrook/finch-2014-2018"]
    assert "openings/front-door/impedance is 8 ohm & more" in words["body"][0]
    told = words["body"][0].partition("```json\n")[2].partition("```")[0]
    assert Draft202012Validator(SCHEMA).is_valid(json.loads(told))


@pytest.mark.parametrize("view", ["", ".openings", ".wiring", ".record"])
def test_every_page_of_a_vehicle_leads_to_every_fact(phone: Page, site: Path, view: str) -> None:
    phone.goto((site / f"vehicles/kelbrook/finch-2014-2018{view}.html").as_uri())
    phone.get_by_role("button", name="Something here is not so on my car").click()
    phone.get_by_role("dialog", name="Not so on my car").wait_for()
    addresses: list[str] = phone.evaluate(
        "Array.from(document.querySelectorAll('[name=about] option'), one => one.value)"
    )
    record = next(entry.record for entry in shipped() if entry.path.stem == "finch-2014-2018")
    assert isinstance(record, VehicleRecord)
    assert len(addresses) > 500
    assert [about for about in addresses if fact_at(record, about) is None] == []
