"""Which of its prepared files each vehicle was last published with: they stay in the site when it fails."""

import json
from collections.abc import Mapping, Sequence
from contextlib import suppress
from pathlib import Path

from undertrim.publish.build.prepared import Prepared, cache_folder, finished
from undertrim.publish.build.stored import replace
from undertrim.record.digests import joined
from undertrim.record.store import Workspace

Keys = tuple[str, str]
"""Of what rests on the record alone, and of the file on the shelf."""


def last_good(
    workspace: Workspace, known: Mapping[str, Keys], address: str, tags: Sequence[str], *, sheets: bool
) -> Prepared | None:
    """The files a vehicle was last published with, if they are still whole and in these languages; without sheets where there were none."""
    keys = known.get(address)
    found = (finished(workspace, *keys, sheets=wanted) for wanted in dict.fromkeys((sheets, False)) if keys)
    return next((item for item in found if item and item.speaks(tags) and item.whole()), None)


def read(workspace: Workspace) -> Mapping[str, Keys]:
    """The keys of the files that were last published, by the address of their vehicle; empty where that is not known."""
    try:
        digest, _, text = _file(workspace).read_bytes().decode().partition("\n")
        found = json.loads(text) if digest == joined(text) else {}
    except (FileNotFoundError, ValueError):
        return {}
    every = found.items() if isinstance(found, dict) else ()
    return {
        address: (str(keys[0]), str(keys[1])) for address, keys in every if isinstance(keys, list) and len(keys) == 2
    }


def write(workspace: Workspace, known: Mapping[str, Keys]) -> None:
    """Remember what was published. Where that cannot be written, the site stands all the same, and only a later failure shows less."""
    if known != read(workspace):
        text = json.dumps(dict(sorted(known.items())), ensure_ascii=False)
        with suppress(OSError):
            replace(_file(workspace), f"{joined(text)}\n{text}".encode())


def _file(workspace: Workspace) -> Path:
    return cache_folder(workspace).parent / "published.json"
