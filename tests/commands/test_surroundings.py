"""What the machine does to a command ends it with a sentence and exit 2, never with a traceback."""

import errno
import os
import shutil
import signal
import socket
import subprocess
import sys
import time
from pathlib import Path
from typing import Any

import pytest
from small_site import ROOT, tiny

from here import Here
from undertrim.cli import main
from undertrim.commands.ending import of_the_surroundings
from undertrim.publish.build import building
from undertrim.words import say

UNDERTRIM = [sys.executable, "-m", "undertrim.cli"]


@pytest.fixture
def root(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.setattr(building, "Crew", Here)
    return tiny(tmp_path).root


def ending(capsys: pytest.CaptureFixture[str], *words: object) -> tuple[int, str]:
    code = main([str(word) for word in words])
    said = capsys.readouterr().err
    assert "Traceback" not in said
    return code, said


@pytest.mark.parametrize("epoch", ["abc", "1e3", "9" * 30, "-99999999999999"])
def test_a_bad_day(root: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch, epoch: str) -> None:
    monkeypatch.setenv("SOURCE_DATE_EPOCH", epoch)
    code, said = ending(capsys, "build", "--no-pdf", "--in", root)
    assert code == 2
    assert "which is no day: set it to whole seconds since 1970-01-01, or leave it out" in said


SETTINGS = {
    "no custom_dir": ("  name: material\n", "  name: material\n  custom_dir: nowhere\n", "does not exist"),
    "no plugin": ("  - undertrim\n", "  - search\n", "put '- undertrim' below 'plugins:'"),
    "no YAML": ("site_name: Undertrim", "site_name: [", "cannot be used: "),
    "no name": ("site_name: Undertrim", "", "site_name"),
}


@pytest.mark.parametrize(("old", "new", "part"), SETTINGS.values(), ids=SETTINGS)
def test_settings_that_cannot_be_used(
    root: Path, capsys: pytest.CaptureFixture[str], old: str, new: str, part: str
) -> None:
    text = (ROOT / "mkdocs.yml").read_text(encoding="utf-8")
    assert old in text
    (root / "mkdocs.yml").write_text(text.replace(old, new), encoding="utf-8")
    (root / "site_overrides").mkdir()
    code, said = ending(capsys, "build", "--no-pdf", "--in", root)
    assert code == 2
    assert said.startswith(f"undertrim: '{root / 'mkdocs.yml'}' ")
    assert part in said


def test_a_pipe_in_the_handbook(root: Path, capsys: pytest.CaptureFixture[str]) -> None:
    (root / "records/handbook").mkdir()
    os.mkfifo(root / "records/handbook/page.md")
    assert main(["build", "--no-pdf", "--in", str(root)]) == 1
    assert "records/handbook/page.md:1:1: error: only plain files are read (handbook)" in "".join(capsys.readouterr())


@pytest.mark.parametrize("port", ["0", "65536", "-1", "http", "80.0", "9" * 400])
def test_a_port_that_cannot_be(root: Path, capsys: pytest.CaptureFixture[str], port: str) -> None:
    with pytest.raises(SystemExit) as ended:
        main(["serve", f"--port={port}", "--in", str(root)])
    assert ended.value.code == 2
    assert "is no port: give a number from 1 to 65535" in capsys.readouterr().err


def test_a_port_that_is_taken(root: Path, capsys: pytest.CaptureFixture[str]) -> None:
    with socket.socket() as other:
        other.bind(("127.0.0.1", 0))
        other.listen()
        code, said = ending(capsys, "serve", "--port", other.getsockname()[1], "--in", root)
    assert (code, "is taken, or not for you to use" in said) == (2, True)


@pytest.mark.parametrize(
    ("number", "part"), [(errno.ENOSPC, "the disk is full"), (errno.EROFS, "read-only"), (errno.EACCES, "you may not")]
)
def test_a_disk_that_refuses(
    root: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch, number: int, part: str
) -> None:
    def refuse(path: Path, *_: Any, **__: Any) -> None:
        raise OSError(number, os.strerror(number), str(path))

    monkeypatch.setattr(Path, "mkdir", refuse)
    code, said = ending(capsys, "build", "--no-pdf", "--in", root)
    assert (code, part in said) == (2, True)
    assert said.startswith(f"undertrim: '{root / '.site-building'}': ")


def test_what_is_missing_of_ours_is_our_fault() -> None:
    from undertrim import resources

    assert of_the_surroundings(FileNotFoundError(errno.ENOENT, "gone", str(resources.inside("x")))) is None
    said = of_the_surroundings(FileNotFoundError(errno.ENOENT, "gone", "/y"))
    assert said
    assert say(said).startswith("'/y': gone: ")


def run(*words: object, **how: Any) -> "subprocess.CompletedProcess[bytes]":
    return subprocess.run(
        [*UNDERTRIM, *map(str, words)], capture_output="stdout" not in how, check=False, cwd=ROOT, **how
    )


@pytest.mark.parametrize("encoding", ["cp1252", "ascii", "latin-1"])
def test_an_output_that_cannot_show_a_letter(tmp_path: Path, encoding: str) -> None:
    home = tiny(tmp_path).root / "records/vehicles/brindleway/otter-2014-2018.yaml"
    home.write_text(
        home.read_text(encoding="utf-8").replace("high_voltage: no", "high_voltage: '≈🔊'"), encoding="utf-8"
    )
    answers = []
    for form in ("text", "json"):
        done = run("check", home, "--format", form, env={**os.environ, "PYTHONIOENCODING": encoding})
        assert (done.returncode, done.stderr) == (1, b"")
        assert b"\\u2248\\ud83d\\udd0a" in done.stdout
        answers.append(done.stdout)
    import json

    assert "≈🔊" in json.loads(answers[1])["problems"][0]["message"]


def test_nobody_reads_to_the_end() -> None:
    shell = f"{(shutil.which('bash') and 'set -o pipefail; ') or ''}{' '.join(UNDERTRIM)} reckon --help | head -c 1 >/dev/null"
    done = subprocess.run(["bash", "-c", shell], capture_output=True, check=False, cwd=ROOT)
    assert done.stderr == b""


@pytest.mark.skipif(not Path("/dev/full").exists(), reason="Linux has such a device")
def test_an_output_that_is_full() -> None:
    with Path("/dev/full").open("wb") as full:
        done = run("check", stdout=full, stderr=subprocess.PIPE)
    assert done.returncode == 2
    assert done.stderr == b"undertrim: no space left on device: the disk is full: make room and run it again\n"


def test_a_closed_output_is_no_fault() -> None:
    done = subprocess.run(
        ["bash", "-c", f"{' '.join(UNDERTRIM)} --version >&-"], capture_output=True, check=False, cwd=ROOT
    )
    assert (done.returncode, done.stderr) == (0, b"")


CLEANING_UP = """
import os, signal, sys, time
from undertrim.commands import ending

ending.end_tidily_when_told()

class Held:
    def __del__(self):
        os.kill(os.getpid(), int(sys.argv[1]))
        time.sleep(0.1)

Held()
time.sleep(20)
print("went on")
"""


@pytest.mark.parametrize("word", [signal.SIGTERM, signal.SIGHUP])
def test_a_word_that_comes_while_an_object_is_cleaned_up_is_not_lost(word: signal.Signals) -> None:
    done = subprocess.run(
        [sys.executable, "-c", CLEANING_UP, str(int(word))], capture_output=True, timeout=30, check=False
    )
    assert (done.returncode, done.stdout, done.stderr) == (128 + word, b"", b"")


HALF_MADE = """
import os, signal, sys, time
from undertrim.commands import ending

ending.end_tidily_when_told()

class Held:
    def __init__(self):
        os.kill(os.getpid(), signal.SIGTERM)
        time.sleep(20)
        self.key = 1

    def __del__(self):
        del self.key

Held()
print("went on")
"""


def test_what_a_word_left_half_made_says_nothing() -> None:
    """So it is with what multiprocessing has for cleaning up, when the word comes just while it is made."""
    done = subprocess.run([sys.executable, "-c", HALF_MADE], capture_output=True, timeout=30, check=False)
    assert (done.returncode, done.stdout, done.stderr) == (128 + signal.SIGTERM, b"", b"")


@pytest.mark.parametrize("word", [signal.SIGTERM, signal.SIGHUP, signal.SIGINT])
def test_a_build_told_to_end_leaves_nothing(tmp_path: Path, word: signal.Signals) -> None:
    root = tiny(tmp_path).root
    going = subprocess.Popen(
        [*UNDERTRIM, "build", "--in", root],
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
        cwd=ROOT,
        preexec_fn=lambda: signal.signal(word, signal.SIG_DFL),
    )
    while not (root / ".site-building/.gitignore").exists() and going.poll() is None:
        time.sleep(0.01)
    going.send_signal(word)
    _, said = going.communicate(timeout=60)
    assert (going.returncode, said) == (128 + word, b"")
    assert not (root / ".site-building").exists()
