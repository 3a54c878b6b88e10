"""What `check --mend` does before it checks: writes what was meant into files that YAML would not read so, and shows each line."""

import sys
from collections.abc import Iterator, Sequence
from difflib import unified_diff
from pathlib import Path

from undertrim.record.mends import mended
from undertrim.record.problem import printable
from undertrim.record.source import Source
from undertrim.record.store import Workspace
from undertrim.words import WayOut, message, say


def mend(place: Workspace, paths: Sequence[Path]) -> None:
    """Mends the records below some paths, or all, and prints the lines that differ; what cannot be written is said and left."""
    for path in place.files(paths) if paths else place.own_files():
        source = place.load(path).source.as_typed
        text = mended(source)
        if text != source.text:
            _write(place, path, source, text)


def _write(place: Workspace, path: Path, source: Source, text: str) -> None:
    try:
        place.write(path, text)
    except OSError as error:
        why = message("format/cannot-write", error=str(error.strerror or error))
        said = message("files/left", path=printable(str(source.path)), why=why)
        print(f"undertrim: {say(said)}\n    {say(WayOut(why))}", file=sys.stderr)
        return
    sys.stdout.writelines(changes(source, text))


def changes(source: Source, text: str) -> Iterator[str]:
    """The lines that differ, as a unified diff."""
    path = printable(str(source.path))
    for line in unified_diff(source.text.splitlines(), text.splitlines(), path, path, lineterm="", n=1):
        yield printable(line) + "\n"
