"""The preview shows every record from its first line on: what can be derived with what is wrong on top, a page in place of what cannot, the others as ever."""

import re
from pathlib import Path

import pytest
from small_site import rendered, silent, tiny

from here import Here
from undertrim.publish.build.building import Builder, build
from undertrim.publish.web import site
from undertrim.record.store import Workspace

WREN = "vehicles/brindleway/wren-2014-2018"


@pytest.fixture
def place(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Workspace:
    monkeypatch.setattr(site, "render", rendered)
    made = tiny(tmp_path)
    (tmp_path / "records/handbook").mkdir()
    return made


def change(place: Workspace, old: str, new: str, name: str = "otter") -> None:
    path = place.records / f"vehicles/brindleway/{name}-2014-2018.yaml"
    text = path.read_text(encoding="utf-8")
    assert old in text
    path.write_text(text.replace(old, new), encoding="utf-8")


def without_notes(page: str) -> str:
    """A page without what is said of both records together."""
    return re.sub(
        r'\s*<section class="ut-unfinished".*?</section>\s*',
        "",
        re.sub(r"</header>\s*", "</header>", page),
        flags=re.DOTALL,
    )


def test_a_record_is_shown_as_it_grows(place: Workspace, tmp_path: Path) -> None:
    # Long because each state of the record follows from the one before it.
    out = tmp_path / "preview"

    def page(name: str) -> str:
        return (out / f"{name}.html").read_text(encoding="utf-8")

    otter = "vehicles/brindleway/otter-2014-2018"
    with Builder(place, out, sheets=False, crew=Here(), preview=True) as preview:
        preview.build(silent)
        good, other = page(otter), without_notes(page(WREN))
        assert "1 warning about this record" in good

        # what is refused is told on top, with its line, and where the page shows what it is about; the rest of the page stays
        change(place, "clear: 170 mm", "clear: 170")
        change(place, "screw: T20", "screw: T21")
        assert preview.build(silent).report.errors == 2
        first, openings = page(otter), page(f"{otter}.openings")
        assert '<h2 id="problems-title">2 errors in this record</h2>' in first
        assert "<mark>170, to: Cross-beam}</mark>" in first
        assert 'href="otter-2014-2018.openings.html#opening-dash"' in first
        assert 'id="opening-dash"' in openings
        assert openings.count('class="ut-unfinished-here ut-stop"') == 1
        assert without_notes(page(WREN)) == other

        # what cannot be read at all has a page that says so, and the finder knows it all the same
        change(place, "parts:\n", "parts:\n  nobody knows this\n what: [\n")
        made = preview.build(silent)
        assert [item.address for item in made.failed] == ["brindleway/otter-2014-2018"]
        assert "Nothing can be derived from this record yet." in page(otter)
        assert ">line 21</span>" in page(f"{otter}.wiring")
        assert without_notes(page(WREN)) == other
        assert "Otter" in page("makes/brindleway")

        # a record has its page from its first line on
        moss = place.records / "vehicles/vantry/moss-2010-2014.yaml"
        moss.parent.mkdir()
        moss.write_text("format: 2\n", encoding="utf-8")
        preview.build(silent)
        assert "<h1>Vantry Moss 2010–2014</h1>" in page("vehicles/vantry/moss-2010-2014")
        assert "vehicles/vantry/moss-2010-2014.html" in page("makes/vantry").replace("../", "")
        assert "moss-2010-2014" in "".join(file.read_text(encoding="utf-8") for file in (out / "finder").rglob("*.js"))
        start = "vehicle: {make: Vantry, model: Moss, built: {from: 2010-01, to: 2014-01}, drive_side: left, high_voltage: no}\n"
        moss.write_text(f"format: 2\n{start}", encoding="utf-8")
        preview.build(silent)
        assert "2 errors in this record" in page("vehicles/vantry/moss-2010-2014")
        assert "Nothing can be derived" not in page("vehicles/vantry/moss-2010-2014")
        assert without_notes(page(WREN)) == other

        # and what was mended is what it was
        moss.unlink()
        change(place, "parts:\n  nobody knows this\n what: [\n", "parts:\n")
        change(place, "clear: 170,", "clear: 170 mm,")
        change(place, "screw: T21", "screw: T20")
        preview.build(silent)
        assert page(otter) == good


def test_what_a_record_says_stays_text(place: Workspace, tmp_path: Path) -> None:
    change(place, "release: slide", "release: <script>alert(1)</script>")
    with Builder(place, tmp_path / "preview", sheets=False, crew=Here(), preview=True) as preview:
        preview.build(silent)
    pages = [file.read_text(encoding="utf-8") for file in (tmp_path / "preview/vehicles").rglob("otter*.html")]
    assert any("&lt;script&gt;alert(1)" in text for text in pages)
    assert not any("<script>alert" in text for text in pages)


def test_a_site_to_publish_has_none_of_it(place: Workspace, tmp_path: Path) -> None:
    change(place, "clear: 170 mm", "clear: 170")
    made = build(place, tmp_path / "site", sheets=False, progress=silent, crew=Here())
    assert (made.vehicles, (tmp_path / "site").exists()) == (0, False)
