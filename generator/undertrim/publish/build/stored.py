"""A vehicle's finished files in the cache: written so that half of them is never taken for done, read so that damage shows."""

import hashlib
import json
import os
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from undertrim.record.digests import joined


class Damaged(Exception):  # noqa: N818 - it names the state of the cache
    """A file in the cache is gone, or is not what was written there: it is to be made again."""


@dataclass(frozen=True, slots=True)
class Stored:
    """One finished folder: the few facts that other pages need, and the digest of each file by its name."""

    folder: Path
    summary: Mapping[str, Any]
    digests: Mapping[str, str]

    def content(self, name: str) -> bytes:
        """A file as it was written. Raises Damaged."""
        try:
            content = (self.folder / name).read_bytes()
        except FileNotFoundError as error:
            raise Damaged(f"{self.folder.name}/{name} is gone") from error
        if hashlib.sha256(content).hexdigest() != self.digests[name]:
            raise Damaged(f"{self.folder.name}/{name} is not as it was written")
        return content

    def whole(self) -> bool:
        """Whether every file is there as it was written."""
        try:
            for name in self.digests:
                self.content(name)
        except Damaged:
            return False
        return True


def write(folder: Path, files: Iterable[tuple[str, bytes]], summary: Mapping[str, Any], done: Iterable[str]) -> None:
    """Write the files, and last the lists of them that say all are there, under the names `done`."""
    folder.mkdir(parents=True, exist_ok=True)
    digests = {}
    for name, content in files:
        replace(folder / name, content)
        digests[name] = hashlib.sha256(content).hexdigest()
    text = json.dumps({"summary": summary, "digests": digests}, ensure_ascii=False)
    for name in done:
        replace(folder / name, f"{joined(text)}\n{text}".encode())


def read(folder: Path, done: str) -> Stored | None:
    """What an earlier run left, if it was finished and its list is whole; the files are held against it when they are used."""
    try:
        digest, _, text = (folder / done).read_bytes().decode().partition("\n")
        if digest != joined(text):
            return None
        known = json.loads(text)
        return Stored(folder, known["summary"], known["digests"])
    except (FileNotFoundError, NotADirectoryError, ValueError, TypeError, KeyError):
        return None


def replace(path: Path, content: bytes) -> None:
    """Write in one piece: whoever looks finds the old file or the new one."""
    aside = path.with_name(f".{path.name}.{os.getpid()}")
    try:
        aside.write_bytes(content)
        aside.replace(path)
    except BaseException:
        aside.unlink(missing_ok=True)
        raise
