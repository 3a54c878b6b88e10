"""What the facts of a collection rest on, as data: shares, people, what rests on one word, what is old, and each vehicle's shares."""

from collections.abc import Mapping, Sequence
from dataclasses import asdict, dataclass, replace
from datetime import date
from typing import Any

from undertrim.derive.evidence import account
from undertrim.derive.evidence.account import Account, Look, Person, Shares, Told
from undertrim.derive.evidence.age import OLD_YEARS
from undertrim.derive.evidence.over_time import Month
from undertrim.words import Message, message
from undertrim.words.values import frozen, thawed

SHOWN = ("known", "measured", "verified", "one", "told")
"""The shares, in the order they are shown."""
PRESSING = ("known", "verified")
"""Those by which vehicles stand on a page: what is least known first."""
ON_A_PAGE = 100
"""The longest list on the page of the site; the command tells all. A default of ours."""


@dataclass(frozen=True, slots=True)
class Share:
    """One share: its key and name, how many facts of all, in whole per cent and in words."""

    key: str
    name: Message
    part: int
    whole: int
    percent: int
    words: Message


@dataclass(frozen=True, slots=True)
class VehicleShares:
    """A vehicle with its shares."""

    vehicle: str
    shares: tuple[Share, ...]


@dataclass(frozen=True, slots=True)
class OldLook:
    """A piece of old evidence that still holds up facts."""

    vehicle: str
    id: str
    by: str
    on: str
    facts: int
    words: Message


@dataclass(frozen=True, slots=True)
class OneWord:
    """Facts of a vehicle that rest on what somebody told alone."""

    vehicle: str
    facts: Sequence[Told]


@dataclass(frozen=True, slots=True)
class ShownMonth:
    """A month with the number of vehicles that had a record, and their shares."""

    month: str
    vehicles: int
    shares: tuple[Share, ...]


@dataclass(frozen=True, slots=True)
class Report:
    """All there is to say of a collection's evidence; `of` says of how many vehicles, `none_old` what is said where nothing is old; `months` only where they were asked for; `left_out` says what a page leaves out."""

    of: Message
    shares: tuple[Share, ...]
    people: Sequence[Person]
    one_word: Sequence[OneWord]
    old: Sequence[OldLook]
    none_old: Message
    vehicles: Sequence[VehicleShares]
    months: Sequence[ShownMonth] = ()
    left_out: Message | str = ""


def report(accounts: Sequence[Account], today: date, months: Sequence[Month] = ()) -> Report:
    """What some records rest on, on a day, and how that went."""
    return Report(
        of=message("account/of", count=len(accounts)),
        shares=shares(account.total(accounts)),
        people=account.people(accounts),
        one_word=[OneWord(one.vehicle, one.told) for one in accounts if one.told],
        old=[_old(vehicle, look) for vehicle, look in account.old(accounts, _old_before(today))],
        none_old=message("account/none-old", years=OLD_YEARS),
        vehicles=[VehicleShares(one.vehicle, shares(one.shares)) for one in accounts],
        months=[ShownMonth(one.month, one.vehicles, shares(one.shares)) for one in months],
    )


def for_a_page(whole: Report, most: int = ON_A_PAGE) -> Report:
    """What a page shows of it: of each list the most pressing, since a collection has thousands of vehicles."""
    pressing = sorted(whole.vehicles, key=lambda one: [share.percent for share in one.shares if share.key in PRESSING])
    long = max(map(len, (whole.one_word, whole.old, pressing))) > most
    return replace(
        whole,
        one_word=whole.one_word[:most],
        old=whole.old[:most],
        vehicles=pressing[:most],
        left_out=message("account/left-out", count=most) if long else "",
    )


def shares(found: Shares) -> tuple[Share, ...]:
    """Each share with its name; of no facts it is nothing."""
    return tuple(_share(key, getattr(found, key), found.facts) for key in SHOWN)


def plain(one: Account) -> dict[str, Any]:
    """An account as plain data, unsaid: it serves every language."""
    told = [[fact.about, frozen(fact.name)] for fact in one.told]
    return {**asdict(replace(one, told=())), "told": told}


def restored(kept: Mapping[str, Any]) -> Account:
    """An account that was kept as plain data."""
    looks = [Look(**look) for look in kept["looks"]]
    told = [Told(about, thawed(name)) for about, name in kept["told"]]
    return Account(kept["vehicle"], Shares(**kept["shares"]), looks, told, kept["corrected"])


def _share(key: str, part: int, whole: int) -> Share:
    percent = part * 100 // whole if whole else 0  # rounded down: 99.9 % verified is not all
    words = message("account/share", part=part, whole=whole, percent=percent)
    return Share(key, message(f"account/{key}"), part, whole, percent, words)


def _old(vehicle: str, look: Look) -> OldLook:
    words = message("account/old-line", vehicle=vehicle, id=look.id, on=look.on, by=look.by, count=look.facts)
    return OldLook(vehicle, look.id, look.by, look.on, look.facts, words)


def _old_before(today: date) -> str:
    """The first day that is not old; of the 29th of February the 28th, where there is none."""
    day = min(today.day, 28) if today.month == 2 else today.day
    return today.replace(year=today.year - OLD_YEARS, day=day).isoformat()
