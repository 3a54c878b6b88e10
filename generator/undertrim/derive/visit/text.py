"""The one text of a visit: the same as an address in the site, as a word on the command line, and in the code on a sheet.

    finch-2014-2018?jobs=dash,front-door@left&radio=map&dash=skerrowe-broadside&dash.kit=sandmartin-dk-f14

Before the `?` stands the vehicle, behind it words with their values. `jobs` has the openings worked at and what is reached for, each at every side or at one; a
variant has the choice; an opening has the gear that goes in, and with a kind of gear behind a full stop what stands between, `none` for
nothing. An opening that is written once for several kinds of car goes by the id it is written under, for those of them that are worked at.
Where a variant and an opening share a name, or one is called `jobs`, `.choice` and `.gear` tell them apart. Letters outside the
unreserved ones are percent-encoded (RFC 3986, sections 2.1 and 3.4); a plus is a plus.
"""

from collections.abc import Iterator
from urllib.parse import quote, unquote

from undertrim.derive import cars
from undertrim.derive.jobs import wanted
from undertrim.derive.procedure.planning import Target
from undertrim.derive.visit.asked import JOBS, NONE, Asked, agreed
from undertrim.derive.visit.visit import Visit
from undertrim.record.model import all_names
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
    known = cars.variants(visit.record)
    shared = {JOBS, *(known.keys() & all_names(visit.record.openings.values()))}
    yield JOBS, _listed(jobs(visit))
    for name in known:
        if name in visit.answers:
            yield f"{name}.{CHOICE}" if name in shared else name, _listed([visit.answers[name]])
    for name, role, value in _chosen(visit):
        yield name if role == GEAR and name not in shared else f"{name}.{role}", value


def _chosen(visit: Visit) -> Iterator[tuple[str, str, str]]:
    """Gear and what stands between, by opening and role: by the id it is written under where the same is chosen for all its forms that are worked at."""
    forms: dict[str, list[str]] = {}
    for form in visit.record.openings.values():
        if form in visit.openings or form.id in visit.gear or form.id in visit.between:
            forms.setdefault(form.written, []).append(form.id)
    for written, names in forms.items():
        held = {name: dict(_held(visit, name)) for name in names}
        for role in dict.fromkeys(role for each in held.values() for role in each):
            values = {name: each.get(role, "") for name, each in held.items()}
            alike = len(set(values.values())) == 1
            said = {written: next(iter(values.values()))} if alike else values
            yield from ((name, role, value) for name, value in said.items())


def _held(visit: Visit, name: str) -> Iterator[tuple[str, str]]:
    if name in visit.gear:
        yield GEAR, _listed([visit.gear[name].id])
    for kind, held in sorted(visit.between.get(name, {}).items()):
        yield kind, _listed(sorted(item.id for item in held) or [NONE])


def _listed(values: list[str]) -> str:
    return ",".join(quote(value, safe="@/") for value in values)


def jobs(visit: Visit) -> list[str]:
    """The openings worked at, by the widest names that mean no more: at every side before each side, all forms of such a car before each form."""
    left, found = set(visit.targets), []
    for name in _names(visit):
        meant = set(wanted(visit.record, [name], visit.answers))
        if meant <= left:
            found.append(name)
            left -= meant
    return found


def _names(visit: Visit) -> list[str]:
    """What may name the openings worked at, those of an opening together, wide before narrow."""
    every: list[str] = []
    named = visit.record.jobs
    worked = {target.job for target in visit.targets}
    for written in dict.fromkeys(job.written for name, job in named.items() if name in worked):
        at = [target for target in visit.targets if named[target.job].written == written]
        every += [written, *(str(Target(written, target.side)) for target in at)]
        every += [*(target.job for target in at), *map(str, at)]
    return list(dict.fromkeys(every))
