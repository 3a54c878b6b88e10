"""The help of the command line, argparse's own words and the pages of the rules in a made-up language: none of them is left in English."""

import argparse
import ast
import re
from collections.abc import Iterator

import marked
import pytest

from undertrim import cli
from undertrim.check.register import RECORD_RULES
from undertrim.commands import COMMANDS
from undertrim.commands import help as help_of_commands
from undertrim.publish.web import rule_pages
from undertrim.words import docs, say, speaking
from undertrim.words.catalogue import english
from undertrim.words.catalogue import texts as texts_of
from undertrim.words.docs import ARGUMENTS

TYPED = re.compile(r"--?[a-z][a-z-]*|\{[^}]*\}|\b(?:undertrim|" + "|".join(COMMANDS) + r")\b")
"""What is typed as it stands in every language: options, choices, verbs."""


def helps(parser: argparse.ArgumentParser) -> Iterator[argparse.ArgumentParser]:
    yield parser
    for action in parser._actions:
        if isinstance(action, argparse._SubParsersAction):
            for inner in action.choices.values():
                yield from helps(inner)


def test_help_is_told_in_the_readers_language() -> None:
    with speaking(marked.language()):
        every = list(helps(cli.parser()))
        assert len(every) > len(COMMANDS)
        for parser in every:
            verbs = re.compile(rf"\b(?:{'|'.join(re.escape(word) for word in _verbs(parser))})\b")
            left = re.findall("[A-Za-z]{2,}", verbs.sub("", TYPED.sub("", parser.format_help())))
            assert left == [], parser.prog


def _verbs(parser: argparse.ArgumentParser) -> list[str]:
    inner = (action for action in parser._actions if isinstance(action, argparse._SubParsersAction))
    return [*parser.prog.split(), *(name for action in inner for name in action.choices)]


@pytest.mark.parametrize(
    "words", [["check", "--format", "xml"], ["plan"], ["chekc"], ["serve", "--port", "x"], ["build", "--out"]]
)
def test_what_argparse_refuses_is_told_so_too(words: list[str], capsys: pytest.CaptureFixture[str]) -> None:
    with speaking(marked.language()), pytest.raises(SystemExit):
        cli.parser().parse_args(words)
    *_, last = capsys.readouterr().err.splitlines()
    assert re.findall("[A-Za-z]{2,}", TYPED.sub("", re.sub("'[^']*'", "", last))) in ([], ["json", "text", "github"]), (
        last
    )


def test_in_english_help_is_what_stands_in_the_source() -> None:
    for name, command in COMMANDS.items():
        assert docs.page(f"commands/{name}", command.__doc__) == (command.__doc__ or "").strip()
    assert "usage: undertrim" in cli.parser().format_help()


def test_the_catalogue_has_what_argparse_may_say_to_us() -> None:
    """Read from the argparse at hand; left out is what it tells programmers, and what no parser of ours uses."""
    asked = set(_asked(ast.parse(_source(argparse))))
    known = {text for entry in english("argparse").values() for text in texts_of(entry).values()}
    assert {text for text in asked if isinstance(text, tuple)} - known == {
        ("conflicting option string: %s", "conflicting option strings: %s")
    }
    used = {
        "usage:",
        "options",
        "positional arguments",
        "show this help message and exit",
        "unrecognized arguments: %s",
    }
    assert used <= asked & known
    assert known - asked <= {
        "%(heading)s:",
        "unexpected option string: %s",
    }


def _source(module: object) -> str:
    from inspect import getsource

    return getsource(module)  # type: ignore[arg-type]


def _asked(tree: ast.AST) -> Iterator[str | tuple[str, ...]]:
    for node in ast.walk(tree):
        if isinstance(node, ast.Call) and isinstance(node.func, ast.Name) and node.func.id in ("_", "ngettext"):
            given = [
                one.value.rstrip() for one in node.args if isinstance(one, ast.Constant) and isinstance(one.value, str)
            ]
            if given:
                yield given[0] if len(given) == 1 else tuple(given)


def test_every_argument_of_every_command_reaches_the_translators() -> None:
    known = {text for context, text in marked.language().texts if context == ARGUMENTS}
    for parser in helps(cli.parser()):
        for action in parser._actions:
            if action.help and not isinstance(action, argparse._HelpAction | argparse._VersionAction):
                assert action.help in known
            if isinstance(action.metavar, str):
                assert action.metavar in known


def test_pages_of_rules_and_fields_are_in_the_readers_language() -> None:
    with speaking(marked.language()):
        pages = rule_pages.pages()
    for name in RECORD_RULES:
        heading, _, body = pages[f"rules/{name}"].partition("\n")
        assert heading == f"# {name}"
        assert re.findall("[A-Za-z]{2,}", body) == []
    listed = re.sub(r"\[[^]]*\]\([^)]*\)", "", pages["rules/index"])
    assert re.findall("[A-Za-z]{2,}", listed) == []
    titles = re.findall(r"^#.*$", pages["reference/index"], re.MULTILINE)
    assert len(titles) > 50
    assert re.findall("[A-Za-z]{2,}", "".join(titles)) == []


def test_without_another_language_nothing_is_gone_over(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(help_of_commands, "_tell", lambda _: pytest.fail("English needs no words"))
    assert say("x") == "x"
    cli.parser()
