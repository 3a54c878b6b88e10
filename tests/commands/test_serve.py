"""The `serve` command: where it listens, what it says of that, and the code for the phone."""

import re
from collections.abc import Callable
from pathlib import Path

import pytest
import segno

from undertrim import cli
from undertrim.commands import serve
from undertrim.publish.build.building import Builder
from undertrim.publish.web import site

_HALVES = {" ": (0, 0), "▀": (1, 0), "▄": (0, 1), "█": (1, 1)}


@pytest.fixture(autouse=True)
def listening(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> list[tuple[str, int]]:
    (tmp_path / "records").mkdir()
    monkeypatch.chdir(tmp_path)
    heard: list[tuple[str, int]] = []

    def listen(root: Path, below: list[Path], out: Path, rebuild: Callable[[], None], host: str, port: int) -> None:
        heard.append((host, port))

    monkeypatch.setattr(site, "serve", listen)
    monkeypatch.setattr(site, "port_is_free", lambda host, port: True)
    monkeypatch.setattr(serve, "_build", lambda builder: isinstance(builder, Builder))
    return heard


def test_it_listens_to_this_machine_alone(listening: list[tuple[str, int]], capsys: pytest.CaptureFixture[str]) -> None:
    assert cli.main(["serve", "--port", "8099"]) == 0
    assert listening == [("127.0.0.1", 8099)]
    assert capsys.readouterr().err == "preview at http://127.0.0.1:8099/ (stop with Ctrl-C)\n"


def test_in_the_network_it_warns_and_shows_a_code(
    listening: list[tuple[str, int]], capsys: pytest.CaptureFixture[str]
) -> None:
    assert cli.main(["serve", "--host", "192.0.2.7"]) == 0
    assert listening == [("192.0.2.7", 8080)]
    said, warned, *drawn = capsys.readouterr().err.splitlines()
    assert said == "preview at http://192.0.2.7:8080/ (stop with Ctrl-C)"
    assert (
        warned
        == "CAUTION: while it runs, everybody in the network of 192.0.2.7 can read these records, without a password"
    )
    assert _modules(drawn) == [
        list(row) for row in segno.make("http://192.0.2.7:8080/", micro=False, error="m").matrix_iter(border=4)
    ]


def _modules(drawn: list[str]) -> list[list[int]]:
    """The dark modules (1) of a code in half blocks; what is drawn is light, as terminals are dark."""
    plain = [re.sub(r"\x1b\[[0-9;]*m", "", line) for line in drawn if line]
    rows = [[1 - _HALVES[sign][half] for sign in line] for line in plain for half in (0, 1)]
    return rows[: len(rows[0])]


def test_without_an_address_it_is_the_one_in_the_network(
    listening: list[tuple[str, int]], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(serve, "_in_the_network", lambda: "192.0.2.9")
    assert cli.main(["serve", "--host"]) == 0
    assert listening == [("192.0.2.9", 8080)]
