"""What is remembered from one run to the next of many small things, in one file that is read and written whole.

A collection has thousands of files, and opening one costs more than the few facts in it. The values are plain data by their keys. A file
that is damaged, or that another program wrote, is an empty one.
"""

import hashlib
import json
import os
from contextlib import suppress
from pathlib import Path
from typing import Any

from undertrim import resources


class Ledger:
    """Values by key. What was neither asked for nor entered between two saves is dropped at the second."""

    def __init__(self, path: Path | None = None) -> None:
        """The ledger at a path; without one, of this process alone."""
        self._path = path
        self._known: dict[str, Any] | None = None
        self._used: dict[str, Any] = {}

    def __getstate__(self) -> dict[str, Any]:
        """What a worker process needs: not what this one remembers."""
        return {"_path": self._path, "_known": {}, "_used": {}}

    def get(self, key: str) -> Any:
        """What was entered under a key; None where nothing was."""
        if self._known is None:
            self._known = _read(self._path)
        found = self._used.get(key)
        if found is None and (found := self._known.get(key)) is not None:
            self._used[key] = found
        return found

    def put(self, key: str, value: Any) -> None:
        """Enter something; it must not be changed afterwards."""
        self._used[key] = value

    def save(self) -> None:
        """Write what is used, if it is not what stands there. Where that cannot be, the next run finds less, and nothing else."""
        known = _read(self._path) if self._known is None else self._known
        if self._path and self._used != known:
            with suppress(OSError):
                _write(self._path, self._used)
        self._known, self._used = self._used, {}


def _read(path: Path | None) -> dict[str, Any]:
    try:
        if path is None:
            return {}
        digest, _, text = path.read_text(encoding="utf-8").partition("\n")
        found = json.loads(text) if digest == _digest(text) else {}
    except (OSError, ValueError):
        return {}
    return found if isinstance(found, dict) else {}


def _write(path: Path, values: dict[str, Any]) -> None:
    """Write in one piece, so that another process never sees half of it."""
    text = json.dumps(values, ensure_ascii=False, separators=(",", ":"))
    path.parent.mkdir(parents=True, exist_ok=True)
    aside = path.with_name(f".{path.name}.{os.getpid()}")
    try:
        aside.write_text(f"{_digest(text)}\n{text}", encoding="utf-8")
        aside.replace(path)
    except BaseException:
        aside.unlink(missing_ok=True)
        raise


def _digest(text: str) -> str:
    return hashlib.sha256(f"{resources.program()}\n{text}".encode("utf-8", "surrogatepass")).hexdigest()
