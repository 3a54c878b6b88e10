"""Make a folder into a collection: settings, an example, a handbook, editor settings, and the steps that every change goes through.

DIR is the folder (default: here), which is made where there is none. A file that is there already is never overwritten; it is named. The
README that is written says the two commands from nothing to a site. What comes with this program is copied, and nothing is fetched. With --on it
is a layer on a shared collection, into which nothing is ever written.
"""

import argparse
from collections.abc import Iterator
from pathlib import Path, PurePosixPath

from undertrim import resources
from undertrim.commands.installed import pinned
from undertrim.commands.usage import Usage
from undertrim.record import collection, handbook, layers
from undertrim.record.problem import printable
from undertrim.words import message, say, spoken

_FILES = resources.inside("commands", "collection")
_HIDDEN = "dot_"
"""Begins what begins with a full stop where it is put: files that hide would be forgotten here."""


def configure(parser: argparse.ArgumentParser) -> None:
    """Add the arguments."""
    parser.add_argument(
        "folder", nargs="?", type=Path, default=Path(), metavar="DIR", help="the folder (default: here)"
    )
    parser.add_argument("--name", help="what the site is called (default: the name of the folder)")
    parser.add_argument("--address", metavar="URL", help="where the site will be, as sheets print it")
    parser.add_argument("--repository", metavar="URL", help="where the records will be kept")
    parser.add_argument(
        "--on",
        action="append",
        default=[],
        metavar="COLLECTION",
        help="a shared collection that this one lies on: its folder, or package:NAME; may be repeated",
    )


def run(options: argparse.Namespace) -> int:
    """Write what is not there."""
    folder: Path = options.folder.absolute()
    if folder.exists() and not folder.is_dir():
        raise Usage(message("init/no-folder", path=printable(str(options.folder))))
    words = _words(options, folder)
    kept = made = 0
    for place, content in _contents(words, is_layer=bool(options.on)):
        there = not _put(folder / place, content)
        kept, made = kept + there, made + (not there)
        if there:
            print(say(message("init/kept", path=place)))
    print(say(message("init/made", count=made, folder=printable(str(options.folder)))))
    if made and not kept:
        print(say(message("init/next")))
    return 0


def _words(options: argparse.Namespace, folder: Path) -> dict[str, str]:
    """What is put in the place of the marks in the files. Raises Usage for what `undertrim.toml` could not hold."""
    settings = {
        "name": options.name or folder.name,
        "address": options.address,
        "repository": options.repository,
    }
    lines = {key: _setting(key, value) for key, value in settings.items()}
    return {
        "@ADDRESS@": lines["address"],
        "@REPOSITORY@": lines["repository"],
        "@COLLECTIONS@": _collections(options.on, folder),
        '"@NAME@"': lines["name"].removeprefix("name = ").rstrip(),
        "@NAME@": settings["name"],
        "@REQUIREMENTS@": "\n".join(pinned()),
    }


def _setting(key: str, value: str | None) -> str:
    """A line of `undertrim.toml`; one that waits to be filled in where nothing was said."""
    if value is None:
        return f'# {key} = "https://..." '
    line = f"{key} = {collection.quoted_text(value)} "
    collection.proved(key, value)
    return line


def _collections(named: list[str], folder: Path) -> str:
    """The line that names the shared collections, or one that waits to be filled in. Raises BadSettings where one is not there."""
    if not named:
        return '# collections = ["../shared"] '
    found = (layers.named_on(folder, one, Path.cwd()) for one in named)
    return f"collections = [{', '.join(map(collection.quoted_text, found))}] "


def _contents(words: dict[str, str], *, is_layer: bool) -> Iterator[tuple[str, bytes]]:
    """Every file by its place, with what is to stand in it. A layer on shared collections needs no example."""
    for start in (_FILES / "all", _language()):
        for path in sorted(one for one in start.rglob("*") if one.is_file()):
            if is_layer and path.relative_to(start).parts[0] == "records":
                continue
            text = path.read_text(encoding="utf-8")
            for mark, word in words.items():
                text = text.replace(mark, word)
            yield _place(path.relative_to(start)), text.encode()
    book = resources.top("records/handbook")
    for item in handbook.found(book):
        yield f"records/handbook/{item.place}", item.path.read_bytes()
    for path in sorted((resources.top("schema") / "editor").glob("*.json")):
        yield f"schema/editor/{path.name}", path.read_bytes()


def _language() -> Path:
    """The texts in the reader's language, or in English where nobody wrote them."""
    own = _FILES / spoken().tag
    return own if own.is_dir() else _FILES / "en"


def _place(path: Path) -> str:
    """Where a file goes: what hides there has another name here."""
    return PurePosixPath(
        *(f".{part.removeprefix(_HIDDEN)}" if part.startswith(_HIDDEN) else part for part in path.parts)
    ).as_posix()


def _put(path: Path, content: bytes) -> bool:
    """Write a file unless there is one; a link is one, wherever it leads."""
    path.parent.mkdir(parents=True, exist_ok=True)
    try:
        with path.open("xb") as file:
            file.write(content)
    except FileExistsError:
        return False
    return True
