"""The command line as a whole: help, version, and the four ways to end."""

import argparse
from collections.abc import Callable

import pytest

from undertrim import __version__, cli
from undertrim.commands import COMMANDS, Usage
from undertrim.record.store import NoWorkspace
from undertrim.words import message


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
