"""The command line as a whole: help, version, and the four ways to end."""

import argparse
import subprocess
import sys
from collections.abc import Callable
from importlib import import_module
from typing import cast

import pytest

from undertrim import __version__, cli
from undertrim.commands import (
    COMMANDS,
    Command,
    ask,
    build,
    cable,
    check,
    copy,
    coverage,
    evidence,
    find,
    fit,
    give,
    init,
    load,
    meter,
    mirror,
    new,
    photo,
    plan,
    reckon,
    review,
    serve,
    sheet,
    shop,
    take,
    template,
    upgrade,
    verify,
    wiring,
)
from undertrim.commands import (
    format as laying_out,
)
from undertrim.commands.usage import Usage
from undertrim.record.root import NoWorkspace
from undertrim.words import message

taking_in = cast("Command", import_module("undertrim.commands.import"))  # its name is a word of Python

FITTING: tuple[Command, ...] = (
    ask,
    build,
    cable,
    check,
    copy,
    coverage,
    evidence,
    find,
    fit,
    laying_out,
    give,
    taking_in,
    init,
    load,
    meter,
    mirror,
    new,
    photo,
    plan,
    reckon,
    review,
    serve,
    sheet,
    shop,
    take,
    template,
    upgrade,
    verify,
    wiring,
)
"""Every command, so that the type checker sees what each is loaded for: it cannot see it in a name."""


def ending(capsys: pytest.CaptureFixture[str], *words: str) -> tuple[object, str]:
    with pytest.raises(SystemExit) as ended:
        cli.main(words)
    printed = capsys.readouterr()
    return ended.value.code, printed.out + printed.err


def test_version_and_help(capsys: pytest.CaptureFixture[str]) -> None:
    assert ending(capsys, "--version") == (0, f"undertrim {__version__}\n")
    code, text = ending(capsys, "--help")
    assert code == 0
    for name, command in COMMANDS.items():
        assert name in text
        assert (command.__doc__ or "").splitlines()[0].split(",")[0].split(" ")[0] in text
        assert ending(capsys, name, "--help")[0] == 0


def test_the_type_checker_has_seen_every_command() -> None:
    assert list(FITTING) == list(COMMANDS.values())


LOADED = """
import sys
from undertrim import cli
cli.main(["load", "4", "4", "--wired", "parallel"])
print(*(name for name in sys.modules if name.startswith("undertrim.")))
"""


def test_a_start_loads_no_other_command_and_no_rules() -> None:
    said = subprocess.run([sys.executable, "-c", LOADED], capture_output=True, text=True, check=True).stdout
    loaded = set(said.splitlines()[-1].split())
    assert {name for name in COMMANDS if f"undertrim.commands.{name}" in loaded} == {"load"}
    assert not {"undertrim.check.register", "undertrim.record.model", "undertrim.publish.facts.vehicle"} & loaded


def _verbs(parser: argparse.ArgumentParser) -> dict[str, argparse.ArgumentParser]:
    (verbs,) = (action.choices for action in parser._actions if isinstance(action, argparse._SubParsersAction))
    return dict(verbs)


@pytest.mark.parametrize("name", ["", *COMMANDS])
def test_what_is_said_of_a_command_is_so_whichever_are_loaded(name: str) -> None:
    whole, some = cli.parser(), cli.parser({name})
    assert some.format_help() == whole.format_help()
    assert some.format_usage() == whole.format_usage()
    assert list(_verbs(some)) == list(_verbs(whole))
    if name:
        assert _verbs(some)[name].format_help() == _verbs(whole)[name].format_help()


@pytest.mark.parametrize(
    "words", [["fit", "--help"], ["--nothing", "fit"], ["--help", "fit"], ["fit", "x", "--nothing"]]
)
def test_what_argparse_answers_is_what_it_would_with_all(capsys: pytest.CaptureFixture[str], words: list[str]) -> None:
    with pytest.raises(SystemExit) as ended:
        cli.parser().parse_args(words)
    printed = capsys.readouterr()
    assert ending(capsys, *words) == (ended.value.code, printed.out + printed.err)


@pytest.mark.parametrize("words", [[], ["chekc"], ["--nothing"]])
def test_what_is_no_command_exits_with_two(capsys: pytest.CaptureFixture[str], words: list[str]) -> None:
    code, text = ending(capsys, *words)
    assert code == 2
    assert text.startswith("usage: undertrim")


def raising(error: BaseException) -> Callable[[argparse.Namespace], int]:
    def run(_: argparse.Namespace) -> int:
        raise error

    return run


@pytest.mark.parametrize(
    ("error", "code", "last"),
    [
        (Usage("do this"), 2, "undertrim: do this"),
        (NoWorkspace(message("files/no-workspace", folder="/x")), 2, "undertrim: no 'records' folder in /x or above it"),
        (KeyboardInterrupt(), 130, ""),
        (RecursionError("deep"), 3, f"undertrim {__version__}: this is our fault. Report it with the lines above and the record."),
        (OSError("odd"), 3, f"undertrim {__version__}: this is our fault. Report it with the lines above and the record."),
        (OSError(28, "No space left on device", "/x/y"), 2, "undertrim: '/x/y': no space left on device: the disk is full: make room and run it again"),
    ],
)  # fmt: skip
def test_exit_codes(
    capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch, error: BaseException, code: int, last: str
) -> None:
    monkeypatch.setattr(COMMANDS["check"], "run", raising(error))
    assert cli.main(["check"]) == code
    printed = capsys.readouterr()
    assert printed.out == ""
    assert (printed.err.splitlines() or [""])[-1] == last
