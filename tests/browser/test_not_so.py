"""Not so on my car: from what a page tells to a claim on the device, and from there to a file that is as its schema says."""

import json
from pathlib import Path
from typing import Any
from urllib.parse import parse_qs, urlsplit

import pytest
from in_bay import FINCH, press, start
from playwright.sync_api import Page, expect

from publishing import shipped
from undertrim.derive.evidence.facts import fact_at
from undertrim.record import claims
from undertrim.record.model import VehicleRecord

OPENINGS, RECORD = "vehicles/kelbrook/finch-2014-2018.openings.html", "vehicles/kelbrook/finch-2014-2018.record.html"


def asked(page: Page, site: Path, name: str = OPENINGS, within: str = "#opening-front-door") -> None:
    page.goto(f"{(site / name).as_uri()}")
    page.locator(f"{within} .ut-not-so button").click()
    page.get_by_role("dialog", name="Not so on my car").wait_for()


def keep(page: Page, about: str, **more: str) -> None:
    more = {"by": "rk", "with": "Calliper 0.05 mm", **more}
    page.get_by_label("What is not so?").select_option(about)
    for label, value in more.items():
        page.locator(f".ut-claim [name={label}]").fill(value)
    page.get_by_role("button", name="Keep it").click()


def saved(page: Page) -> dict[str, Any]:
    """The file of all claims, which is as its schema says."""
    with page.expect_download() as download:
        page.get_by_role("button", name="Save as a file").click()
    path = Path(str(download.value.path()))
    read = claims.read(path)
    assert (read.problems, read.bad) == ((), ())
    found: dict[str, Any] = json.loads(path.read_text(encoding="utf-8"))
    return found


def test_what_is_so_instead_becomes_a_claim(phone: Page, site: Path) -> None:
    asked(phone, site)
    expect(phone.locator(".ut-claim-stands")).to_contain_text("openings/front-door/name")
    keep(
        phone,
        "openings/front-door/depth/clear",
        says="61 mm",
        year="2016",
    )
    (claim,) = saved(phone)["answers"]
    assert claim.pop("on").startswith("20")
    assert claim == {
        "vehicle": "kelbrook/finch-2014-2018", "about": "openings/front-door/depth/clear", "says": "61 mm", "was": "64 mm",
        "how": "measured", "by": "rk", "with": "Calliper 0.05 mm", "car": {"year": 2016, "side": "unknown"},
    }  # fmt: skip


SHARES = """
  window.handedOn = [];
  Object.defineProperty(navigator, "canShare", { value: ({ files }) => files.every((one) => TAKES.includes(one.type)) });
  Object.defineProperty(navigator, "share", { value: async ({ files }) => {
    const told = ENDS ? [] : await Promise.all(files.map(async (one) => [one.name, await one.text()]));
    window.handedOn.push(told);
    if (ENDS) throw new DOMException("", ENDS);
  } });
"""


@pytest.mark.parametrize(
    ("takes", "ends", "ending"),
    [
        (["application/json", "text/plain", "image/jpeg"], "", ".json"),
        (["text/plain", "image/jpeg"], "", ".txt"),
        (["image/jpeg"], "", ""),
        (["application/json", "image/jpeg"], "AbortError", "nothing"),
        (["application/json", "image/jpeg"], "NotAllowedError", "saved"),
    ],
)
def test_a_claims_file_is_shared_where_the_device_takes_it(
    phone: Page, site: Path, tmp_path: Path, takes: list[str], ends: str, ending: str
) -> None:
    """A device that shares, one whose browser hands on no JSON, one that shares no such files, one whose owner thought better of it, one that refuses."""
    phone.add_init_script(SHARES.replace("TAKES", json.dumps(takes)).replace("ENDS", json.dumps(ends)))
    asked(phone, site)
    keep(phone, "openings/front-door/depth/clear", says="61 mm")
    whole, share = saved(phone), phone.get_by_role("button", name="Send it")
    if not ending:
        expect(share).to_have_count(0)
        return
    if ending == "saved":
        with phone.expect_download():
            share.click()
        return
    share.click()
    (handed_on,) = phone.wait_for_function("window.handedOn.length && window.handedOn").json_value()
    if ending == "nothing":
        assert handed_on == []
        return
    ((name, text),) = handed_on
    assert name.endswith(ending)
    (tmp_path / name).write_text(text, encoding="utf-8")
    read = claims.read(tmp_path / name)
    assert (read.problems, read.bad, len(read.answers)) == ((), (), 1)
    assert json.loads(text)["answers"] == whole["answers"]


