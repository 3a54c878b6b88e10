"""Photographs come from strangers: what a file can hide, do or reach is found or does not matter."""

import struct
import zlib
from io import BytesIO
from pathlib import Path

import pytest
from PIL import Image, PngImagePlugin

from photographs import lay, made
from undertrim.record import photo_files, photo_reading
from undertrim.record.digests import Digests
from undertrim.record.photo_files import Missing, TooManyBytes
from undertrim.record.pictures import Broken

RECORD = Path("kelbrook/finch-2014-2018.yaml")
XMP = b'<x:xmpmeta><rdf:Description exif:GPSLatitude="52,31.2N"/></x:xmpmeta>'


@pytest.mark.parametrize("ending", [".jpg", ".png", ".webp"])
def test_a_plain_picture_is_read_with_its_size(ending: str) -> None:
    found = photo_reading.picture(made(ending, "300 x 200"))
    assert (found.width, found.height, found.turned, found.frames, found.located) == (300, 200, False, 1, False)


@pytest.mark.parametrize("ending", [".jpg", ".png", ".webp"])
def test_a_place_and_a_turn_in_exif_are_found(ending: str) -> None:
    found = photo_reading.picture(made(ending, "300 x 200, turned, located"))
    assert (found.turned, found.located) == (True, True)


@pytest.mark.parametrize("format_", ["JPEG", "WEBP"])
def test_a_place_in_xmp_is_found(format_: str) -> None:
    assert photo_reading.picture(_saved(format_, xmp=XMP)).located


def test_a_place_in_packed_xmp_is_found() -> None:
    notes = PngImagePlugin.PngInfo()
    notes.add_itxt("XML:com.adobe.xmp", XMP.decode(), zip=True)
    content = _saved("PNG", pnginfo=notes)
    assert b"GPS" not in content
    assert photo_reading.picture(content).located


def test_a_place_in_iptc_is_found() -> None:
    """The city, dataset 2:90, as picture programs write it: a Photoshop resource 0x0404 in segment APP13."""
    dataset = b"\x1c\x02\x5a" + struct.pack(">H", 6) + b"Otterb"
    resource = b"8BIM\x04\x04\0\0" + struct.pack(">I", len(dataset)) + dataset + b"\0" * (len(dataset) % 2)
    segment = b"Photoshop 3.0\0" + resource
    content = _saved("JPEG")
    tagged = content[:2] + b"\xff\xed" + struct.pack(">H", len(segment) + 2) + segment + content[2:]
    assert not photo_reading.picture(content).located
    assert photo_reading.picture(tagged).located


def test_what_would_unpack_to_gigabytes_is_not_unpacked() -> None:
    """60,000 x 60,000 px in 68 bytes: its size is read and is too large, without a warning or an error."""
    found = photo_reading.picture(_png(60_000, 60_000, b""))
    assert found.too_large


@pytest.mark.parametrize("kind", [b"zTXt", b"iCCP"])
def test_a_note_that_unpacks_without_end_is_broken(kind: bytes) -> None:
    packed = zlib.compress(b"a" * 20_000_000)
    with pytest.raises(Broken):
        photo_reading.picture(_png(10, 10, _chunk(kind, b"k\0\0" + packed)))


@pytest.mark.parametrize("content", [b"", b"GIF89a", b"<svg/>", b"%PDF-1.7", made(".png", "90 x 90, cut short")])
def test_what_is_no_picture_is_broken(content: bytes) -> None:
    with pytest.raises(Broken):
        photo_reading.picture(content)


def test_a_name_reaches_nothing_but_the_folder(tmp_path: Path) -> None:
    lay(tmp_path / "kelbrook/secret.png", "30 x 30")
    record = tmp_path / RECORD
    lay(photo_files.folder(record) / "cap.png", "30 x 30")
    (photo_files.folder(record) / "link.png").symlink_to(tmp_path / "kelbrook/secret.png")
    (photo_files.folder(record) / "folder.png").mkdir()
    album = photo_files.album(record)
    assert album.picture("cap.png").width == 30
    for name in ("../../secret.png", "link.png", "folder.png", "none.png", str(tmp_path / "kelbrook/secret.png")):
        with pytest.raises(Missing):
            album.content(name)


@pytest.mark.parametrize("linked", ["photos", "photos/finch-2014-2018"])
def test_a_folder_that_is_a_link_is_none(tmp_path: Path, linked: str) -> None:
    lay(tmp_path / "elsewhere/finch-2014-2018/cap.png", "30 x 30")
    target = tmp_path / "elsewhere" / ("" if linked == "photos" else "finch-2014-2018")
    link = tmp_path / "kelbrook" / linked
    link.parent.mkdir(parents=True)
    link.symlink_to(target, target_is_directory=True)
    assert photo_files.album(tmp_path / RECORD).names == ()


def test_a_file_beyond_the_limit_is_not_read(tmp_path: Path) -> None:
    lay(photo_files.folder(tmp_path / RECORD) / "cap.jpg", "30 x 30, of 700 KB")
    with pytest.raises(TooManyBytes):
        photo_files.album(tmp_path / RECORD).content("cap.jpg")


def test_the_state_changes_with_each_file_and_name(tmp_path: Path) -> None:
    record = tmp_path / RECORD
    folder = photo_files.folder(record)
    seen = [photo_files.state(record, Digests())]
    for change in (
        lambda: lay(folder / "cap.png", "30 x 30"),
        lambda: lay(folder / "cap.png", "31 x 30"),
        lambda: (folder / "cap.png").rename(folder / "cup.png"),
        lambda: lay(folder / "old.jpg", "30 x 30, of 700 KB"),
        lambda: (folder / "old.jpg").unlink(),
    ):
        change()
        seen.append(photo_files.state(record, Digests()))
    assert len(set(seen)) == len(seen) - 1  # the last change takes back the one before
    assert seen[-1] == seen[3]


def test_photographs_of_no_record_are_named(tmp_path: Path) -> None:
    record = tmp_path / RECORD
    lay(photo_files.folder(record) / "cap.png", "30 x 30")
    lay(record.parent / "photos/finch/cap.png", "30 x 30")
    lay(record.parent / "photos/loose.png", "30 x 30")
    record.write_text("format: 2\n", encoding="utf-8")
    assert [path.name for path in photo_files.ownerless(tmp_path)] == ["finch", "loose.png"]


def _saved(format_: str, **how: object) -> bytes:
    stream = BytesIO()
    Image.new("RGB", (30, 20)).save(stream, format_, **how)
    return stream.getvalue()


def _png(width: int, height: int, more: bytes) -> bytes:
    head = _chunk(b"IHDR", struct.pack(">IIBBBBB", width, height, 8, 2, 0, 0, 0))
    return b"\x89PNG\r\n\x1a\n" + head + more + _chunk(b"IDAT", zlib.compress(b"\0" * 10)) + _chunk(b"IEND", b"")


def _chunk(kind: bytes, content: bytes) -> bytes:
    """A chunk of PNG (ISO/IEC 15948, 5.3)."""
    return struct.pack(">I", len(content)) + kind + content + struct.pack(">I", zlib.crc32(kind + content))
