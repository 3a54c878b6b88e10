"""Photographs on the page: their files stand beside it, their dots where the record says, and a picture that changed is another file."""

import re
from io import BytesIO
from pathlib import Path

import pytest
from PIL import Image
from rule_pages import BASE
from small_site import rendered, silent

import demo_photos
from here import Here
from photographs import lay
from undertrim.publish.build.building import Builder
from undertrim.publish.facts import vehicle as facts
from undertrim.publish.pictures import photos as photo_pictures
from undertrim.publish.web import site
from undertrim.record import photo_files, photo_saving
from undertrim.record.store import Workspace
from vehicle_pages import all_pages

HOSTILE = 'The cap "><script>alert(1)</script>'
CAR = "vehicles/brindleway"


@pytest.fixture
def place(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Workspace:
    """One record with a photograph of its radio, in a site whose engine is a stand-in."""
    monkeypatch.setattr(site, "render", rendered)
    named = f"""    photos:
      - file: cap.jpg
        shows: '{HOSTILE}'
        marks: [{{at: [0.25, 0.5], label: Notch}}]
        source: e1
"""
    record = tmp_path / "records" / CAR / "otter-2014-2018.yaml"
    record.parent.mkdir(parents=True)
    record.write_text(BASE.replace("    replaced: yes\n", f"    replaced: yes\n{named}", 1), encoding="utf-8")
    (tmp_path / "records/handbook").mkdir()
    lay(photo_files.folder(record) / "cap.jpg", "80 x 60")
    return Workspace(tmp_path)


def photo(place: Workspace) -> Path:
    return photo_files.folder(place.files()[0]) / "cap.jpg"


def built(builder: Builder, place: Workspace) -> tuple[str, list[str]]:
    """The page, and the photographs beside it."""
    report = builder.build(silent).report
    assert not report.errors, [problem.message for problem in report.problems]
    folder = place.root / "out" / CAR
    page = (folder / "otter-2014-2018.html").read_text(encoding="utf-8")
    return page, sorted(path.name for path in folder.glob("*.jpg"))


def test_the_page_shows_the_file_beside_it(place: Workspace) -> None:
    page, names = built(Builder(place, place.root / "out", sheets=False, crew=Here()), place)
    assert len(names) == 1
    assert (place.root / "out" / CAR / names[0]).read_bytes() == photo(place).read_bytes()
    picture = re.findall(r"<img [^>]+>", page)
    assert len(picture) == 1
    assert f'src="{names[0]}" width="80" height="60"' in picture[0]
    assert 'loading="lazy"' in picture[0]
    assert "<script>alert" not in page
    assert "rk, 2026-03-02, at: 2016" in page


def test_another_picture_is_another_file_and_the_old_one_goes(place: Workspace) -> None:
    builder = Builder(place, place.root / "out", sheets=False, crew=Here())
    _, before = built(builder, place)
    lay(photo(place), "90 x 60")
    page, after = built(builder, place)
    assert len(after) == 1
    assert after != before
    assert f'src="{after[0]}" width="90"' in page
    afresh, _ = built(Builder(place, place.root / "out", sheets=False, crew=Here()), place)
    assert afresh == page


def test_a_check_that_is_remembered_forgets_when_a_picture_changes(place: Workspace) -> None:
    builder = Builder(place, place.root / "out", sheets=False, crew=Here())
    built(builder, place)
    lay(photo(place), "80 x 60, located")
    assert [problem.rule for problem in builder.build(silent).report.problems] == ["photo-with-location"]
    photo(place).unlink()
    assert [problem.rule for problem in builder.build(silent).report.problems] == ["photo-missing"]


def test_a_picture_that_cannot_be_read_leaves_no_hole(place: Workspace) -> None:
    """Nobody is stopped from planning or printing by it; the check tells it."""
    photo(place).write_bytes(b"no picture")
    assert "<img" not in all_pages(facts.vehicle(place.load(place.files()[0])))


def test_a_dot_stands_beside_its_spot() -> None:
    shown = {
        "width": 1000,
        "height": 500,
        "marks": [{"number": 1, "x": 250, "y": 250}, {"number": 2, "x": 500, "y": 250}],
    }
    drawn = photo_pictures.marks(shown)
    spots = re.findall(r'<circle cx="([\d.]+)" cy="([\d.]+)" r="16"', drawn)
    dots = re.findall(r'<circle cx="([\d.]+)" cy="([\d.]+)" r="40"', drawn)
    assert spots == [("250", "250"), ("500", "250")]
    assert dots == [("330", "250"), ("500", "170")]  # towards the middle; above it, where the spot is the middle


def test_the_marks_of_a_record_are_parts_of_its_picture(place: Workspace) -> None:
    steps = facts.vehicle(place.load(place.files()[0]))["steps"]
    shown = [one for step in steps for one in step["photos"]]
    assert [(mark["x"], mark["y"], mark["label"]) for one in shown for mark in one["marks"]] == [(20.0, 30.0, "Notch")]


@pytest.mark.parametrize("path", demo_photos.PICTURES, ids=lambda path: path.name)
def test_the_pictures_of_the_demo_records_are_as_drawn(path: Path) -> None:
    with Image.open(path) as stands:
        assert stands.convert("RGB").tobytes() == demo_photos.PICTURES[path]().convert("RGB").tobytes()
    assert path.stat().st_size < 40_000


def sizes(place: Workspace) -> dict[str, tuple[int, int]]:
    folder = place.root / "out" / CAR
    found = {}
    for path in [*folder.glob("*.webp"), *folder.glob("*.jpg")]:
        with Image.open(path) as opened:
            found[path.name] = opened.size
    return found


def test_a_phone_gets_a_file_as_large_as_it_shows(place: Workspace) -> None:
    lay(photo(place), "1600 x 900")
    page, (whole,) = built(Builder(place, place.root / "out", sheets=False, crew=Here()), place)
    stem = whole.removesuffix(".jpg")
    assert sizes(place) == {whole: (1600, 900), f"{stem}-480w.webp": (480, 270), f"{stem}-960w.webp": (960, 540)}
    (picture,) = re.findall(r"<img [^>]+>", page)
    assert f'srcset="{stem}-480w.webp 480w, {stem}-960w.webp 960w, {whole} 1600w"' in picture
    assert 'loading="lazy"' in picture


def test_what_is_small_already_is_one_file(place: Workspace) -> None:
    page, names = built(Builder(place, place.root / "out", sheets=False, crew=Here()), place)
    assert set(sizes(place)) == set(names)
    assert "srcset" not in page


def test_nothing_but_pixels_is_published(place: Workspace) -> None:
    """The check refuses places and turned pictures; who has which camera is nobody's business either."""
    notes = Image.Exif()
    notes[0x0110] = "A camera"
    Image.new("RGB", (900, 600), "grey").save(photo(place), exif=notes)
    built(Builder(place, place.root / "out", sheets=False, crew=Here()), place)
    assert len(sizes(place)) == 2
    for name in sizes(place):
        with Image.open(place.root / "out" / CAR / name) as opened:
            assert opened.getexif() == {}


def test_on_paper_a_photograph_is_grey_from_black_to_white() -> None:
    dull = Image.new("RGB", (400, 300), (90, 120, 90))
    dull.paste((140, 110, 150), (0, 0, 200, 300))
    stream = BytesIO()
    dull.save(stream, "PNG")
    with Image.open(BytesIO(photo_saving.grey(stream.getvalue(), 200))) as opened:
        assert opened.mode == "L"
        assert opened.size == (200, 150)
        shades = opened.tobytes()
        assert min(shades) < 20
        assert max(shades) > 235


def test_three_demo_records_have_pictures() -> None:
    assert {path.parent.name for path in demo_photos.PICTURES} >= {"finch-2014-2018", "plover-2017-2022", "bramble-2019-2023"}  # fmt: skip
