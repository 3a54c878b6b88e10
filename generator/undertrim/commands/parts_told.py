"""What is asked of one part that came off: after what, how, what held it, what still hung on it, and what was behind it."""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass

from undertrim.check.adding import PartSeen
from undertrim.commands import prompts
from undertrim.derive.claims import Refused
from undertrim.derive.claims.values import allowed
from undertrim.derive.evidence.facts import schema_at
from undertrim.record import identity
from undertrim.record.model import VehicleRecord
from undertrim.record.source import Data, Pointer
from undertrim.resources import table
from undertrim.words import Items, Message, Value, WayOut, message, say, word

_SO, _OTHERWISE, _UNSURE, _NO_MORE = "so", "otherwise", "unsure", "no more"
_BOTH, _ONE = "both", "one"
_AT = ("parts", "x")
_TESTED = ("cable", "rod")


@dataclass(frozen=True, slots=True)
class Telling:
    """The questions about one part. `ask` keeps each answer under a name; `stands` is what the record says so far, nothing for a new part.

    `before` are the parts that came off so far, the last one last.
    """

    record: VehicleRecord
    ask: Callable[[str, Callable[[], str]], str]
    stands: Mapping[str, Data]
    before: Sequence[str]

    def told(self, part: str, name: str) -> PartSeen:
        """All of it. Raises Stopped."""
        fields: dict[str, Data] = {}
        if name:
            fields |= {
                "name": name,
                "area": self._choose("area", "area", self._labels("area", "areas/")),
            } | self._sides()
        unsure = False
        wanted = {"after": self._after, "release": self._release, "held_by": self._held_by, "tethers": self._tethers}
        for field, asked in wanted.items():
            so = _OTHERWISE if name else self._is_so(field)
            unsure = unsure or so == _UNSURE
            if so == _OTHERWISE:
                fields[field] = asked(part)
        if name:
            fields |= self._more()
        behind = [tuple(one.split("/")) for one in self._behind(part, needed=bool(name))]
        kept = {field: said for field, said in fields.items() if said or self.stands.get(field)}
        return PartSeen(part, kept, tuple((section, thing) for section, thing in behind), unsure)

    def _is_so(self, field: str) -> str:
        """Whether what the record says of a part is so on this car."""
        choices = [(said, message(f"asked-part/{said}")) for said in (_SO, _OTHERWISE, _UNSURE)]
        said = message("asked-part/is-it-so", field=message(f"asked-part/field-{field}"), said=self._said(field))
        return self.ask(f"{field}?", lambda: prompts.choose(say(said), _spoken(choices)))

    def _said(self, field: str) -> Value:
        """What the record says of a field, in words."""
        part = self.stands.get(field)
        if not part:
            return message("fit-form/nothing")
        if field == "after":
            return Items(tuple(self._called(one) for one in part), "comma")
        if field == "release":
            return message(f"motions/{part}")
        if field == "held_by":
            return Items(tuple(map(_fastener, part)), "comma")
        return Items(tuple(str(one["name"]) for one in part.values()), "comma")

    def _called(self, reference: Data) -> str:
        name = reference if isinstance(reference, str) else str(reference.get("part", ""))
        return self.record.parts[name].name if name in self.record.parts else name

    # Field by field

    def _sides(self) -> dict[str, Data]:
        choices = [(one, message(f"asked-part/sides-{one}")) for one in (_BOTH, "left", "right", _ONE)]
        said = self._choose("sides", "sides", choices)
        if said == _BOTH:
            return {"each": ["left", "right"]}
        return {} if said == _ONE else {"on_side": said}

    def _after(self, part: str) -> list[str]:
        """What had to be off first: what came off last stands first among the choices."""
        names = [*reversed(self.before), *(name for name in self.record.parts if name not in self.before)]
        return self._several("after", "after", [(name, self.record.parts[name].name) for name in names if name != part])

    def _release(self, _: str) -> str:
        return self._choose("release", "release", self._labels("release", "motions/"))

    def _held_by(self, _: str) -> list[Data]:
        """Fastener after fastener."""
        found: list[Data] = []
        kinds = [(kind, word("fasteners", kind, "plural")) for kind in table("fasteners")]
        while (kind := self._choose(f"held_by/{len(found)}", "held-by", [*kinds, self._enough(found)])) != _NO_MORE:
            home = f"held_by/{len(found)}/"
            if table("fasteners")[kind].get("turned"):
                what = self._text(f"{home}what", "turned", (*_AT, "held_by", 0, kind), "asked-part/turned-hint")
            else:
                what = self._choose(f"{home}what", "sort", self._sorts(kind))
            count = self._text(f"{home}count", "count", (*_AT, "held_by", 0, "count"), "asked-part/count-hint")
            found.append({kind: what, "count": count})
        return found

    def _tethers(self, _: str) -> dict[str, Data]:
        """What still held it when its fasteners were out."""
        found: dict[str, Data] = {}
        kinds = [(kind, word("tethers", "kind", kind, "label")) for kind in table("tethers")["kind"]]
        number = 0
        while (kind := self._choose(f"tethers/{number}", "tether", [*kinds, self._enough(found)])) != _NO_MORE:
            home = f"tethers/{number}/"
            name = self._text(f"{home}name", "tether-name", (*_AT, "tethers", "x", "name"), "")
            tether: dict[str, Data] = {"name": name, "kind": kind}
            serves = self._several(f"{home}serves", "serves", self._purposes())
            tether |= {"serves": serves} if serves else {}
            if any(table("purposes")["purpose"][one].get("restraint") for one in serves):
                then = [(one, message(f"asked-part/then-{one}")) for one in ("leave", "rejoin")]
                tether |= {"circuit": "restraint", "then": self._choose(f"{home}then", "then", then)}
            if kind in _TESTED:
                tether["test"] = self._text(f"{home}test", "test", (*_AT, "tethers", "x", "test"), "")
            found[identity.slug(name)] = tether
            number += 1
        return found

    def _more(self) -> dict[str, Data]:
        """Whether it goes back, and in words what else there is to say of it."""
        choices = [(said, message(f"new/{said}")) for said in ("no", "yes")]
        replaced = self._choose("replaced", "replaced", choices)
        how = self._text("how", "how", (*_AT, "how"), "asked-part/may-be-left")
        return ({"replaced": "yes"} if replaced == "yes" else {}) | ({"how": how} if how else {})

    def _behind(self, part: str, *, needed: bool) -> list[str]:
        """What it held back: places for gear, and parts; a part that holds nothing back is not worth a step."""
        places: list[tuple[str, Value]] = [(f"openings/{one.id}", one.name) for one in self.record.openings.values()]
        parts: list[tuple[str, Value]] = [(f"parts/{one.id}", one.name) for one in self.record.parts.values()]
        choices = [*places, *(one for one in parts if one[0] != f"parts/{part}")]
        return self._several("behind", "behind", choices, say(message("new/one-needed")) if needed else "")

    # One question

    def _choose(self, name: str, code: str, choices: Sequence[tuple[str, Value]]) -> str:
        return self.ask(name, lambda: prompts.choose(say(message(f"asked-part/ask-{code}")), _spoken(choices)))

    def _several(self, name: str, code: str, choices: Sequence[tuple[str, Value]], needed: str = "") -> list[str]:
        def asked() -> str:
            hint = say(message("new/several"))
            return ",".join(prompts.several(say(message(f"asked-part/ask-{code}")), _spoken(choices), hint, needed))

        return [one for one in self.ask(name, asked).split(",") if one] if choices else []

    def _text(self, name: str, code: str, at: Pointer, hint: str) -> str:
        """A value that the schema takes there; nothing where the hint says so."""
        may_be_left = hint == "asked-part/may-be-left"

        def asked() -> str:
            typed = prompts.text(
                say(message(f"asked-part/ask-{code}")),
                lambda typed: "" if may_be_left and not typed.strip() else _wrong(at, typed.strip()),
                say(message(hint)) if hint else "",
            )
            return "unknown" if typed == "?" else typed

        return self.ask(name, asked)

    def _labels(self, field: str, codes: str) -> list[tuple[str, Value]]:
        return [(one, message(f"{codes}{one}")) for one in schema_at((*_AT, field))["enum"]]

    def _sorts(self, kind: str) -> list[tuple[str, Value]]:
        return [(one, message(f"sorts/{one}")) for one in schema_at((*_AT, "held_by", 0, kind))["enum"]]

    def _purposes(self) -> list[tuple[str, Value]]:
        return [(one, word("purposes", "purpose", one, "label")) for one in table("purposes")["purpose"]]

    def _enough(self, found: object) -> tuple[str, Message]:
        return _NO_MORE, message("asked-part/nothing-else" if found else "fit-form/nothing")


def _fastener(data: Mapping[str, Data]) -> Message:
    """One of the record's, as it is typed."""
    kind = next(one for one in table("fasteners") if one in data)
    return message(
        "asked-part/fastener",
        count=str(data.get("count", "unknown")),
        what=str(data[kind]),
        kind=word("fasteners", kind, "label"),
    )


def _wrong(at: Pointer, typed: str) -> str:
    """What the schema has against a value; `?` says that it could not be told."""
    try:
        allowed(at, "unknown" if typed == "?" else typed)
    except Refused as error:
        return " ".join(filter(None, (say(error.said), say(WayOut(error.said)))))
    return ""


def _spoken(choices: Sequence[tuple[str, Value]]) -> list[tuple[str, str]]:
    return [(one, say(label)) for one, label in choices]
