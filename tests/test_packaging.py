"""The wheel holds all it needs: it is built, installed on its own, and used far from the checkout."""

# Long because one wheel and one environment serve all of it.

import hashlib
import os
import shutil
import subprocess
import sys
import sysconfig
import venv
import zipfile
from collections.abc import Iterator, Sequence
from pathlib import Path

import pytest

ROOT = Path(__file__).parent.parent
PACKAGE = ROOT / "generator" / "undertrim"
SHIPPED = ("schema", "site_overrides", "mkdocs.yml", "records/handbook")
RECORD = Path("records/vehicles/kelbrook/finch-2014-2018.yaml")
BROKEN = "format: 1\nvehicle:\n  maker: Kelbrook\n"


def run(*command: str | Path, cwd: Path, first: Path | None = None) -> subprocess.CompletedProcess[str]:
    """Run a command with nothing of the checkout on its path; `first` is a folder of programs that are found before others."""
    env = {name: value for name, value in os.environ.items() if not name.startswith(("PYTHON", "PIP_", "COVERAGE"))}
    if first:
        env["PATH"] = f"{first}{os.pathsep}{env['PATH']}"
    return subprocess.run(command, cwd=cwd, env=env, capture_output=True, text=True, check=False)


def pip(*arguments: str | Path, cwd: Path) -> None:
    done = run(sys.executable, "-m", "pip", "--disable-pip-version-check", *arguments, cwd=cwd)
    assert done.returncode == 0, done.stdout + done.stderr


