"""Finds what ships with the package: schemas, the theme overrides, the site configuration, data tables, templates.

In a checkout these stand at the top level of the repository; in an installed wheel, below `_shipped`.
"""

import hashlib
import sys
import tomllib
from functools import cache
from importlib.resources import files
from pathlib import Path
from typing import Any

_PACKAGE = Path(str(files("undertrim")))
_SHIPPED = _PACKAGE / "_shipped"
_CHECKOUT = _PACKAGE.parent.parent


def top(name: str) -> Path:
    """The path of a top-level folder or file such as `schema` or `mkdocs.yml`."""
    shipped = _SHIPPED / name
    return shipped if shipped.exists() else _CHECKOUT / name


def inside(*parts: str) -> Path:
    """The path of a file inside the package, for example `inside("publish", "web", "templates")`."""
    return _PACKAGE.joinpath(*parts)


@cache
def table(name: str) -> dict[str, Any]:
    """One data table, `record/data/<name>.toml`, or what is usual for a kind of opening (`kinds/receiver`), parsed once."""
    place = ("data", f"{name}.toml") if "/" not in name else ("model", name, "usual.toml")
    return tomllib.loads(inside("record", *place).read_text(encoding="utf-8"))


@cache
def program() -> str:
    """A digest of this program: its code, templates, data tables and schemas, and the versions of all that is installed with it."""
    digest = hashlib.sha256(" ".join((sys.version, *_installed())).encode())
    for folder in (inside(), top("schema")):
        for path in sorted(folder.rglob("*")):
            if path.suffix in _OURS and path.is_file():
                digest.update(str(path.relative_to(folder)).encode() + b"\0" + path.read_bytes())
    return digest.hexdigest()


def _installed() -> list[str]:
    """Packages with their versions, by the names of their folders: `importlib.metadata` takes longer than a check."""
    folders = [Path(folder) for folder in sys.path if folder and Path(folder).is_dir()]
    return sorted(path.name for folder in folders for path in folder.glob("*.dist-info"))


_OURS = (".py", ".toml", ".json", ".j2", ".typ", ".po", ".ttf")
