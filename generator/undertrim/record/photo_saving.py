"""Makes of a camera's picture one that a record may hold: upright, small enough, and nothing in the file but pixels."""

from collections.abc import Iterator
from contextlib import contextmanager
from functools import lru_cache
from io import BytesIO

from PIL import Image, ImageOps

from undertrim.record.pictures import Broken
from undertrim.resources import table

_QUALITIES = (88, 80, 70, 60)
"""How well JPEG keeps it, the best first: the first that is small enough is taken."""

_ON_A_PHONE = 78
"""How well WebP keeps what is made smaller for phones."""

_NOTES = frozenset({"xmp", "XML:com.adobe.xmp", "comment", "photoshop", "Comment", "Author", "Software"})
"""What the library calls the notes that a file may hold beside its pixels; colour profiles say how to show these, and stay."""

_SMALLER = 0.7
"""By how much the edges shrink where the least of these is still too large, as with leaves or noise all over."""


def saved(content: bytes) -> tuple[bytes, str]:
    """The new file's bytes and its ending. A PNG stays one where it is small enough, since a drawing is sharp only so. Raises Broken."""
    with _opened(content) as opened:
        picture, was = _upright(opened), opened.format
    most = int(table("photos")["most"]["bytes"])
    if was == "PNG" and len(made := _written(picture, "PNG", optimize=True)) <= most:
        return made, ".png"
    return next(made for made in _as_jpeg(_flat(picture)) if len(made) <= most), ".jpg"


def grey(content: bytes, edge: int) -> bytes:
    """A photograph as JPEG for paper: in greys from black to white, with no edge longer than so many px; the same bytes for the same photograph. Raises Broken."""
    with _opened(content) as opened:
        picture = _flat(opened)
        picture.thumbnail((edge, edge))
        return _written(
            ImageOps.autocontrast(picture.convert("L"), cutoff=1), "JPEG", quality=_QUALITIES[0], optimize=True
        )


@lru_cache(maxsize=32)  # a preview makes a vehicle's files again after every change of its record
def narrow(content: bytes, width: int) -> bytes:
    """A photograph as WebP, so many px wide, and nothing but pixels; the same bytes for the same photograph. Raises Broken."""
    with _opened(content) as opened:
        picture = _flat(opened)
        return _written(ImageOps.scale(picture, width / picture.width), "WEBP", quality=_ON_A_PHONE, method=4)


def bare(content: bytes) -> bytes:
    """The file as it is where it holds nothing beside its pixels; else one made anew of them. Raises Broken."""
    with _opened(content) as opened:
        if not _NOTES & opened.info.keys() and not opened.getexif():
            return content
    return saved(content)[0]


@contextmanager
def _opened(content: bytes) -> Iterator[Image.Image]:
    try:
        with Image.open(BytesIO(content), formats=list(table("photos")["format"])) as opened:
            yield opened
    except MemoryError:
        raise
    except Exception as error:  # the library raises whatever its decoders met
        raise Broken from error


def _as_jpeg(picture: Image.Image) -> Iterator[bytes]:
    """Smaller and smaller, without end."""
    while True:
        yield from (_written(picture, "JPEG", quality=quality, optimize=True) for quality in _QUALITIES)
        picture = ImageOps.scale(picture, _SMALLER)


def _upright(opened: Image.Image) -> Image.Image:
    """Turned as its note says, no larger than it may be, and copied into a picture that knows no notes."""
    turned = ImageOps.exif_transpose(opened)
    edge = int(table("photos")["most"]["edge"])
    turned.thumbnail((edge, edge))
    bare = Image.new(turned.mode, turned.size)
    if turned.mode == "P":
        bare.putpalette(turned.getpalette() or [])
    bare.paste(turned)
    return bare


def _flat(picture: Image.Image) -> Image.Image:
    """In colours that JPEG knows, on white where it was see-through."""
    if "A" not in picture.mode:
        return picture.convert("RGB")
    ground = Image.new("RGBA", picture.size, "white")
    return Image.alpha_composite(ground, picture.convert("RGBA")).convert("RGB")


def _written(picture: Image.Image, format_: str, **how: object) -> bytes:
    stream = BytesIO()
    picture.save(stream, format_, **how)
    return stream.getvalue()
