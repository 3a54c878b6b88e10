"""The first line of a record, by which editors find the schema that completes and explains it.

Servers of the language YAML read it in this form: a comment with their name and where the schema is, seen from the file.
"""

import os
import re
from pathlib import Path

_LINE = re.compile(r"#\s*yaml-language-server\s*:\s*\$schema=\S+\s*")


def is_one(comment: str) -> bool:
    """Whether a comment is such a line."""
    return _LINE.fullmatch(comment) is not None


def wanted(path: Path, kind: str, root: Path) -> str:
    """The line for a record in a workspace; empty where the workspace has no such schema."""
    schema = root / "schema" / "editor" / f"{kind}.schema.json"
    if not schema.is_file():
        return ""
    return f"# yaml-language-server: $schema={Path(os.path.relpath(schema, path.parent)).as_posix()}"


def with_line(text: str, line: str) -> str:
    """The text with the line as its first, unless it has one."""
    if not line or any(is_one(each) for each in re.split("\r\n|\r|\n", text) if each.startswith("#")):
        return text
    return f"{line}{chr(13) if chr(13) + chr(10) in text else ''}\n{text}"
