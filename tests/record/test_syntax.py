"""What the parser of YAML stumbles over is told in our own words, with the place."""

import re
from pathlib import Path

import pytest
from ruamel.yaml import YAML
from ruamel.yaml.error import YAMLError

from undertrim.record import syntax
from undertrim.words import sentence, way_out

TAB = "a tab stands in the indent (indent with spaces)"
QUOTE = "this quote is not closed (close it on the line it began on)"
INDENT = "the indent of this line fits none of the lines above (indent it as far as the line it belongs with)"
COLON = (
    "a colon stands where no value can begin "
    "(put quotes around a text that holds ': ', or mend the indent of this line or the one above)"
)
SQUARE = "this '[' is not closed, or a comma is missing in it (close it with ']' and put a comma between two entries)"
BRACE = "this '{' is not closed, or a comma is missing in it (close it with '}' and put a comma between two entries)"
BEHIND = "text stands after the end of a value (put the whole value in quotes, or remove what follows it)"
NO_FIELD = "this line is neither a field nor a list entry (write 'field: value' or '- value'; indent it further if it goes on with the text above)"
ESCAPE = "a backslash in double quotes begins no known sign here (use single quotes, or write '\\\\')"
AFTER_END = "text stands after the end of the record (remove '...' or what follows it)"
PERCENT = "a line that begins with '%' is an instruction to the parser (remove it, or put the text in quotes)"
BAR = "after '|' or '>' nothing may stand on the line (begin the text on the next line, indented with spaces)"
SIGN = "a bracket, comma or sign stands where a value should (write the value, or put it in quotes)"


@pytest.mark.parametrize(
    ("text", "message"),
    [
        ("a:\n\t- b\n", f"2:1: {TAB}"),
        ("\ta: b", f"1:1: {TAB}"),
        ("a:\n  \tb: c\n", f"2:3: {TAB}"),
        ("a: >\n\tx\n", f"2:1: {TAB}"),
        ('a: 1\nb: "c', f"2:4: {QUOTE}"),
        ("a: 'b\nc: d\n", f"1:4: {QUOTE}"),
        ('a: "b\n---\nc"', "2:1: a quote above this line is not closed (close it)"),
        ("a: [b\nc: d\n", f"1:4: {SQUARE}"),
        ("a: [b c: d\n\n\n", f"1:4: {SQUARE}"),
        ("a: [1, 2}", f"1:4: {SQUARE}"),
        ("a:\n  b: {c: 1, d: 2\ne: 3\n", f"2:6: {BRACE}"),
        ("a: b: c", f"1:5: {COLON}"),
        ("a: 1\n  b: 2", f"2:4: {COLON}"),
        ("a:\n  b: 1\n c: 2", f"3:2: {INDENT}"),
        ("a:\n  - b\n  c: d", f"3:3: {INDENT}"),
        ("- a\nb: 1", f"2:1: {INDENT}"),
        ("a: |\n  b\n c\n", f"3:2: {INDENT}"),
        ('a: "x" y', f"1:8: {BEHIND}"),
        ("a: [b] c", f"1:8: {BEHIND}"),
        ("a: {b: c} d", f"1:11: {BEHIND}"),
        (": a", "1:1: no field name stands before the colon (write 'field: value')"),
        ("a: b\nc\n", f"2:1: {NO_FIELD}"),
        ("a:\n- b\n-c\n", f"3:1: {NO_FIELD}"),
        ("a: @x", "1:4: no value can begin with '@' (put the value in quotes)"),
        ("a: `x", "1:4: no value can begin with '`' (put the value in quotes)"),
        ("a: %x", "1:4: no value can begin with '%' (put the value in quotes)"),
        ("a: &", "1:4: '&' begins no value (put the value in quotes)"),
        ("a: *", "1:4: '*' begins no value (put the value in quotes)"),
        ("a: !<x", "1:4: '!' begins no value (put the value in quotes)"),
        (r'a: "\q"', f"1:5: {ESCAPE}"),
        (r'a: "\xzz"', f"1:7: {ESCAPE}"),
        (r'a: "\ud800"', f"1:7: {ESCAPE}"),
        ("a: b\n...\nc: d\n", f"3:1: {AFTER_END}"),
        ("{a: 1}}", f"1:7: {AFTER_END}"),
        ("%FOO\na: b", f"1:4: {PERCENT}"),
        ("a: | x", f"1:6: {BAR}"),
        ("a: [12:30]", "1:7: a colon stands inside a plain value in brackets (put the value in quotes)"),
        ("a: ]", f"1:4: {SIGN}"),
        ("a: ,", f"1:4: {SIGN}"),
        ("a: - b", "1:4: a list begins with '-' where none can (begin the list on a line of its own below its field)"),
        ("a: ?", "1:4: this '?' means something to YAML here (put the value in quotes)"),
    ],
)  # fmt: skip
def test_a_syntax_error_is_told_in_our_own_words(text: str, message: str) -> None:
    with pytest.raises(YAMLError) as stopped:
        list(YAML(typ="safe", pure=False).parse(text))
    fault = syntax.explain(stopped.value, text)
    assert f"{fault.position.line}:{fault.position.column}: {sentence(fault.said)} ({way_out(fault.said)})" == message


def test_every_known_fault_can_happen() -> None:
    """Each sentence of the table is one that the parser at hand can lead to (the texts of its errors are not ours)."""
    module = Path(__file__).read_text(encoding="utf-8")
    for fault in map(sentence, syntax._KNOWN.values()):
        assert re.sub(r"\W", "", fault) in re.sub(r"\W", "", module), fault
