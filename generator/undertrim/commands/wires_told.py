"""The wires of a harness or a lead set in one line of text, and asked for one by one on a terminal.

`radio-main: 4 battery-feed yellow, 7 ground black` for the plugs of a harness (another plug behind a semicolon), `battery-feed yellow, ground black` for leads;
a lead of line level says `line` at its end.
"""

from collections.abc import Iterator
from dataclasses import dataclass

from undertrim.commands import prompts
from undertrim.derive.questions.blocks import BlockField
from undertrim.derive.questions.question import AnswerForm
from undertrim.record.fields import root
from undertrim.record.source import Data
from undertrim.words import Message, WayOut, message, say

PLUGS, LEADS = "plugs", "leads"
_LINE = "line"
_FORM = AnswerForm("text")


@dataclass(frozen=True, slots=True)
class Wires(BlockField):
    """The field `plugs` or `leads` of a piece of gear, told as text."""

    @property
    def of_plugs(self) -> bool:
        """Whether they are contacts of plugs, and no leads by themselves."""
        return self.place[-1] == PLUGS

    def read(self, typed: str) -> Data:
        """The wires as the file has them; what is told twice counts once, see `wrong`."""
        if not self.of_plugs:
            return dict(_lead(one) for one in _pieces(typed, ","))
        return {name: dict(_contact(one) for one in held) for name, held in _plugs(typed)}

    def wrong(self, typed: str) -> Message | None:
        """What is wrong with the text; None for nothing."""
        if self.of_plugs and not all(sign for sign, _ in _named(typed)):
            return message("new/plug-wanted")
        for keys in [[name for name, _ in _plugs(typed)]] if self.of_plugs else []:
            if twice := _twice(keys):
                return message("new/wire-twice", name=twice)
        for held in [held for _, held in _plugs(typed)] if self.of_plugs else [list(_pieces(typed, ","))]:
            if twice := _twice([(_contact(one) if self.of_plugs else _lead(one))[0] for one in held]):
                return message("new/wire-twice", name=twice)
        return BlockField.wrong(self, typed)


def fields(kind: str, must: tuple[str, ...], may: tuple[str, ...]) -> Iterator[Wires]:
    """The fields of a kind of gear that are wires."""
    node = root("gear/gear")
    for name in (PLUGS, LEADS):
        below = node.child(name)
        if below and name in (*must, *may):
            title, means = below.schema["title"], below.schema["description"]
            yield Wires("gear", ("gear", name), title, means, _FORM, optional=name not in must)


def asked(one: Wires) -> str:
    """The text of all wires, asked for one by one until somebody says no more; empty where there is none. Raises Stopped."""
    if not one.of_plugs:
        return ", ".join(_each(one, "", message("new/next-lead")))
    told: list[str] = []
    while name := prompts.text(say(message("new/next-plug")), lambda said: _wrong_plug(one, said)):
        wires = list(_each(one, f"{name}: ", message("new/next-contact", plug=name)))
        told += [f"{name}: {', '.join(wires)}"] if wires else []
    return "; ".join(told)


def _each(one: Wires, before: str, ask: Message) -> Iterator[str]:
    told: list[str] = []

    def wrong(said: str) -> str:
        found = one.wrong(f"{before}{', '.join([*told, said])}") if said.strip() else None
        return _told(found)

    while said := prompts.text(say(ask), wrong, say(message("new/contact-hint" if before else "new/lead-hint"))):
        told.append(said)
        yield said


def _wrong_plug(one: Wires, name: str) -> str:
    return _told(one.wrong(f"{name}: 1 ground") if name.strip() else None)


def _told(wrong: Message | None) -> str:
    """What is wrong with its way out, in one line; empty for nothing."""
    return " ".join(filter(None, (say(wrong), say(WayOut(wrong))))) if wrong else ""


def _pieces(text: str, sign: str) -> Iterator[str]:
    return (piece.strip() for piece in text.split(sign) if piece.strip())


def _named(text: str) -> Iterator[tuple[str, str]]:
    """Each plug with what is said of its wires; the first is empty where no plug is named."""
    for piece in _pieces(text, ";"):
        name, sign, wires = piece.partition(":")
        yield (name.strip(), wires) if sign else ("", piece)


def _plugs(text: str) -> Iterator[tuple[str, list[str]]]:
    return ((name, list(_pieces(wires, ","))) for name, wires in _named(text))


def _contact(text: str) -> tuple[str, Data]:
    """A contact with what it leads to."""
    pin, _, rest = text.partition(" ")
    return pin, _lead(rest)[1]


def _lead(text: str) -> tuple[str, Data]:
    """A lead with an id from its function: that of line level has one of its own."""
    function, _, colour = text.strip().partition(" ")
    words = colour.split()
    level = _LINE if words[-1:] == [_LINE] else ""
    said: dict[str, Data] = {"function": function}
    colour = " ".join(words[:-1] if level else words)
    said |= {"colour": colour} if colour else {}
    said |= {"level": level} if level else {}
    return f"{level}-{function}" if level else function, said


def _twice(names: list[str]) -> str:
    return next((name for name in names if names.count(name) > 1), "")
