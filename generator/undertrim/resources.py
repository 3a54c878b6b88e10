"""Finds what ships with the package: schemas, the theme overrides, the site configuration, data tables, templates.

In a checkout these stand at the top level of the repository; in an installed wheel, below `_shipped`.
"""

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
    """The path of a file inside the package, for example `inside("publish", "templates")`."""
    return _PACKAGE.joinpath(*parts)


@cache
def table(name: str) -> dict[str, Any]:
    """One data table, `record/data/<name>.toml`, parsed once."""
    return tomllib.loads(inside("record", "data", f"{name}.toml").read_text(encoding="utf-8"))
