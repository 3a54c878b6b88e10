"""Whatever fails for one vehicle names it, leaves its last good files in the site, and stops no other."""

import faulthandler
import os
import time
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest
from jinja2 import TemplateError
from small_site import ROOT, held, renamed, rendered, silent, tiny

from here import Here
from pdf_text import texts
from undertrim.publish.build import beside
from undertrim.publish.build.building import Builder, Built
from undertrim.publish.facts import vehicle as facts
from undertrim.publish.printed import pdf
from undertrim.publish.web import pages, site
from undertrim.record.source import read_text
from undertrim.record.store import Workspace, entry
from undertrim.words import say
from undertrim.work.crew import Crew
from undertrim.work.limits import Limits

FINCH = ROOT / "records/vehicles/kelbrook/finch-2014-2018.yaml"
LONG = "Donaudampfschifffahrtsgesellschaftskapitaensplug"


def sheets_of(name: str) -> str:
    """What the sheet says of the wiring of a car one of whose plugs has that name."""
    text = FINCH.read_text(encoding="utf-8")
    before, found, after = text.partition("\nconnectors:\n")
    assert found
    changed = f"{before}{found}{after.replace('name: Main radio plug', f'name: {name}', 1)}"
    assert changed != text
    item = entry(FINCH, "vehicle", read_text(changed, FINCH))
    assert not item.problems
    from datetime import date

    made = pdf.render(facts.vehicle(item), {"wiring": "https://undertrim.example/x"}, "a4", date(2026, 1, 1))
    return "".join(texts(made))


@pytest.mark.parametrize(
    ("name", "shown"),
    [
        (LONG, LONG),
        ("Plug 中", "Plug [U+4E2D]"),
        ("Plug 🔊", "Plug [U+1F50A]"),
        ("Prise e\u0301cran", "Prise \u00e9cran"),
    ],
)
def test_a_name_of_any_kind_is_printed(name: str, shown: str) -> None:
    assert shown in sheets_of(name).replace("\n", "")


def raising(error: BaseException) -> Callable[..., Any]:
    def fail(*_: object) -> Any:
        raise error

    return fail


def gone(*_: object) -> Any:
    faulthandler.disable()  # its dump would stand among the answers
    os.abort()


def swollen(*_: object) -> Any:
    return len(bytearray(1 << 31))


def hanging(*_: object) -> Any:
    time.sleep(60)


