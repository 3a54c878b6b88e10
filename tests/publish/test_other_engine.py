"""The drop-in fork of the site engine makes the same site, so that it can take the engine's place on the day that is needed."""

import importlib.util
import re
import subprocess
import sys
from pathlib import Path

import pytest
from small_site import held, quick, silent, tell_of_few_rules, workspace

from undertrim.publish.build.building import build

FORK = "properdocs"
# In a process of its own: the fork answers for the engine's name from then on.
BUILT = f"""
import sys
from pathlib import Path
import {FORK}.replacement
import mkdocs
import pytest
from small_site import silent, tell_of_few_rules
from undertrim.publish.build.building import build
from undertrim.record.store import Workspace
assert mkdocs.__name__ == "{FORK}"
tell_of_few_rules(pytest.MonkeyPatch())
root = Path(sys.argv[1])
assert not build(Workspace(root), root / "by-fork", sheets=False, progress=silent).report.problems
"""
_NAMED = re.compile(rb'<meta name="generator"[^>]*>')
_MARKED = re.compile(rb'"[0-9a-f]{12}"')


def made(folder: Path) -> dict[str, bytes]:
    """The files of a site, without the line that names who made a page, and without the marks by which the keeper tells such pages apart."""
    files = held(folder)
    assert _NAMED.search(files["index.html"]), "a page names who made it"
    return {
        name: _MARKED.sub(b"", _NAMED.sub(b"", files[name]))
        if name.startswith("keeper/")
        else _NAMED.sub(b"", files[name])
        for name in files
    }


@pytest.mark.skipif(not importlib.util.find_spec(FORK), reason=f"{FORK} is not installed (it is with the extra 'dev')")
def test_the_fork_makes_the_same_site() -> None:
    with quick() as root, pytest.MonkeyPatch.context() as patch:
        tell_of_few_rules(patch)
        assert not build(workspace(root), root / "by-engine", sheets=False, progress=silent).report.problems
        paths = [str(Path(__file__).parents[1] / name) for name in ("", "check", "publish")]
        code = f"import sys; sys.path += {paths}\n{BUILT}"
        done = subprocess.run([sys.executable, "-c", code, str(root)], capture_output=True, text=True, check=False)
        assert done.returncode == 0, done.stderr
        ours, theirs = made(root / "by-engine"), made(root / "by-fork")
        assert len(ours) > 40
        assert ours.keys() == theirs.keys()
        assert [name for name, content in ours.items() if theirs[name] != content] == []
