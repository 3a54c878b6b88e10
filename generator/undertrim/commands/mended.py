"""What `check --mend` does before it checks: writes what was meant into files that YAML would not read so, and shows each line."""

import sys
from collections.abc import Iterable, Iterator
from difflib import unified_diff
from pathlib import Path

from undertrim.record.mends import mended
from undertrim.record.problem import printable
from undertrim.record.source import Source
from undertrim.record.store import Workspace
from undertrim.record.writing import write_text
from undertrim.words import WayOut, message, say


def mend(place: Workspace, paths: Iterable[Path]) -> None:
    """Mends the records below some paths, or all, and prints the lines that differ; what cannot be written is said and left."""
    for path in place.files(list(paths)):
        source = place.load(path).source.as_typed
        text = mended(source)
        if text != source.text:
            _write(path, source, text)


def _write(path: Path, source: Source, text: str) -> None:
    try:
        write_text(path, text)
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