@pytest.fixture
def place(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Workspace:
    monkeypatch.setattr(site, "render", rendered)
    monkeypatch.setattr(site, "own", lambda _: ("https://undertrim.example/", "Undertrim"))
    monkeypatch.setattr(site, "frame", lambda *_: "frame")
    return tiny(tmp_path)


def build(place: Workspace, *, crew: Crew | None = None, sheets: bool = False) -> Built:
    with Builder(place, place.root / "site", sheets=sheets, crew=crew) as builder:
        return builder.build(silent)


def only_for(stem: str, whole: Callable[..., Any], fail: Callable[..., Any]) -> Callable[..., Any]:
    """`whole`, but for the vehicle of that name, which `fail` gets."""

    def work(*args: Any) -> Any:
        about = next(item for item in args if not hasattr(item, "vehicle"))
        name = about["id"] if isinstance(about, dict) else about.id
        return fail(*args) if name == stem else whole(*args)

    return work


CASES = [
    ("page", pages, "vehicle", raising(TemplateError("no such thing")), "its page cannot be made: TemplateError: no such thing"),
    ("plan", facts, "in_each", raising(RecursionError("deep")), "its plan cannot be made: RecursionError: deep"),
    ("data", beside, "data", raising(ValueError("odd")), "its data cannot be made: ValueError: odd"),
    ("sheet", pdf, "render", raising(RuntimeError("no glyph")), "its sheet cannot be made: RuntimeError: no glyph"),
    ("death", pages, "vehicle", gone, "what is published of it ended the process that worked on it (SIGABRT)"),
    ("memory", pages, "vehicle", swollen, "what is published of it needs more than 1000 MB of memory"),
    ("time", pages, "vehicle", hanging, "what is published of it takes longer than 3 seconds"),
]  # fmt: skip


@pytest.mark.parametrize(
    ("module", "name", "fail", "said"), [case[1:] for case in CASES], ids=[case[0] for case in CASES]
)
def test_one_vehicle_fails(
    place: Workspace, monkeypatch: pytest.MonkeyPatch, module: Any, name: str, fail: Callable[..., Any], said: str
) -> None:
    monkeypatch.setattr(pdf, "render", lambda *_: b"%PDF-")
    monkeypatch.setattr(beside, "_templates", lambda *_: ())
    assert build(place, sheets=True).failed == ()
    before = held(place.root / "site")
    for path in place.files():
        renamed(path)
    monkeypatch.setattr(module, name, only_for("otter-2014-2018", getattr(module, name), fail))
    made = build(place, sheets=True, crew=Crew(Limits(3, 1000)))
    assert [(item.address, say(item.said)) for item in made.failed] == [("brindleway/otter-2014-2018", said)]
    assert (made.vehicles, made.kept) == (2, frozenset({"brindleway/otter-2014-2018"}))
    after = held(place.root / "site")
    assert after.keys() == before.keys()
    changed = {name for name in after if after[name] != before[name] and name.startswith("vehicles/")}
    ours = ("html", "record.html", "json", "facts.js")
    assert changed == {f"vehicles/brindleway/wren-2014-2018.{ending}" for ending in ours}


def test_a_vehicle_that_never_was_good_is_not_there(place: Workspace, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(pages, "vehicle", only_for("otter-2014-2018", pages.vehicle, raising(ValueError("x"))))
    made = build(place, crew=Here())
    assert (made.vehicles, len(made.failed), made.kept) == (1, 1, frozenset())
    there = {path.name.partition(".")[0] for path in (place.root / "site/vehicles").rglob("*.html")}
    assert there == {"wren-2014-2018"}


def test_it_comes_back_when_it_is_mended(place: Workspace, monkeypatch: pytest.MonkeyPatch) -> None:
    build(place, crew=Here())
    renamed(place.files()[0])
    with monkeypatch.context() as patch:
        patch.setattr(pages, "vehicle", raising(ValueError("x")))
        assert len(build(place, crew=Here()).failed) == 1
    assert build(place, crew=Here()).failed == ()
    assert "New " in (place.root / "site/vehicles/brindleway/otter-2014-2018.html").read_text(encoding="utf-8")


@pytest.mark.parametrize(
    "kept", ["body-en-visit.html", "body-en-record.html", "beside-otter-2014-2018.json", "summary.json"]
)
@pytest.mark.parametrize("how", ["a number", "emptied", "gone"])
def test_what_is_damaged_in_the_cache_is_made_again(place: Workspace, kept: str, how: str) -> None:
    build(place, crew=Here())
    before = held(place.root / "site")
    path = next(path for path in place.root.rglob(kept) if b"Otter" in path.read_bytes())
    if how == "gone":
        path.unlink()
    else:
        path.write_bytes(b"" if how == "emptied" else path.read_bytes().replace(b"2014", b"2015", 1))
    build(place, crew=Here())
    assert held(place.root / "site") == before


def test_damage_is_no_last_good_file(place: Workspace, monkeypatch: pytest.MonkeyPatch) -> None:
    build(place, crew=Here())
    for path in place.root.rglob("body-*.html"):
        path.write_text("half a pa", encoding="utf-8")
    renamed(place.files()[0])
    monkeypatch.setattr(pages, "vehicle", only_for("otter-2014-2018", pages.vehicle, raising(ValueError("x"))))
    made = build(place, crew=Here())
    assert made.kept == frozenset()
    assert "half a pa" not in "".join(text.decode("utf-8", "replace") for text in held(place.root / "site").values())
