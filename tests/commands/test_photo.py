"""The `photo` command: what a camera wrote becomes a file that the check has nothing to say of."""

from io import BytesIO
from pathlib import Path

import pytest
from PIL import Image
from rule_pages import BASE

from photographs import made
from undertrim import cli
from undertrim.record import photo_reading, photo_saving

HOME = Path("records/vehicles/brindleway")
FOLDER = HOME / "photos/otter-2014-2018"


@pytest.fixture(autouse=True)
def workspace(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    (tmp_path / HOME).mkdir(parents=True)
    (tmp_path / HOME / "otter-2014-2018.yaml").write_text(BASE, encoding="utf-8")
    monkeypatch.chdir(tmp_path)


def run(capsys: pytest.CaptureFixture[str], *words: object) -> tuple[int, str, str]:
    code = cli.main(["photo", "otter-2014-2018", *map(str, words)])
    printed = capsys.readouterr()
    return code, printed.out, printed.err


def test_a_phones_picture_becomes_one_that_passes(capsys: pytest.CaptureFixture[str]) -> None:
    Path("IMG_2031.JPG").write_bytes(made(".jpg", "3000 x 1500, turned, located"))
    code, out, err = run(capsys, "IMG_2031.JPG", "--name", "Radio screws")
    saved = FOLDER / "radio-screws.jpg"
    assert (code, err) == (0, "")
    assert out == f"{saved}: name it where it belongs: photos: {{file: radio-screws.jpg, shows: ..., source: ...}}\n"
    found = photo_reading.picture(saved.read_bytes())
    assert (found.width, found.height) == (1000, 2000)
    assert (found.turned, found.located, found.too_large) == (False, False, False)
    with Image.open(saved) as opened:
        assert not opened.getexif()


def test_it_is_turned_as_its_note_says() -> None:
    """Orientation 6: the first row is the right side as it is seen (Exif 2.32, 4.6.4.A)."""
    picture = Image.new("RGB", (40, 20), "blue")
    picture.paste("red", (0, 0, 40, 10))
    notes, stream = Image.Exif(), BytesIO()
    notes[0x0112] = 6
    picture.save(stream, "PNG", exif=notes)
    content, ending = photo_saving.saved(stream.getvalue())
    with Image.open(BytesIO(content)) as opened:
        assert (ending, opened.size) == (".png", (20, 40))
        assert opened.getpixel((15, 20)) == (255, 0, 0)
        assert opened.getpixel((5, 20)) == (0, 0, 255)


@pytest.mark.parametrize("mode", ["RGB", "RGBA", "L", "P"])
def test_one_that_hardly_packs_is_made_small_enough(mode: str) -> None:
    stream = BytesIO()
    noise = Image.effect_noise((1000, 1000), 200).convert(mode)
    noise.save(stream, "PNG")
    content, ending = photo_saving.saved(stream.getvalue())
    assert (ending, len(content) <= 600_000) == (".jpg", True)
    assert photo_reading.picture(content).format == "JPEG"


def test_another_picture_is_not_written_over(capsys: pytest.CaptureFixture[str]) -> None:
    Path("cap.png").write_bytes(made(".png", "30 x 20"))
    assert run(capsys, "cap.png")[0] == 0
    Path("cap.png").write_bytes(made(".png", "20 x 30"))
    code, _, err = run(capsys, "cap.png")
    assert code == 1
    assert err == f"undertrim: {FOLDER / 'cap.png'} is another picture: choose another name with --name, or remove it\n"
    assert photo_reading.picture((FOLDER / "cap.png").read_bytes()).width == 30


@pytest.mark.parametrize(
    ("name", "content", "said"),
    [
        ("cap.heic", b"ftypheic", "cap.heic cannot be read as a picture: save it as JPEG, PNG or WebP"),
        ("---.png", made(".png", "9 x 9"), "---.png: a photograph's name has small letters from a to z, digits and hyphens: say one with --name"),
        ("gone.png", b"", "'gone.png' does not exist"),
    ],
)  # fmt: skip
def test_what_cannot_be_saved_is_told(capsys: pytest.CaptureFixture[str], name: str, content: bytes, said: str) -> None:
    if content:
        Path(name).write_bytes(content)
    assert run(capsys, f"./{name}") == (1, "", f"undertrim: {said}\n")
    assert not FOLDER.exists()
