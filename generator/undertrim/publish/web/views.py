"""The pages of a vehicle: views of one visit to it, each small, with the scripts that it loads.

A page stands beside the others of its vehicle under a name with a full stop, `finch-2014-2018.wiring.html`: no vehicle can be called so,
since an id has no full stop (`record/identity.py`), while `finch-2014-2018-wiring` would be the phase of a model.
"""

from dataclasses import dataclass
from functools import lru_cache
from urllib.parse import quote

from undertrim.publish.web.scripts import loaded


@dataclass(frozen=True, slots=True)
class View:
    """One page of a vehicle: its name, the sentence that names it for people, and its scripts by their place in the site."""

    name: str
    title: str
    scripts: tuple[str, ...]

    def path(self, vehicle: str) -> str:
        """Where it stands for a vehicle, as an address or an id, without its ending."""
        return vehicle if self is VISIT else f"{vehicle}.{self.name}"

    def file(self, vehicle: str) -> str:
        """The link to it from a page beside it."""
        return _quoted(f"{self.path(vehicle)}.html")


@lru_cache(maxsize=64)  # nearly each step leads to what it rests on
def _quoted(path: str) -> str:
    return quote(path)


VISIT = View("visit", "vehicle-page/visit", loaded("page-visit"))
OPENINGS = View("openings", "vehicle-page/openings", loaded("page-openings"))
WIRING = View("wiring", "vehicle-page/wiring", (*loaded("page-wiring"), "assets/undertrim/meter-table.js"))
RECORD = View("record", "vehicle-page/record", loaded("page-record"))
QUESTIONS = View("questions", "asked/title", loaded("page-questions"))

VIEWS = (VISIT, OPENINGS, WIRING, RECORD, QUESTIONS)
"""The pages in the order in which they are named; the first is what the address of a vehicle leads to."""

HEADS = (VISIT, OPENINGS, WIRING, RECORD)
"""Those that the head of each page leads to: the questions are reached from where something is unknown."""

NAMED = {view.name: view for view in VIEWS}
