"""Puts our own pages and files into a site's folder: all of them, or those that are not there yet as they should be."""

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass
from pathlib import Path

from undertrim.publish.web.content import Body, Content
from undertrim.publish.web.shells import Shell, group
from undertrim.publish.web.site import Shells

Keys = Mapping[str, str]
"""What stands in the folder, by name: two things with the same key are the same."""


@dataclass(frozen=True, slots=True)
class Piece:
    """One file of the site: `write` puts it where it is told."""

    key: str
    write: Callable[[Path], object]


def pieces(content: Content, shells: Shells) -> dict[str, Piece]:
    """Every file that the site engine does not make, by its name in the site."""
    return dict(_pieces(content, shells))


def _pieces(content: Content, shells: Shells) -> Iterator[tuple[str, Piece]]:
    for path, body in content.shelled.items():
        yield f"{path}.html", _page(path, body, shells[group(path)])
    for name, text in content.files.items():
        yield name, Piece(text, lambda target, text=text: target.write_text(text, encoding="utf-8"))  # type: ignore[misc]
    for name, copy in content.copies.items():
        yield name, Piece(copy.key, lambda target, copy=copy: target.write_bytes(copy.content()))  # type: ignore[misc]


def _page(path: str, body: Body, shell: Shell) -> Piece:
    return Piece(
        f"{shell.mark}\0{body.title}\0{body.key}",
        lambda target: target.write_text(shell.page(path, body.title, body.html()), encoding="utf-8"),
    )


def place(out: Path, wanted: Mapping[str, Piece], present: Keys) -> Keys:
    """Write what `present` does not have, remove what is no longer wanted, and give what is there then."""
    for folder in {(out / name).parent for name in wanted.keys() - present.keys()}:
        folder.mkdir(parents=True, exist_ok=True)
    for name, piece in wanted.items():
        if present.get(name) != piece.key:
            _put(out / name, piece)
    for name in present.keys() - wanted.keys():
        (out / name).unlink(missing_ok=True)
    return {name: piece.key for name, piece in wanted.items()}


def _put(target: Path, piece: Piece) -> None:
    """Write aside first: whoever looks at the page sees the old one or the new one."""
    aside = target.with_name(f".{target.name}")
    try:
        piece.write(aside)
        aside.replace(target)
    except BaseException:
        aside.unlink(missing_ok=True)
        raise
