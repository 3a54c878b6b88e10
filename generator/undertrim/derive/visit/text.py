"""The one text of a visit: the same as an address in the site, as a word on the command line, and in the code on a sheet.

    finch-2014-2018?jobs=dash,front-door@left&radio=map&dash=skerrowe-broadside&dash.kit=sandmartin-dk-f14

Before the `?` stands the vehicle, behind it words with their values. `jobs` has the openings worked at, each at every side or at one; a
variant has the choice; an opening has the gear that goes in, and with a kind of gear behind a full stop what stands between, `none` for
nothing. Where a variant and an opening share a name, or one is called `jobs`, `.choice` and `.gear` tell them apart. Letters outside the
unreserved ones are percent-encoded (RFC 3986, sections 2.1 and 3.4); a plus is a plus.
"""

from collections.abc import Iterator
from urllib.parse import quote, unquote

from undertrim.derive import cars
from undertrim.derive.visit.asked import JOBS, NONE, Asked, agreed
from undertrim.derive.visit.visit import Visit
from undertrim.words import Message, message

CHOICE, GEAR = "choice", "gear"
"""The words behind a full stop that say what a name is."""

_PLAIN = "@,/"
"""What RFC 3986 allows in a query beside the unreserved letters, and a visit uses for itself."""


def parse(text: str) -> Asked:
    """What a text asks for; what in it is no word of a visit is said."""
    name, _, rest = text.partition("?")
    worked: list[str] = []
    named: list[tuple[str, str]] = []
    said: list[Message] = []
    for piece in filter(None, rest.split("&")):
        word, sign, value = piece.partition("=")
        try:
            word, values = _plain(word), [_plain(one) for one in value.split(",")]
        except UnicodeDecodeError:
            said.append(message("visit/no-letters", word=piece))
            continue
        if not sign:
            said.append(message("visit/no-value", word=word))
        elif word == JOBS:
            worked.extend(values)
        else:
            named.append((word, ",".join(values)))
    once, twice = agreed(named)
    return Asked(_plain(name, "replace"), tuple(dict.fromkeys(worked)), once, said=(*said, *twice))


def _plain(text: str, errors: str = "strict") -> str:
    return unquote(text, errors=errors)


def write(visit: Visit) -> str:
    """The text of a visit: what is the same is written the same, whatever order it was asked in."""
    said = "&".join(f"{quote(word, safe=_PLAIN)}={value}" for word, value in _words(visit) if value)
    return f"{quote(visit.called, safe=_PLAIN)}?{said}" if said else quote(visit.called, safe=_PLAIN)


def words(visit: Visit) -> str:
    """What stands behind the `?`; empty where nothing is said of the vehicle."""
    return write(visit).partition("?")[2]


def _words(visit: Visit) -> Iterator[tuple[str, str]]:
    """Jobs, variants, gear and what stands between, each in the order of the record; values are encoded."""
    known, openings = cars.variants(visit.record), visit.record.openings
    shared = {JOBS, *(known.keys() & openings.keys())}
    yield JOBS, _listed(jobs(visit))
    for name in known:
        if name in visit.answers:
            yield f"{name}.{CHOICE}" if name in shared else name, _listed([visit.answers[name]])
    for name in openings:
        if name in visit.gear:
            yield f"{name}.{GEAR}" if name in shared else name, _listed([visit.gear[name].id])
        for kind, held in sorted(visit.between.get(name, {}).items()):
            yield f"{name}.{kind}", _listed(sorted(item.id for item in held) or [NONE])


def _listed(values: list[str]) -> str:
    return ",".join(quote(value, safe="@/") for value in values)


def jobs(visit: Visit) -> list[str]:
    """The openings worked at: by name where that is at every side, else each side."""
    found: list[str] = []
    for opening in visit.openings:
        at = [target for target in visit.targets if target.opening == opening.id]
        found += [opening.id] if len(at) == len(opening.each or ("",)) else [str(target) for target in at]
    return found
