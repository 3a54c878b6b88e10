"""A hint that is a command works when it is typed where the message is read."""

import re
import shlex
from pathlib import Path

import pytest
from rule_pages import BASE

from undertrim import cli

COMMANDS = [
    ("plan", "otter-2014-2018", "--job", "dash"),
    ("fit", "otter-2014-2018"),
    ("shop", "otter-2014-2018", "--job", "dash", "--gear", "x"),
    ("mirror", "otter-2014-2018", "--drive-side", "right"),
    ("meter", "otter-2014-2018", "main/1", "--reading", "12 V key off"),
    ("template", "otter-2014-2018", "dash"),
    ("coverage",),
]


@pytest.mark.parametrize("arguments", COMMANDS, ids=[words[0] for words in COMMANDS])
@pytest.mark.parametrize("folder", ["shop", "my shop's records"])
def test_how_to_see_the_details_of_a_workspace_elsewhere(
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
    capsys: pytest.CaptureFixture[str],
    folder: str,
    arguments: tuple[str, ...],
) -> None:
    record = tmp_path / folder / "records" / "vehicles" / "brindleway" / "otter-2014-2018.yaml"
    record.parent.mkdir(parents=True)
    record.write_text(BASE.replace("vehicle:", "vehicel:"))
    monkeypatch.chdir(tmp_path)
    assert cli.main([*arguments, "--in", folder]) == 1
    said = capsys.readouterr().err
    found = re.search(r"for the details run: undertrim (.*)$", said, re.MULTILINE)
    assert found, said
    assert cli.main(shlex.split(found[1])) == 1
    assert "'vehicel' is not a field" in capsys.readouterr().out
    monkeypatch.chdir(record.parent)
    assert cli.main([*arguments, "--in", str(tmp_path / folder)]) == 1
    assert "run 'undertrim check' for the details" in capsys.readouterr().err
