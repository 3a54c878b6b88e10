"""Files among the records that are not read as records although somebody may think so, and names that some system cannot hold.

The reserved names and signs are those of Windows ("Naming Files, Paths, and Namespaces", Microsoft); git cannot check such a file out there.
"""

import os
import re
import unicodedata
from collections import defaultdict
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

from undertrim.record import plain_files
from undertrim.record.problem import printable
from undertrim.record.renaming import command, renaming
from undertrim.record.store import SUFFIXES, Workspace
from undertrim.words import Message, message

_FOLDERS = ("vehicles", "gear")
_YAML = re.compile(r"\.ya?ml", re.IGNORECASE)
_LEFT_BEHIND = re.compile(r"~$|^#.*#$|\.(?:bak|orig|rej|sw[a-p]|tmp|temp|save|old|backup)$", re.IGNORECASE)
_FIRST_LINE = re.compile(rb"\A(?:\xef\xbb\xbf)?(?:\s*#[^\n]*\n|\s)*(?:format|vehicle|gear):", re.IGNORECASE)
_READ = 4_000
_DEVICES = re.compile(r"(?:con|prn|aux|nul|(?:com|lpt)[0-9\u00b9\u00b2\u00b3]|conin\$|conout\$)(?:\.|$)", re.IGNORECASE)
_SIGNS = re.compile(r'[<>:"|?*\\\x00-\x1f]')


@dataclass(frozen=True, slots=True)
class Misnamed:
    """One file or folder: what is wrong with its name, and the way out. `left_behind` by an editor or by git, it does no harm."""

    path: Path
    said: Message
    left_behind: bool = False


def misnamed(workspace: Workspace) -> Iterator[Misnamed]:
    """Every such name below the records, in the order of the names; hidden files are an editor's own."""
    for folder, folders, names in os.walk(workspace.records):
        folders[:] = sorted(name for name in folders if not name.startswith("."))
        here = Path(folder)
        shown = [name for name in sorted(names) if not name.startswith(".")]
        yield from _held_nowhere(here, [*folders, *shown])
        if here.relative_to(workspace.records).parts[:1] in [(name,) for name in _FOLDERS]:
            yield from filter(None, (_unread(here / name) for name in shown if not name.endswith(SUFFIXES)))


def _held_nowhere(folder: Path, names: list[str]) -> Iterator[Misnamed]:
    alike: dict[str, list[str]] = defaultdict(list)
    for name in names:
        if fault := _fault(name):
            yield Misnamed(folder / name, fault)
        alike[(name if name.isascii() else unicodedata.normalize("NFC", name)).casefold()].append(name)
    for twins in alike.values():
        for name in twins[1:]:
            said = message("files/one-name", name=printable(name), other=printable(twins[0]))
            yield Misnamed(folder / name, said)


def _fault(name: str) -> Message | None:
    if _DEVICES.match(name):
        return message("files/device", name=printable(name))
    if name.endswith((".", " ")):
        return message("files/ends-badly", name=printable(name))
    found = _SIGNS.search(name)
    return message("files/odd-sign", name=printable(name), sign=printable(found[0])) if found else None


def _unread(path: Path) -> Misnamed | None:
    """What is wrong with a file that looks like a record and is not read as one."""
    if _LEFT_BEHIND.search(path.name) and _YAML.search(path.name):
        return Misnamed(path, message("files/left-behind", command=command("rm", path)), left_behind=True)
    if _YAML.search(path.name) or _reads_like_one(path):
        return Misnamed(path, message("files/not-read", name=printable(path.name), command=_rename(path)))
    return None


def _rename(path: Path) -> Message | str:
    stem = path.name[: found.start()] if (found := _YAML.search(path.name)) else path.stem
    return renaming(path, path.with_name(f"{stem}.yaml"))


def _reads_like_one(path: Path) -> bool:
    """Whether a file begins as a record does. What cannot be opened, or is none, does not."""
    try:
        return bool(_FIRST_LINE.match(plain_files.read(path, _READ)))
    except (OSError, plain_files.NotPlain):
        return False
