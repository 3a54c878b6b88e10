"""Ids: derived from what a record says, kebab-case, the same as the file's name.

A vehicle's id is the stem of its file, `<model>-<from year>-<to year>` with the phase where there is one; its address, unique over
all makes, is `<make>/<id>`.
"""

import re
import unicodedata
from functools import lru_cache
from pathlib import PurePosixPath
from typing import TYPE_CHECKING

if TYPE_CHECKING:  # whoever makes an id of a word needs no record
    from undertrim.record.model import VehicleFacts
    from undertrim.record.model.gear import AnyGear

_FOLD = str.maketrans(
    {"ß": "ss", "ø": "o", "Ø": "o", "æ": "ae", "Æ": "ae", "œ": "oe", "Œ": "oe", "ł": "l", "Ł": "l", "đ": "d", "Đ": "d"}
)
_DEVICE = re.compile(r"con|prn|aux|nul|(?:com|lpt)[0-9]")
"""See `misnamed.py`."""


@lru_cache(maxsize=1 << 16)
def slug(name: str) -> str:
    """A name in small letters, digits and hyphens; letters of other scripts stay as they are."""
    plain = unicodedata.normalize("NFKD", name)
    kept = "".join(char for char in plain if not unicodedata.combining(char))
    return re.sub(r"[\W_]+", "-", kept.translate(_FOLD).casefold()).strip("-")


def vehicle_path(facts: "VehicleFacts") -> PurePosixPath:
    """Where the record of a vehicle belongs below `records/vehicles`."""
    stem = f"{slug(facts.model)}-{facts.built.from_.year}-{facts.built.to.year}"
    if facts.phase:
        stem = f"{stem}-{facts.phase}"
    return PurePosixPath(_folder(slug(facts.make)), f"{stem}.yaml")


def _folder(name: str) -> str:
    """The name of a make's folder; one that Windows keeps for a device gets another ending."""
    return f"{name}-make" if _DEVICE.fullmatch(name) else name


def gear_path(facts: "AnyGear") -> PurePosixPath:
    """Where the record of a piece of gear belongs below `records/gear`."""
    return PurePosixPath(facts.folder(), f"{slug(facts.maker)}-{slug(facts.model)}.yaml")
