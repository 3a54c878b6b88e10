"""A record with junk put in anywhere, and what is asked of the answer to it whatever the junk is."""

import json
from collections.abc import Sequence
from pathlib import Path
from typing import Any

from hypothesis import strategies as st

from undertrim.check import one_file
from undertrim.record.problem import Position
from undertrim.record.source import read_text
from undertrim.record.store import entry


@st.composite
def spoilt(draw: st.DrawFn, whole: Any, junk: Sequence[Any]) -> str:
    """The data of a record as JSON, which is YAML too, with one to three pieces of junk somewhere in it."""
    data = json.loads(json.dumps(whole))
    for _ in range(draw(st.integers(1, 3))):
        around: Any = data
        while isinstance(around, dict | list) and around:
            key = draw(st.sampled_from(list(around) if isinstance(around, dict) else list(range(len(around)))))
            if not isinstance(around[key], dict | list) or not around[key] or not draw(st.integers(0, 3)):
                around[key] = json.loads(json.dumps(draw(st.sampled_from(junk))))
                break
            around = around[key]
    return json.dumps(data)


def answered_with_sentences(text: str, path: Path) -> None:
    """Nothing of ours ends, each problem stands in the file, and none is told twice."""
    found = one_file.look(entry(path, "vehicle", read_text(text, path))).problems
    assert "crash" not in {problem.rule for problem in found}
    assert all(problem.position >= Position(1, 1) for problem in found)
    assert len(set(found)) == len(found)