@pytest.mark.parametrize(
    ("words", "found"),
    [
        ("There is none: I looked", "none"),
        ("I looked and cannot tell", "cannot-tell"),
        ("What stands here is not so. What is, I cannot say", "not-so"),
    ],
)
def test_that_there_is_none_is_an_answer(phone: Page, site: Path, words: str, found: str) -> None:
    asked(phone, site)
    phone.get_by_label(words).check()
    keep(phone, "openings/front-door/crash_sensor")
    (claim,) = saved(phone)["answers"]
    assert (claim["found"], claim.get("says")) == (found, None)


def test_an_empty_value_is_no_claim(phone: Page, site: Path) -> None:
    asked(phone, site)
    keep(phone, "openings/front-door/depth/clear", says="  ")
    expect(phone.get_by_role("alert")).to_contain_text("Type what is so")
    assert phone.evaluate("localStorage.getItem('undertrim:claims')") is None


@pytest.mark.parametrize(
    ("left_out", "said"),
    [("by", "Type your initials."), ("with", "Say what you measured with, and its step: Calliper 0.05 mm.")],
)
def test_who_and_with_what_are_asked_for(phone: Page, site: Path, left_out: str, said: str) -> None:
    asked(phone, site)
    keep(phone, "openings/front-door/depth/clear", says="61 mm", **{left_out: ""})
    expect(phone.get_by_role("alert")).to_have_text(said)
    assert phone.evaluate("localStorage.getItem('undertrim:claims')") is None


def test_from_a_step_with_the_car_that_is_worked_on(phone: Page, site: Path) -> None:
    start(phone, site, FINCH)
    while phone.locator(".ut-screen-area").get_attribute("data-step") != "remove:vent-trim":
        if phone.locator(".ut-clock").count():
            phone.keyboard.press("ArrowRight")
        else:
            press(phone)
    phone.locator(".ut-screen .ut-not-so button").click()
    keep(phone, "parts/vent-trim/held_by/0/count", says="7")
    (claim,) = saved(phone)["answers"]
    assert (claim["car"]["is"], claim["was"]) == ({"radio": "map"}, "6")


def test_they_stand_with_the_record_until_they_are_taken_off(phone: Page, site: Path) -> None:
    asked(phone, site)
    keep(phone, "openings/front-door/impedance", says="8 ohm")
    keep(phone, "openings/front-door/nominal", says="6.75 in")
    phone.goto((site / RECORD).as_uri())
    expect(phone.get_by_role("heading", name="2 findings on this device")).to_be_visible()
    phone.get_by_role("button", name="Take it off").first.click()
    expect(phone.get_by_role("heading", name="1 finding on this device")).to_be_visible()
    assert [claim["says"] for claim in saved(phone)["answers"]] == ["6.75 in"]


def test_a_repository_gets_a_ready_made_text(phone: Page, site: Path, tmp_path: Path) -> None:
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
    file = tmp_path / "told.json"
    file.write_text(told, encoding="utf-8")
    assert [answer.about for answer in claims.read(file).answers] == ["openings/front-door/impedance"]


def test_a_repository_gets_a_new_file(phone: Page, site: Path, tmp_path: Path) -> None:
    asked(phone, site)
    keep(phone, "openings/front-door/impedance", says="8 ohm & more")
    phone.evaluate("""() => {
      const named = document.createElement("meta");
      named.name = "undertrim-new-file";
      named.content = "https://code.example/shop/records/new/main?filename=claims/{name}&value={text}";
      document.head.append(named);
      document.dispatchEvent(new CustomEvent("ut-claims"));
    }""")
    address = urlsplit(phone.get_by_role("link", name="Put a file into the repository").get_attribute("href") or "")
    words = parse_qs(address.query)
    assert words["filename"][0].startswith("claims/claims-finch-2014-2018-20")
    file = tmp_path / "told.json"
    file.write_text(words["value"][0], encoding="utf-8")
    assert [answer.says for answer in claims.read(file).answers] == ["8 ohm & more"]
    for _ in range(30):
        phone.get_by_role("button", name="Keep it").click()
        phone.locator(".ut-claim [name=says]").fill("8 ohm and some more of it" * 9)
    expect(phone.get_by_role("link", name="Put a file into the repository")).to_have_count(0)


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
