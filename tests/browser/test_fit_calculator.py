"""The form beside an opening in a browser; that its script reckons as the program does is tested in Node."""

# Long because one form is asked everything: what it says, leaves out and refuses, and how it looks.

from collections.abc import Callable
from pathlib import Path

import pytest
from browsing import ROOT
from playwright.sync_api import BrowserContext, Locator, Page
from test_looks import CONTRAST

from undertrim.check.shelf import stock
from undertrim.derive.fit.answers import Vehicle
from undertrim.derive.fit.channel_load import load
from undertrim.derive.fit.kinds import room
from undertrim.derive.fit.stock import Gear, only
from undertrim.derive.fit.stopping import stopping
from undertrim.derive.fit.verdict import Fit, decide, stopped
from undertrim.publish.facts.fit import verdict_words
from undertrim.publish.facts.meter import packed_script, script
from undertrim.publish.facts.plain import plain
from undertrim.publish.facts.shelf import length_units, usual_data
from undertrim.publish.web import scripts
from undertrim.record.model import Depth, Face, Opening, VehicleRecord
from undertrim.record.model.kinds.speaker import SpeakerGear, SpeakerOpening
from undertrim.record.store import Workspace
from undertrim.words import message, say
from vectors.fit import USUAL, mm

FINCH = "vehicles/kelbrook/finch-2014-2018.openings.html"


def opened(page: Page, site: Path, opening: str) -> Locator:
    """The form of an opening of one vehicle."""
    page.goto((site / FINCH).as_uri())
    form = page.locator(f"#opening-{opening} details.ut-try")
    form.locator("> summary").click()
    form.locator("form").wait_for()  # once the shelf has come
    return form


def test_the_form_on_a_page_gives_the_verdict_of_the_program(phone: Page, site: Path) -> None:
    vehicle = Vehicle(*_record("kelbrook/finch-2014-2018"), stock(Workspace(ROOT)), USUAL)
    phone.goto((site / FINCH).as_uri())
    with_form = {name: one for name, one in vehicle.record.openings.items() if one.kind in ("receiver", "speaker")}
    assert len(with_form) == 3
    for name, opening in with_form.items():
        form = phone.locator(f"#opening-{name} details.ut-try")
        form.locator("> summary").click()
        for gear in vehicle.stock.taken(opening):
            form.locator(f"#try-{name}-from").select_option(gear.id)
            shown = form.locator(".ut-try-verdict").inner_text()
            expected = sized(vehicle, opening, gear)
            every = stopping(vehicle.record, vehicle.address, vehicle.stock, opening)
            expected = stopped(expected, [item.words for item in every if gear.id in item.gear])
            assert (
                say(expected.headline)
                .replace("By size and joint:", "By size:")
                .endswith(shown.split(" ", 1)[1].removeprefix(say(verdict_words(expected))).strip())
            ), (
                name,
                gear.id,
            )
            assert say(verdict_words(expected)) in shown


def test_the_form_says_what_its_kind_leaves_out(phone: Page, site: Path) -> None:
    closing = {
        "dash": message("fit-form/receiver-not-reckoned"),
        "front-door": message("fit-form/speaker-not-reckoned"),
    }
    for opening, left_out in closing.items():
        form = opened(phone, site, opening)
        form.locator("input").first.fill("58 mm")
        assert form.locator(".ut-try-out > p:last-child").inner_text().startswith(say(left_out))


PLOVER = "vehicles/wexcombe/plover-2017-2022.openings.html"


def test_the_form_says_stop_in_the_words_of_the_ranked_list(phone: Page, site: Path) -> None:
    phone.goto((site / PLOVER).as_uri())
    phone.locator("#opening-dash details.ut-stock > summary").click()
    phone.locator("#opening-dash .ut-verdict").first.wait_for()
    form = phone.locator("#opening-dash details.ut-try")
    form.locator("> summary").click()
    shown = form.locator(".ut-try-verdict")
    every = phone.locator("#opening-dash .ut-verdict.ut-is-stop").evaluate_all(
        "all => all.map((one) => [one.dataset.gear, one.textContent])"
    )
    listed = {gear: " ".join(" ".join(text for name, text in every if name == gear).split()) for gear, _ in every}
    assert len(listed) > 1
    for gear, told in listed.items():  # in every kind of car
        form.locator("#try-dash-from").select_option(gear)
        reasons = shown.inner_text().split("By size:")[0].removeprefix("✕ STOP: not a plain replacement").strip(" .")
        assert shown.inner_text().startswith("✕ STOP: not a plain replacement")
        assert all(reason.split(" [")[0] in told for reason in reasons.split("; ")), reasons
    form.locator("#try-dash-from").select_option("")
    form.locator("#try-dash-body-width").fill("100 mm")
    assert "chime: unknown whether it can be kept" in shown.inner_text()


