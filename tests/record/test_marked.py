"""Where the nodes of a text begin and end: as the parser in Python has it, whose places every change of a record was first reckoned with."""

from pathlib import Path

import pytest
from ruamel.yaml import YAML

from undertrim.record.migrations.marked import Node, ScalarNode, Text, in_brackets

RECORDS = sorted((Path(__file__).parents[2] / "records").rglob("*.yaml"))
ODD = """\
# Größe ± 2 mm, 日本語, and a letter beyond the plane of the others: 𝛥
plain: two
  lines of it   # beside
"quoted é": "with \\u00e9 and \\
  a fold"
block: |
  one

  # no comment
  two

folded: >-
  kept
   as it is

empty:
list: [a, {b: c, d: 'it''s'}, ]
"""


def texts() -> list[str]:
    shipped = [
        path.read_text(encoding="utf-8")
        for path in RECORDS
        if "vehicles" in path.parts or path.parent.name == "receivers"
    ]
    return [*shipped, ODD, ODD.replace("\n", "\r\n"), "\ufeff" + ODD, ODD + "last: |\n  text\n\n\n# foot\n"]


def places(text: Text, node: Node) -> list[object]:
    own = type(node), node.start_mark.index, node.start_mark.line, node.start_mark.column, text.end(node)
    if isinstance(node, ScalarNode) and not (node.value or node.style):
        return []  # nothing was typed: one has it behind the key, the other where the next begins
    if isinstance(node, ScalarNode):
        return [(*own, node.value, node.style or None)]
    parts = [part for item in node.value for part in (item if isinstance(item, tuple) else (item,))]
    return [(*own, in_brackets(node)), *(place for part in parts for place in places(text, part))]


@pytest.mark.parametrize("text", texts())
def test_nodes_stand_where_the_slow_parser_has_them(text: str) -> None:
    slow = Text(text, YAML(typ="safe", pure=True).compose(text))
    fast = Text.of(text)
    assert places(fast, fast.root) == places(slow, slow.root)
    assert list(fast.comment_places()) == list(slow.comment_places())
