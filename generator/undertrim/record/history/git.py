"""Asks git for what a repository held, by its plumbing alone: nothing is checked out, and neither index nor working tree is written."""

import os
import subprocess
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path

from undertrim.record.problem import printable
from undertrim.words import message
from undertrim.work.refused import Refused

_PLAIN = (
    "--literal-pathspecs",  # a name of a file is no pattern
    *("-c", "core.fsmonitor=false"),  # runs a program of the repository's choice
    *("-c", "core.quotePath=false"),
)
_SECONDS = 60
MERGE_BASE = "..."
"""What stands behind a revision, as in git itself, for where its branch and this one parted."""


class NoHistory(Refused):
    """What was before cannot be read; `said` tells why."""


@dataclass(frozen=True, slots=True)
class Repository:
    """The repository that holds a folder; `top` is its uppermost folder."""

    top: Path

    @classmethod
    def holding(cls, folder: Path) -> "Repository":
        """The one that holds a folder. Raises NoHistory."""
        try:
            top = _asked(folder, "rev-parse", "--show-toplevel")
        except NoHistory as error:
            raise NoHistory(message("history/no-repository", folder=printable(str(folder)))) from error
        return cls(Path(os.fsdecode(top.removesuffix(b"\n"))).resolve())

    def commit(self, revision: str) -> str:
        """The commit that a revision names; with three dots behind it, where its branch and this one parted. Raises NoHistory."""
        name = revision.removesuffix(MERGE_BASE)
        try:
            found = self._named(name)
            if name != revision:
                found = _asked(self.top, "merge-base", found, "HEAD").decode().strip()
        except NoHistory as error:
            raise NoHistory(message("history/no-revision", revision=printable(revision))) from error
        return found

    def _named(self, name: str) -> str:
        asked = ("rev-parse", "--verify", "--quiet", "--end-of-options", f"{name}^{{commit}}")
        return _asked(self.top, *asked).decode().strip()

    def differing(self, commit: str, folder: Path) -> list[str]:
        """The files below a folder that may not be what they were in a commit, by their names from the top: changed, gone and new ones, also such as nobody added yet."""
        below = self.name(folder)
        changed = _asked(
            self.top, "diff", "--name-only", "-z", "--no-renames", "--no-ext-diff", "--no-textconv", commit, "--", below
        )
        others = _asked(self.top, "ls-files", "--others", "--exclude-standard", "-z", "--", below)
        return sorted({os.fsdecode(name) for name in (*changed.split(b"\0"), *others.split(b"\0")) if name})

    def commits(self, folder: Path) -> list[tuple[str, str]]:
        """The commits that changed something below a folder, the newest first, each with its day (`2026-11-27`)."""
        found = _asked(self.top, "log", "--format=%H %cs", "--", self.name(folder)).decode()
        return [(commit, day) for commit, _, day in (line.partition(" ") for line in found.splitlines())]

    def names(self, commit: str, folder: Path) -> list[str]:
        """All files that a commit has below a folder."""
        found = _asked(self.top, "ls-tree", "-r", "-z", "--name-only", "--full-tree", commit, "--", self.name(folder))
        return [os.fsdecode(name) for name in found.split(b"\0") if name]

    def contents(self, commit: str, names: Sequence[str]) -> dict[str, bytes]:
        """The bytes of files in a commit; what it has no file of that name for is left out."""
        wanted = [name for name in names if "\n" not in name]  # git is asked line by line
        asked = b"".join(os.fsencode(f"{commit}:{name}\n") for name in wanted)
        answer = _asked(self.top, "cat-file", "--batch", given=asked) if wanted else b""
        return dict(_blobs(answer, wanted))

    def name(self, path: Path) -> str:
        """What git calls a path."""
        return path.resolve().relative_to(self.top).as_posix()


def _blobs(answer: bytes, wanted: Iterable[str]) -> Iterator[tuple[str, bytes]]:
    """What `git cat-file --batch` printed: for each name a line `<object> <type> <size>`, the bytes and a line's end; or one line that says what is lacking."""
    at = 0
    for name in wanted:
        end = answer.index(b"\n", at)
        *_, kind, size = [b"", b"", *answer[at:end].split(b" ")]
        at = end + 1
        if size.isdigit() and kind in (b"blob", b"tree"):
            content, at = answer[at : at + int(size)], at + int(size) + 1
            if kind == b"blob":
                yield name, content


def _asked(folder: Path, *words: str, given: bytes = b"") -> bytes:
    """What git answers in a folder. Raises NoHistory."""
    quiet = {**os.environ, "GIT_OPTIONAL_LOCKS": "0", "LC_ALL": "C"}  # the index is not written, not even refreshed
    try:
        found = subprocess.run(  # noqa: S603 - no shell, and what was typed stands behind `--end-of-options`
            ["git", *_PLAIN, "-C", os.fspath(folder), *words],  # noqa: S607 - the git of whoever calls us
            input=given,
            capture_output=True,
            timeout=_SECONDS,
            check=False,
            env=quiet,
        )
    except FileNotFoundError as error:
        raise NoHistory(message("history/no-git")) from error
    except subprocess.TimeoutExpired as error:
        raise NoHistory(message("history/too-slow", seconds=_SECONDS)) from error
    if found.returncode:
        why = printable(found.stderr.decode("utf-8", "replace").strip().partition("\n")[0])
        raise NoHistory(message("history/refused", why=why))
    return found.stdout
