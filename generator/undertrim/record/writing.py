"""Writes a record file so that no reader ever finds half of it."""

import codecs
import os
import shutil
import tempfile
from pathlib import Path


def write_text(path: Path, text: str) -> None:
    """Put `text` (UTF-8, line ends as given) in the place of an existing file in one step; its mode and byte order mark stay.

    A link keeps pointing to the file it means. Raises OSError, and then leaves the file as it was.
    """
    target = path.resolve(strict=True)
    mark = codecs.BOM_UTF8 if target.read_bytes().startswith(codecs.BOM_UTF8) else b""
    number, name = tempfile.mkstemp(prefix=f".{target.stem}-", suffix=".tmp", dir=target.parent)
    aside = Path(name)
    try:
        with os.fdopen(number, "wb") as file:
            file.write(mark + text.encode("utf-8"))
            file.flush()
            os.fsync(file.fileno())
        shutil.copymode(target, aside)
        aside.replace(target)
    except BaseException:
        aside.unlink(missing_ok=True)
        raise
