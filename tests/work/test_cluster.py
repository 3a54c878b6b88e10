"""A Dask cluster in the place of this machine's processes: the same site, and an answer for every item."""

import json
import os
import subprocess
import sys
import time
from collections.abc import Iterator
from contextlib import ExitStack, contextmanager
from pathlib import Path
from typing import Any

import pytest
from distributed import Client
from small_site import held, quick, silent, tell_of_few_rules, tiny, workspace

from here import Here
from odd_work import DEADLY, FULL, SLOW, WRONG, odd, who
from undertrim import cli, resources
from undertrim.publish.build import day
from undertrim.publish.build.building import build
from undertrim.words import say
from undertrim.work.cluster import Cluster, NoCluster
from undertrim.work.crew import Failed, Fault
from undertrim.work.limits import Limits

SMALL = Limits(seconds=1, megabytes=400)


@pytest.fixture(scope="module")
def keeper(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Any]:
    """A client of two workers, each a process of its own; a piece of work that kills one is not given to the other."""
    told = tmp_path_factory.mktemp("cluster") / "scheduler.json"
    common = ("--scheduler-file", str(told), "--no-dashboard")
    with ExitStack() as running:
        running.enter_context(_dask("scheduler", *common, "--port", "0", "--host", "127.0.0.1"))
        for name in ("one", "two"):
            place = ("--local-directory", str(told.parent), "--name", name)
            running.enter_context(_dask("worker", *common, "--nthreads", "1", *place))
        while not told.is_file() or not told.read_text(encoding="utf-8"):
            time.sleep(0.05)
        found: str = json.loads(told.read_text(encoding="utf-8"))["address"]
        connect: Any = Client  # it has no types
        with connect(found, set_as_default=False) as client:
            yield client


@pytest.fixture
def address(keeper: Any) -> str:
    """Where both workers are at work: one that a test before this killed is begun anew, which takes its time on a busy machine."""
    keeper.wait_for_workers(2, timeout=60)
    return str(keeper.scheduler.address)


@contextmanager
def _dask(part: str, *options: str) -> Iterator[None]:
    """A scheduler or a worker, for as long as it is wanted."""
    command = [sys.executable, "-m", f"distributed.cli.dask_{part}", *options]
    environment = os.environ | {
        "PYTHONPATH": str(Path(__file__).parents[1]),
        "DASK_DISTRIBUTED__SCHEDULER__ALLOWED_FAILURES": "0",
    }
    with subprocess.Popen(command, env=environment, stderr=subprocess.DEVNULL, stdout=subprocess.DEVNULL) as process:
        try:
            yield
        finally:
            process.terminate()


def test_the_site_is_the_same_byte_for_byte(
    address: str, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    tell_of_few_rules(monkeypatch)
    with quick() as here, quick() as there:
        assert not build(workspace(here, 2), here / "site", sheets=True, progress=silent, crew=Here()).failed
        workspace(there, 2)
        monkeypatch.chdir(there.parent)
        assert cli.main(["build", "--workers", address, "--in", there.name, "--out", str(there / "site")]) == 0
        own, others = held(here / "site"), held(there / "site")
        assert own.keys() == others.keys()
        assert [name for name in own if own[name] != others[name]] == []
        assert any(name.endswith(".pdf") for name in own)
    capsys.readouterr()


def test_it_was_the_cluster_that_did_it(address: str, tmp_path: Path) -> None:
    cluster = Cluster(address, tmp_path, {day.EPOCH: "86400"})
    try:
        made: list[Any] = list(cluster.each(who, range(6)))
    finally:
        cluster.close()
    assert {day for _, day in made} == {"1970-01-02"}
    workers = {process for process, _ in made}
    assert len(workers) == 2
    assert os.getpid() not in workers


def test_every_item_gets_its_answer(address: str, tmp_path: Path) -> None:
    cluster = Cluster(address, tmp_path, {}, SMALL)
    try:
        slow, wrong, fine = cluster.each(odd, [SLOW, WRONG, 2])
        [deadly] = cluster.each(odd, [DEADLY])
        with pytest.raises(OSError, match="No space"):
            list(cluster.each(odd, [2, FULL]))
        assert [fine, *cluster.each(odd, [2, 4])] == [4, 4, 8]
    finally:
        cluster.close()
    faults = [one.fault for one in (slow, wrong, deadly) if isinstance(one, Failed)]
    assert faults == [Fault.TIME, Fault.ERROR, Fault.ENDED]


def test_a_cluster_is_waited_for_as_long_as_somebody_works_there(
    address: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    cluster = Cluster(address, tmp_path, {}, SMALL)
    client = cluster._client
    monkeypatch.setattr("undertrim.work.cluster.PATIENCE", 0.2)  # once it is reached, which may take longer
    try:
        [late] = cluster.each(odd, [SLOW])  # five times as long as the patience
        assert isinstance(late, Failed)
        monkeypatch.setattr(client, "scheduler_info", lambda **_: {"workers": {}})
        with pytest.raises(NoCluster) as gone:
            list(cluster.each(odd, [SLOW]))
    finally:
        cluster.close()
    assert "nobody works" in say(gone.value.said)


def test_workers_that_cannot_do_it_are_refused(address: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    with pytest.raises(NoCluster) as unseen:
        Cluster(address, tmp_path / "elsewhere", {})
    assert "does not see" in say(unseen.value.said)
    monkeypatch.setattr(resources, "program", lambda: "another")
    with pytest.raises(NoCluster) as other:
        Cluster(address, tmp_path, {})
    assert "another version" in say(other.value.said)


@pytest.mark.parametrize("address", ["tcp://127.0.0.1:1", "nonsense", "tcp://127.0.0.1", "http://"])
def test_no_cluster_is_a_sentence(
    address: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.setattr("undertrim.work.cluster.PATIENCE", 1)
    tiny(tmp_path)
    assert cli.main(["build", "--workers", address, "--in", str(tmp_path)]) == 2
    assert "no cluster answers at" in capsys.readouterr().err