def test_what_only_some_cars_lose_is_said_with_them_until_the_car_is_chosen(phone: Page, site: Path) -> None:
    phone.goto((site / PLOVER).as_uri() + "?camera=none")
    phone.locator("#opening-dash details.ut-try > summary").click()
    shown = phone.locator("#opening-dash .ut-try-verdict")
    phone.locator("#try-dash-body-width").fill("100 mm")
    phone.locator("#try-dash-body-height").fill("50 mm")
    assert "camera: unknown" not in shown.inner_text()
    phone.get_by_role("button", name="Show everything").click()
    assert "rear camera [" in shown.inner_text() or "camera: unknown whether it can be kept" in shown.inner_text()
    phone.get_by_role("button", name="Only what this visit needs").click()
    assert "camera: unknown" not in shown.inner_text()


def test_what_cannot_be_read_is_said_beside_its_field_and_the_rest_goes_on(phone: Page, site: Path) -> None:
    form = opened(phone, site, "front-door")
    form.get_by_label("Mounting depth").fill("58")
    assert form.get_by_text("'58' has no unit: write '58 mm' or '58 in'").is_visible()
    assert form.get_by_text("1 field cannot be read").is_visible()
    assert "mounting depth (cannot be read)" in form.locator(".ut-try-verdict").inner_text()
    form.get_by_label("Gasket, pressed flat").fill("2 minutes")
    assert form.get_by_text("2 fields cannot be read").is_visible()
    form.get_by_label("Mounting depth").fill("2 3/16 in")
    form.get_by_label("Gasket, pressed flat").fill("none")
    assert form.locator(".ut-try-wrong:not(:empty)").count() == 0
    assert form.locator("[aria-invalid]").count() == 0
    assert "cannot be told" in form.locator(".ut-try-verdict").inner_text()


def test_what_nobody_knows_is_not_reckoned_as_nothing(phone: Page, site: Path) -> None:
    form = opened(phone, site, "front-door")
    form.locator("#try-front-door-depth").fill("40 mm")
    assert "gasket, pressed flat (not recorded)" in form.locator(".ut-try-verdict").inner_text()
    form.locator("#try-front-door-gasket").fill("Unknown")
    assert "gasket, pressed flat (unknown)" in form.locator(".ut-try-verdict").inner_text()


def test_an_outline_with_half_of_its_size_is_not_known(phone: Page, site: Path) -> None:
    form = opened(phone, site, "front-door")
    basket, height = form.locator("fieldset").first, form.locator("#try-front-door-basket-height")
    assert basket.get_by_label("Diameter", exact=True).is_visible()
    assert not height.is_visible()
    basket.get_by_label("Shape").select_option("oval")
    assert basket.get_by_label("Width", exact=True).is_visible()
    height.fill("100 mm")
    assert "basket width (not recorded)" in form.locator(".ut-try-out").inner_text()


def test_a_changed_clearance_changes_the_verdict(phone: Page, site: Path) -> None:
    form = opened(phone, site, "dash")
    form.locator("#try-dash-from").select_option("pellworth-brae-10")
    form.get_by_label("Room for plugs behind it").fill("")
    assert "fits" in form.locator(".ut-try-verdict").inner_text()
    form.locator("form details > summary").click()
    form.get_by_label("For plugs", exact=True).fill("100 mm")
    assert "does not fit" in form.locator(".ut-try-verdict").inner_text()
    form.get_by_label("For plugs", exact=True).fill("a lot")
    assert "fits" in form.locator(".ut-try-verdict").inner_text()


def test_the_form_is_there_with_its_script_and_not_on_paper(
    context: Callable[..., BrowserContext], phone: Page, site: Path
) -> None:
    form = opened(phone, site, "dash")
    assert form.is_visible()
    phone.emulate_media(media="print")
    assert not form.is_visible()
    bare = context(java_script_enabled=False).new_page()
    bare.goto((site / FINCH).as_uri())
    assert bare.locator("details.ut-try").count() > 1
    assert not bare.locator("details.ut-try").first.is_visible()


SUITS = [{"vehicle": "a/b", "opening": "dash", "clauses": {"radio": ["map"]}}]
KIT = {"id": "some", "name": "Pellworth <i>Some</i>", "kind": "kit", "gear": {"opening": plain(Face(mm("182"), mm("104"))), "contains": []}, "suits": SUITS, "alters": [], "to_get": ""}  # fmt: skip
SHELF = {"units": length_units(), "usual": usual_data(USUAL), "left_out": [], "stock": [KIT], "pieces": {}}
PLACE = {
    "kind": "receiver",
    "gear": "receiver",
    "opening": {
        "face": plain(Face(mm("220"), mm("130"))),
        "clear_front": None,
        "kit": "needed",
        "depth": plain(Depth(mm("170"), "face")),
    },
    "clauses": {},
    "closed": [],
    "uncut": False,
    "notes": ["the evidence <b>disagrees</b>"],
    "loads": [],
    "joining": {"turn_on": "", "functions": [], "sound": [], "duties": []},
}


