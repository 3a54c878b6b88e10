"""Reads one photograph from its bytes: what it is, and what else the file tells. It comes from strangers, so limits hold before it is unpacked."""

import hashlib
import warnings
from io import BytesIO
from typing import Any

from PIL import ExifTags, Image, IptcImagePlugin

from undertrim.record.pictures import Broken, Picture
from undertrim.resources import table

Image.MAX_IMAGE_PIXELS = None  # our own limit is far lower, and is asked for before anything is unpacked

UPRIGHT = 1
"""What the tag Orientation says of a picture that is stored as it is seen (Exif 2.32, section 4.6.4.A); 0 is no value of it, and stands for none."""

_IPTC_PLACES = ((2, 90), (2, 92), (2, 95), (2, 101))
"""City, sublocation, state and country (IPTC Information Interchange Model 4.2, datasets 2:90, 2:92, 2:95, 2:101)."""

_XMP_PLACES = (
    b"exif:GPS",
    b"photoshop:City",
    b"photoshop:State",
    b"photoshop:Country",
    b"Iptc4xmpCore:Location",
    b"Iptc4xmpExt:Location",
)
"""Names of places in XMP (XMP Specification Part 2, Exif and Photoshop namespaces; IPTC Photo Metadata Standard)."""


def picture(content: bytes) -> Picture:
    """The photograph in a file's bytes, unpacked once to see that it is whole, unless it is too large for that. Raises Broken."""
    try:
        with warnings.catch_warnings():
            warnings.simplefilter("error")  # what is far too large is warned of before it is an error
            with Image.open(BytesIO(content), formats=list(table("photos")["format"])) as opened:
                return _read(opened, content)
    except MemoryError:
        raise
    except Exception as error:  # the library raises whatever its decoders met
        raise Broken from error


def _read(opened: Image.Image, content: bytes) -> Picture:
    width, height = opened.size
    found = Picture(width, height, opened.format or "", hashlib.sha256(content).hexdigest())
    if found.too_large:
        return found
    frames = getattr(opened, "n_frames", 1)
    opened.load()  # the first picture alone
    notes = opened.getexif()
    turned = notes.get(ExifTags.Base.Orientation, UPRIGHT) not in (0, UPRIGHT)
    return Picture(width, height, found.format, found.digest, turned, frames, _located(opened, notes, content))


def _located(opened: Image.Image, notes: Image.Exif, content: bytes) -> bool:
    """Whether any note in the file tells where it was taken: Exif, XMP (packed or not), IPTC."""
    if notes.get_ifd(ExifTags.IFD.GPSInfo):
        return True
    texts = (content, *(_as_bytes(value) for value in opened.info.values()))
    if any(name in text for text in texts for name in _XMP_PLACES):
        return True
    iptc: dict[Any, Any] = IptcImagePlugin.getiptcinfo(opened) or {}  # type: ignore[arg-type] # it asks what it gets
    return any(place in iptc for place in _IPTC_PLACES)


def _as_bytes(value: object) -> bytes:
    return value.encode() if isinstance(value, str) else value if isinstance(value, bytes) else b""