@pytest.fixture(scope="module")
def wheel(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The wheel, built without fetching anything."""
    folder = tmp_path_factory.mktemp("wheel")
    pip("wheel", "--no-deps", "--no-index", "--no-build-isolation", "--wheel-dir", folder, ROOT, cwd=folder)
    (made,) = folder.glob("undertrim-*.whl")
    return made


@pytest.fixture(scope="module")
def names(wheel: Path) -> set[str]:
    with zipfile.ZipFile(wheel) as archive:
        return set(archive.namelist())


@pytest.fixture(scope="module")
def installed(wheel: Path, tmp_path_factory: pytest.TempPathFactory) -> Path:
    """An environment with the wheel; the packages that it needs are lent by the one the tests run in.

    A path file that is reached through another path file is not followed, so the checkout stays unseen.
    """
    home = tmp_path_factory.mktemp("environment")
    venv.create(home, with_pip=False)
    paths = sysconfig.get_paths(scheme="venv", vars={"base": str(home), "platbase": str(home)})
    (Path(paths["purelib"]) / "lent.pth").write_text(sysconfig.get_path("purelib") + "\n", encoding="utf-8")
    pip(
        "--python",
        paths["scripts"] + "/python",
        "install",
        "--no-deps",
        "--no-index",
        "--force-reinstall",
        wheel,
        cwd=home,
    )
    return Path(paths["scripts"])


@pytest.fixture
def workspace(tmp_path: Path) -> Path:
    """A folder of somebody's own with one record."""
    (tmp_path / RECORD).parent.mkdir(parents=True)
    shutil.copy(ROOT / RECORD, tmp_path / RECORD)
    shutil.copytree(ROOT / RECORD.parent / "photos", tmp_path / RECORD.parent / "photos")
    return tmp_path


def sources() -> list[Path]:
    return [path for path in PACKAGE.rglob("*") if path.is_file() and "__pycache__" not in path.parts]


def shipped() -> list[Path]:
    tops = [ROOT / name for name in SHIPPED]
    return [path for top in tops for path in ([top] if top.is_file() else top.rglob("*")) if path.is_file()]


def missing(names: set[str], wanted: Sequence[str]) -> list[str]:
    return [name for name in wanted if name not in names]


def test_the_wheel_holds_every_file_of_the_package(names: set[str]) -> None:
    wanted = [f"undertrim/{path.relative_to(PACKAGE).as_posix()}" for path in sources()]
    assert {
        "undertrim/py.typed",
        "undertrim/record/data/units.toml",
        "undertrim/publish/printed/templates/sheet.typ",
    } <= set(wanted)
    assert missing(names, wanted) == []


def test_the_wheel_holds_schemas_theme_and_site_configuration(names: set[str]) -> None:
    wanted = [f"undertrim/_shipped/{path.relative_to(ROOT).as_posix()}" for path in shipped()]
    assert {f"undertrim/_shipped/{name}" for name in ("schema/vehicle.schema.json", "mkdocs.yml")} <= set(wanted)
    assert missing(names, wanted) == []


def test_the_wheel_holds_nothing_else(names: set[str]) -> None:
    ours = {f"undertrim/{path.relative_to(PACKAGE).as_posix()}" for path in sources()}
    ours |= {f"undertrim/_shipped/{path.relative_to(ROOT).as_posix()}" for path in shipped()}
    assert {name for name in names - ours if ".dist-info/" not in name} == set()


def test_the_installed_package_is_the_one_that_runs(installed: Path, tmp_path: Path) -> None:
    done = run(installed / "python", "-c", "import undertrim; print(undertrim.__file__)", cwd=tmp_path)
    assert Path(done.stdout.strip()).is_relative_to(installed.parent), done.stdout + done.stderr


def test_check_works_away_from_the_checkout(installed: Path, workspace: Path) -> None:
    good = run(installed / "undertrim", "check", cwd=workspace)
    assert (good.returncode, good.stdout) == (0, "1 record checked, no problems\n"), good.stdout + good.stderr
    (workspace / RECORD).write_text(BROKEN, encoding="utf-8")
    bad = run(installed / "undertrim", "check", cwd=workspace)
    assert bad.returncode == 1, bad.stdout + bad.stderr
    assert f"{RECORD}:3:3: error: " in bad.stdout


def test_build_works_away_from_the_checkout(installed: Path, workspace: Path) -> None:
    done = run(installed / "undertrim", "build", cwd=workspace)
    assert done.returncode == 0, done.stdout + done.stderr
    beside = workspace / "site" / "vehicles" / "kelbrook"
    assert "Upper vent trim" in (beside / "finch-2014-2018.html").read_text(encoding="utf-8")
    assert (beside / "finch-2014-2018-a4.pdf").read_bytes().startswith(b"%PDF-")
    assert (workspace / "site" / "assets" / "undertrim" / "style.css").stat().st_size > 0


ANSWERS = """{"claims": 1, "answers": [{"vehicle": "mirefield/teal-2012-2016", "about": "openings/front-door/depth/clear", "says": "61 mm",
"how": "measured", "on": "2026-05-02", "by": "rk", "with": "Steel rule 1 mm", "car": {"year": 2015, "side": "right"}}]}"""


def test_an_empty_folder_becomes_a_collection_whose_steps_run(installed: Path, tmp_path: Path) -> None:
    """The whole way of a shop with the plain shell: begin, check, change, review, publish, take what a stranger sent, twice."""
    # Long because each step rests on what the one before it left in the folder.

    def step(*words: str, code: int = 0) -> str:
        done = run("sh", "ci.sh", *words, cwd=tmp_path, first=installed)
        assert done.returncode == code, done.stdout + done.stderr
        return done.stdout + done.stderr

    def git(*words: str) -> None:
        done = run("git", "-c", "user.name=x", "-c", "user.email=x@x.invalid", *words, cwd=tmp_path)
        assert done.returncode == 0, done.stderr

    assert run(installed / "undertrim", "init", "--name", "Bay Four", cwd=tmp_path).returncode == 0
    assert "sh ci.sh publish DIR" in step(code=2)
    git("init", "--quiet")
    git("add", "--all")
    git("commit", "--quiet", "--message", "Begun")
    record = tmp_path / "records/vehicles/mirefield/teal-2012-2016.yaml"
    record.write_text(record.read_text(encoding="utf-8").replace("clear: 58 mm", "clear: 48 mm"), encoding="utf-8")
    step("all", "HEAD")
    assert "48 mm" in (tmp_path / "review.md").read_text(encoding="utf-8")
    shown = (tmp_path / "site/index.html").read_text(encoding="utf-8")
    assert "<title>Bay Four" in shown or "Bay Four</title>" in shown
    assert (tmp_path / "site/how-to-measure.html").is_file(), "the handbook is there"
    step("publish", "shown")
    assert (tmp_path / "shown/vehicles/mirefield/teal-2012-2016-a4.pdf").is_file()

    (tmp_path / "claims/-rk 1.json").write_text(ANSWERS, encoding="utf-8")
    (tmp_path / "claims/broken.json").write_text("{", encoding="utf-8")
    (tmp_path / "claims/link.json").symlink_to("/etc/passwd")
    step("take")
    after = record.read_text(encoding="utf-8")
    assert "61 mm" in after
    assert {path.relative_to(tmp_path / "claims").as_posix() for path in (tmp_path / "claims").rglob("*")} >= {
        "taken/-rk 1.json",
        "refused/broken.json",
        "link.json",
    }
    assert "passwd" not in step("take")
    assert record.read_text(encoding="utf-8") == after


SHARED = "undertrim_county"
LAYER = """{"claims": 1, "vehicle": "kelbrook/finch-2014-2018", "by": "mo", "on": "2026-10-02", "answers": [
{"about": "openings/front-door/depth/clear", "says": "58 mm", "how": "measured", "with": "Steel rule 0.5 mm", "car": {"year": 2016, "side": "left", "is": {"radio": "map"}}},
{"about": "restraint/read_faults_first", "says": "yes", "how": "maker"}]}"""


def digest(folder: Path) -> str:
    files = sorted(path for path in folder.rglob("*") if path.is_file())
    return hashlib.sha256(b"".join(os.fsencode(path) + b"\0" + path.read_bytes() for path in files)).hexdigest()


@pytest.fixture
def county(installed: Path, tmp_path: Path) -> Iterator[Path]:
    """A collection that is installed as a package beside the program, as a county's shops may share one: a shipped vehicle and some stock. No byte of it changes."""
    (library,) = installed.parent.glob("lib/python*/site-packages")
    home = library / SHARED
    for name in ("vehicles/kelbrook", "gear/speakers"):
        shutil.copytree(ROOT / "records" / name, home / "records" / name)
    before = digest(home)
    yield home
    assert digest(home) == before
    shutil.rmtree(home)


def test_an_empty_folder_becomes_a_layer_on_a_shared_collection(installed: Path, county: Path, tmp_path: Path) -> None:
    """An addition, a conflict, an own vehicle, own stock and a note: checked, built, searched, reviewed, given back and taken, from the wheel."""
    # Long because each step rests on what the one before it left in the folder.
    shop, kept = tmp_path / "shop", tmp_path / "kept"

    def step(*words: str | Path, code: int = 0, cwd: Path = shop) -> str:
        done = run(installed / "undertrim", *words, cwd=cwd)
        assert done.returncode == code, done.stdout + done.stderr
        return done.stdout + done.stderr

    shop.mkdir()
    step("init", "--on", f"package:{SHARED}", "--name", "Bay Four")
    for words in (["init", "--quiet"], ["add", "--all"], ["commit", "--quiet", "--message", "Begun"]):
        assert run("git", "-c", "user.name=x", "-c", "user.email=x@x.invalid", *words, cwd=shop).returncode == 0
    (tmp_path / "found.json").write_text(LAYER, encoding="utf-8")
    assert "1 written down, 1 in conflict" in step("take", tmp_path / "found.json")
    for name in ("records/vehicles/mirefield/teal-2012-2016.yaml", "records/gear/speakers/pebblerun-tern-60.yaml"):
        (shop / name).parent.mkdir(parents=True)
        shutil.copy(PACKAGE / "commands/collection/all" / name, shop / name)
    note = shop / "records/notes/kelbrook/finch-2014-2018.txt"
    note.parent.mkdir(parents=True)
    note.write_text("Key in drawer 4.", encoding="utf-8")

    step("check")
    assert f"from the shared collection '{SHARED}'" in step(
        "verify", "finch-2014-2018", "--by", "mo", "--car", "2016", code=2
    )
    found = step("find", "finch"), step("find", "teal")
    assert "with additions of ours" in found[0]
    assert "ours" in found[1]
    assert "restraint" in step("review", "HEAD").casefold()
    step("build", "--no-pdf")
    page = (shop / "site/vehicles/kelbrook/finch-2014-2018.record.html").read_text(encoding="utf-8")
    assert f"Shared: from &#39;{SHARED}&#39;" in page
    assert "(ours)" in page
    assert "Key in drawer 4." in page
    assert "drawer" not in (shop / "site/vehicles/kelbrook/finch-2014-2018.json").read_text(encoding="utf-8")
    assert "ours" in (shop / "site/makes/mirefield.html").read_text(encoding="utf-8")
    assert "Ours:" in (shop / "site/gear/pebblerun-tern-60.html").read_text(encoding="utf-8")

    assert "teal-2012-2016: a vehicle" in step("give", "--out", tmp_path / "gift")
    shutil.copytree(county, kept)
    step("take", tmp_path / "gift", cwd=kept)
    step("check", cwd=kept)
    settings = shop / "undertrim.toml"
    settings.write_text(settings.read_text(encoding="utf-8").replace(f"package:{SHARED}", "../kept"), encoding="utf-8")
    assert step("give") == "nothing to give: the shared collections have all of it\n"
    assert step("check", code=1).count("(layer)") == 4
