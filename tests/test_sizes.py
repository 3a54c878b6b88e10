"""No module of program or tests is over 250 lines and no function over 25 without a reason beside it, which begins `# Long because`."""

import ast
from collections.abc import Iterator
from pathlib import Path

ROOT = Path(__file__).parent.parent
MODULES = sorted(path for room in ("generator", "tests") for path in (ROOT / room).rglob("*.py"))
SCRIPTS = sorted((ROOT / "site_overrides" / "assets" / "undertrim").glob("*.js"))
REASON = "# Long because "
MOST_LINES, MOST_IN_A_FUNCTION = 250, 25


def long_functions(path: Path) -> Iterator[str]:
    """Functions whose body is too long, with no reason above its first statement."""
    text = path.read_text(encoding="utf-8")
    lines = text.splitlines()
    for item in ast.walk(ast.parse(text)):
        if isinstance(item, ast.FunctionDef | ast.AsyncFunctionDef) and item.end_lineno:
            first = next((inner for inner in item.body if not _is_docstring(inner)), item.body[0])
            above = lines[item.lineno - 1 : first.lineno - 1]
            if item.end_lineno - first.lineno >= MOST_IN_A_FUNCTION and not any(REASON in line for line in above):
                yield item.name


def _is_docstring(item: ast.stmt) -> bool:
    return isinstance(item, ast.Expr) and isinstance(item.value, ast.Constant)


def _name(path: Path) -> str:
    """From the root: modules of tests and program may be called alike."""
    return path.relative_to(ROOT).as_posix()


def test_modules_are_short_or_say_why_not() -> None:
    texts = {path: path.read_text(encoding="utf-8") for path in (*MODULES, *SCRIPTS)}
    assert len(texts) > 800
    long = {_name(path): text for path, text in texts.items() if len(text.splitlines()) > MOST_LINES}
    assert [name for name, text in long.items() if f"\n{REASON}" not in text] == []


def test_functions_are_short_or_say_why_not() -> None:
    found = {_name(path): list(long_functions(path)) for path in MODULES}
    assert {name: functions for name, functions in found.items() if functions} == {}


def test_a_long_function_is_seen(tmp_path: Path) -> None:
    body = "".join(f"    x{number} = {number}\n" for number in range(MOST_IN_A_FUNCTION + 1))
    path = tmp_path / "long.py"
    path.write_text(f"def long():\n    {REASON}of this\n{body}\n\ndef longer():\n{body}", encoding="utf-8")
    assert list(long_functions(path)) == ["longer"]
