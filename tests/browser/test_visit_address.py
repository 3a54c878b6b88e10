"""The visit stands in the address: it goes along from page to page, is written as the commands write it, and what it does not know is said."""

import re
import shutil
from collections.abc import Iterator
from pathlib import Path

import pytest
from browsing import ROOT
from playwright.sync_api import Page
from serving import serving
from small_site import tell_of_few_rules

from undertrim.check import runner
from undertrim.check.runner import Report
from undertrim.check.shelf import stock
from undertrim.derive import cars
from undertrim.derive.fit.answers import Vehicle
from undertrim.derive.fit.clearances import clearances
from undertrim.derive.procedure.planning import targets
from undertrim.derive.visit import text
from undertrim.derive.visit.visit import Visit
from undertrim.publish.build.building import build
from undertrim.publish.web.views import HEADS
from undertrim.record import photo_files
from undertrim.record.model import VehicleRecord
from undertrim.record.store import Workspace

SPACE = Workspace(ROOT)
VEHICLES = SPACE.files([SPACE.records / "vehicles"])
FINCH = "vehicles/kelbrook/finch-2014-2018"


@pytest.fixture(scope="module")
def served(site: Path) -> Iterator[str]:
    with serving(site, little=True) as made:
        yield made.at("").removesuffix("/")


def test_the_visit_goes_along_from_page_to_page(phone: Page, served: str) -> None:
    visit = "jobs=dash,front-door&radio=map&dash=skerrowe-broadside"
    phone.goto(f"{served}/{FINCH}.html?{visit}")
    for view in HEADS[1:]:
        phone.locator(f".ut-views a[href*='.{view.name}.html']").tap()
        phone.wait_for_url(f"**/finch-2014-2018.{view.name}.html?{visit}")
        assert phone.locator(".ut-views [aria-current=page]").count() == 1
        phone.locator(".ut-visit", has_text="Skerrowe Broadside").wait_for()
        said = phone.locator(".ut-visit").inner_text()
        assert "Radio opening, with Skerrowe Broadside; Front door speakers, left; Front door speakers, right" in said
        assert "Map radio" in said
    phone.get_by_role("link", name="Change the visit").tap()
    phone.wait_for_url(f"**/finch-2014-2018.html?{visit}#job")
    assert phone.locator("input[value=map]").is_checked()
    phone.goto(f"{served}/{FINCH}.wiring.html?{visit}")
    phone.locator(".ut-connector a", has_text=re.compile(r"^e\d+$")).first.tap()
    phone.wait_for_url(f"**/finch-2014-2018.record.html?{visit}#evidence-e*")
    assert phone.locator(":target").count() == 1


@pytest.mark.parametrize("path", VEHICLES, ids=lambda path: path.stem)
def test_what_is_chosen_is_written_into_the_address_as_the_commands_write_it(
    phone: Page, served: str, path: Path
) -> None:
    entry = SPACE.load(path)
    about, address = entry.record, entry.address
    assert isinstance(about, VehicleRecord)
    known = Vehicle(about, address, stock(SPACE), clearances())
    phone.goto(f"{served}/vehicles/{address}.html")
    car = cars.assignments(about)[-1]
    for name, choice in car.items():
        phone.locator(f".ut-variant[data-variant='{name}'] input[value='{choice}']").check()
    chosen = [one for one in targets(about) if about.jobs[one.job].when.holds(car)][:3]
    for one in chosen:
        phone.locator(f"input[name=job][value='{one}']").check()
    written = text.write(Visit(known, tuple(chosen), car))
    assert phone.url == f"{served}/vehicles/{address}.html?{written.partition('?')[2]}"
    phone.evaluate("localStorage.clear()")
    phone.goto(phone.url)
    boxes = phone.evaluate("[...document.querySelectorAll('input[name=job]:checked')].map(box => box.value)")
    assert boxes == list(map(str, chosen))


def test_words_that_are_not_of_the_vehicle_are_said(phone: Page, served: str) -> None:
    phone.goto(f"{served}/{FINCH}.html?jobs=dash,boot&radio=map&mood=%3Cb%3Egood")
    said = phone.locator("#ut-unread")
    assert said.is_visible()
    assert "mood=%3Cb%3Egood, jobs=boot" in said.inner_text() or "jobs=boot, mood=%3Cb%3Egood" in said.inner_text()
    assert phone.locator("input[value=dash]").is_checked()
    assert phone.url.endswith("mood=%3Cb%3Egood")  # it stays until something is chosen
    phone.goto(f"{served}/{FINCH}.html?jobs=dash&radio=map")
    assert not phone.locator("#ut-unread").is_visible()


@pytest.fixture(scope="module")
def forms(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A site of the Finch alone, whose dash stands in a form for each radio."""
    place = tmp_path_factory.mktemp("forms")
    about = place / "records/vehicles/kelbrook/finch-2014-2018.yaml"
    about.parent.mkdir(parents=True)
    old = "depth: {clear: 172 mm, datum: face,"
    new = "depth: {clear: [{when: {radio: plain}, is: 172 mm}, {when: {radio: map}, is: 168 mm}], datum: face,"
    shipped = ROOT / about.relative_to(place)
    assert shipped.read_text(encoding="utf-8").count(old) == 1
    about.write_text(shipped.read_text(encoding="utf-8").replace(old, new), encoding="utf-8")
    shutil.copytree(photo_files.folder(shipped), photo_files.folder(about))
    with pytest.MonkeyPatch.context() as patch:  # its evidence is of one of the two cars alone, which is nothing here
        patch.setattr(runner, "check", lambda *_, **__: Report(1, ()))
        tell_of_few_rules(patch)
        build(Workspace(place), place / "site", sheets=False, progress=lambda _: None)
    return place / "site"


def test_an_answer_about_the_car_takes_the_form_of_the_opening_that_such_a_car_has(phone: Page, forms: Path) -> None:
    """Where an opening has a form for each kind of car, the choice follows the car."""
    chosen = "[...document.querySelectorAll('input[name=job]:checked')].map(box => box.value)"
    phone.goto(f"{forms.as_uri()}/{FINCH}.html?jobs=dash")
    assert phone.evaluate(chosen) == ["dash-plain", "dash-map"]
    phone.locator("input[value=map]").check()
    assert phone.evaluate(chosen) == ["dash-map"]
    assert not phone.locator("input[value=dash-plain]").is_visible()
    phone.locator("input[value=plain]").check()
    assert phone.evaluate(chosen) == ["dash-plain"]
    assert phone.url.endswith("?jobs=dash&radio=plain")
