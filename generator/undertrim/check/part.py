"""One part of a collection, so that several machines can check it side by side."""

import re
import zlib
from collections.abc import Iterable
from dataclasses import dataclass
from pathlib import Path

MOST = 999


@dataclass(frozen=True, slots=True)
class Part:
    """The `number`th of so many parts `of` a collection, counted from one."""

    number: int
    of: int

    @classmethod
    def read(cls, text: str) -> "Part | None":
        """A part as typed, such as `2/8`; None for what is none."""
        typed = re.fullmatch(r"([0-9]{1,3})/([0-9]{1,3})", text)
        number, of = map(int, typed.groups()) if typed else (0, 0)
        return cls(number, of) if 1 <= number <= of <= MOST else None

    def among(self, records: Path, files: Iterable[Path]) -> list[Path]:
        """Those record files that are in this part. It depends on the name of a file alone, so that a new record moves no other."""
        return [path for path in files if self._number(_inside(records, path)) == self.number]

    def _number(self, inside: Path) -> int:
        return zlib.crc32(inside.as_posix().encode()) % self.of + 1


def _inside(records: Path, path: Path) -> Path:
    """Where a file is in its collection, the own one or another that it lies on."""
    return path.relative_to(records) if path.is_relative_to(records) else Path(*path.parts[-3:])