def test_a_kit_for_some_cars_is_no_promise_for_all(phone: Page, tmp_path: Path) -> None:
    """On a page of its own: what is chosen of the car says whether the kit suits it."""
    # Long because the page is written here.
    for folder in ("assets/undertrim", "shelf"):
        (tmp_path / folder).mkdir(parents=True)
    loaded = scripts.loaded("page-openings")
    for name in loaded:
        (tmp_path / name).write_text(scripts.bundle(Path(name).stem), encoding="utf-8")
    (tmp_path / "shelf/start.js").write_text(f'undertrimShelf("start",{packed_script(SHELF)});', encoding="utf-8")
    words = {"variants": {"radio": ["map", "plain"]}, "written": {"dash": "dash"}, "takes": {"dash": "receiver"}, "between": {"dash": ["kit"]}}  # fmt: skip
    known = {"address": "a/b", "targets": [], "variants": {"radio": {}}, "words": words}
    page = tmp_path / "own.html"
    page.write_text(
        '<!doctype html><meta charset="utf-8"><title>Own</title><link rel="manifest" href="site.webmanifest"><article class="ut-vehicle"><h1>Own</h1>'
        '<span id="ut-visit-job"></span><span id="ut-visit-car"></span><span id="ut-unread"></span><button id="ut-everything"></button>'
        '<details class="ut-try" data-opening="dash"></details></article>'
        f'<script type="application/json" id="ut-choosing">{script(known)}</script>'
        f'<script type="application/json" id="ut-fit-data">{packed_script({"dash": PLACE})}</script>'
        + "".join(f'<script src="{name}"></script>' for name in loaded),
        encoding="utf-8",
    )
    every = _told(phone, page.as_uri())
    assert "fits with parts Pellworth <i>Some</i>" in every
    assert "made for some of these cars only: say above which car this is" in every
    assert "the evidence <b>disagrees</b>" in every
    mapped = _told(phone, page.as_uri() + "?radio=map")
    assert "Pellworth" in mapped
    assert "made for some" not in mapped
    assert "a kit: none in stock suits" in _told(phone, page.as_uri() + "?radio=plain")


def _told(phone: Page, address: str) -> str:
    """What the form says of one receiver."""
    phone.goto(address)
    phone.locator("summary").first.click()
    for field, size in {
        "body-width": "180 mm",
        "body-height": "100 mm",
        "trim-width": "190 mm",
        "trim-height": "110 mm",
        "chassis_depth": "90 mm",
    }.items():
        phone.locator(f"#try-dash-{field}").fill(size)
    return phone.locator(".ut-try-out").inner_text()


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_the_form_at_360_pixels(context: Callable[..., BrowserContext], site: Path, scheme: str) -> None:
    """Nothing drags the page sideways, what is pressed is 48 pixels high, and all of it is read at 4.5 to 1 (WCAG 2.2, 1.4.3)."""
    page = context(viewport={"width": 360, "height": 740}, color_scheme=scheme).new_page()
    for opening in ("dash", "front-door"):
        form = opened(page, site, opening)
        form.locator("form details > summary").click()
        first = form.locator(f"#try-{opening}-from option").nth(1).get_attribute("value")
        form.locator("select").first.select_option(first)
        form.locator("input").first.fill("58")
        assert form.locator(".ut-try-verdict").is_visible()
        assert page.evaluate("document.documentElement.scrollWidth") <= 360
        pressed = form.locator("input, select, summary").all()
        assert min(box["height"] for item in pressed if (box := item.bounding_box())) >= 48
        worst, where = page.evaluate(CONTRAST, ".ut-try :is(summary, label, legend, small, p, b, th, td, li)")
        assert worst >= 4.5, where
        assert form.locator("input:not([id]), select:not([id])").count() == 0
        assert all(item.evaluate("e => e.labels.length === 1") for item in form.locator("input, select").all())


def _record(address: str) -> tuple[VehicleRecord, str]:
    entry = Workspace(ROOT).load(ROOT / "records" / "vehicles" / f"{address}.yaml")
    assert isinstance(entry.record, VehicleRecord)
    return entry.record, address


def sized(vehicle: Vehicle, opening: Opening, gear: Gear) -> Fit:
    """The verdict by size and load, in a car of any kind."""
    between = [
        item for item in vehicle.stock.items if item.conditions(vehicle.address, opening.id) or not item.facts.suits
    ]
    found = room(opening).by_size(gear, between, vehicle.usual)
    if not isinstance(opening, SpeakerOpening):
        return found
    more = load(vehicle.record, opening, {}, only(gear, SpeakerGear).facts.impedance, {})
    return decide(found.gear, found.name, (*found.checks, *more.checks), found.parts, found.to_get)
