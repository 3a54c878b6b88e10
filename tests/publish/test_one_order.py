"""What is published of a vehicle is the same in every process: Python goes through a set in another order in each."""

import os
import subprocess
import sys
from pathlib import Path

ROOT = Path(__file__).parents[2]
MADE = """
import hashlib
import sys
from datetime import date
from pathlib import Path

sys.path[:0] = [sys.argv[1] + "/tests", sys.argv[1] + "/tests/check"]
from publishing import all_pages, of, with_stock
from undertrim.publish.build import beside
from undertrim.record.store import Workspace

space = Workspace(Path(sys.argv[1]))
entry = space.load(space.records / "vehicles/tolverne/gant-1998-2003.yaml")
made = of(entry)
for what in (beside.data(made)[1], beside.found(made)[1], beside.claimable(entry.record, made)[1], all_pages(made).encode(), repr(list(with_stock(entry))).encode()):
    print(hashlib.sha256(what).hexdigest())
"""


def test_data_pages_and_shelf_are_the_same_in_every_process() -> None:
    command = [sys.executable, "-c", MADE, str(ROOT)]
    running = [subprocess.Popen(command, env={**os.environ, "PYTHONHASHSEED": seed}, stdout=subprocess.PIPE, text=True) for seed in "123"]  # fmt: skip
    printed = {one.communicate()[0] for one in running}
    assert [one.returncode for one in running] == [0, 0, 0]
    assert [len(text.splitlines()) for text in printed] == [5]
