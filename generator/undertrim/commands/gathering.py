"""Gathers the answers that a new record begins with: from what was typed behind the command, and where somebody is at the terminal from them."""

from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass, field

from undertrim.commands import prompts
from undertrim.commands.usage import Usage
from undertrim.derive.questions.blocks import BlockField
from undertrim.publish.facts.question_words import form_words
from undertrim.record.nearness import suggestion
from undertrim.record.problem import printable
from undertrim.record.source import Data, Pointer
from undertrim.words import Items, Message, Value, WayOut, message, say

_NOT_GIVEN = ""


def pairs(words: Sequence[str], other_names: Mapping[str, str]) -> dict[str, str]:
    """The answers in `NAME=VALUE` words, by name; `other_names` are what else people call some. Raises Usage."""
    found: dict[str, str] = {}
    for word in words:
        typed, sign, value = (part.strip() for part in word.partition("="))
        if not sign or not typed or not value:
            raise Usage(message("new/pair", pair=printable(word)))
        name = other_names.get(typed.replace("-", "_"), typed.replace("-", "_"))
        if found.setdefault(name, value) != value:
            raise Usage(message("new/twice", name=printable(typed)))
    return found


class Lacking(Usage):
    """Answers that nobody gave."""

    def __init__(self, lacking: Message) -> None:
        super().__init__(lacking)
        self.lacking = lacking


@dataclass(frozen=True, slots=True)
class Saying:
    """How some questions are asked in other words than those of the schema, and what their choices are called; by name."""

    asks: Mapping[str, Value] = field(default_factory=dict)
    labels: Mapping[str, Callable[[str], Value]] = field(default_factory=dict)


SCHEMA = Saying()


@dataclass(slots=True)
class Gathering:
    """The answers so far, by place; `given` are those that were typed behind the command, by name.

    `asks` tells whether somebody is there to be asked for the others.
    """

    given: dict[str, str]
    asks: bool
    said: dict[Pointer, Data] = field(default_factory=dict)
    typed: dict[str, str] = field(default_factory=dict)
    """What was typed, by name."""
    left: set[Pointer] = field(default_factory=set)
    """Blocks that are left out."""

    def of(self, wanted: Sequence[BlockField], saying: Saying = SCHEMA) -> dict[Pointer, Data]:
        """The answers to all of some questions. Raises Usage and Stopped."""
        lacking: list[BlockField] = []
        for one in [one for one in wanted if one.place not in self.said]:
            if one.whole in self.left or not self._is_asked(one):
                continue
            typed = self.given.get(one.name, _NOT_GIVEN)
            if typed:
                self._keep(one, typed)
            elif self.asks:
                self._ask(one, saying)
            elif one.optional:
                self._leave(one)
            else:
                lacking.append(one)
        if lacking:
            raise Lacking(message("new/lacking", fields=Items(tuple(map(_lacking, lacking)), "comma")))
        return self.said

    def refuse_unknown(self, known: Sequence[str]) -> None:
        """Raise Usage for an answer to a question that is not asked."""
        for name in self.given:
            if name not in known:
                hint = suggestion(name, list(known), message("new/names"))
                raise Usage(message("new/no-such-name", name=printable(name), hint=hint))

    def _is_asked(self, one: BlockField) -> bool:
        return one.only_if is None or str(self.said.get(one.only_if[0], "")) in one.only_if[1]

    def _keep(self, one: BlockField, typed: str) -> None:
        wrong = one.wrong(typed)
        if wrong:
            raise Usage(message("new/wrong", name=one.name, said=_said(wrong)))
        self._know(one, typed)

    def _ask(self, one: BlockField, saying: Saying) -> None:
        typed = _asked(one, saying)
        if typed:
            self._know(one, typed)
        else:
            self._leave(one)

    def _know(self, one: BlockField, typed: str) -> None:
        self.said[one.place], self.typed[one.name] = one.read(typed), typed

    def _leave(self, one: BlockField) -> None:
        if one.whole:
            self.left.add(one.whole)


def _asked(one: BlockField, saying: Saying) -> str:
    """What somebody answers, in the words of the file; empty for what is left out. Raises Stopped."""
    ask = saying.asks.get(one.name) or message("new/field", title=one.title, means=one.means)
    if one.form.sort in ("choice", "choices"):
        words = (*one.form.choices, *(("unknown",) if one.form.unknown else ()))
        label = saying.labels.get(one.name, str)
        choices = [(word, say(label(word))) for word in words]
        if one.form.sort == "choices":
            needed = "" if one.optional else say(message("new/one-needed"))
            return ",".join(prompts.several(say(ask), choices, say(message("new/several")), needed))
        return prompts.choose(say(ask), [*choices, *([("", say(message("new/leave-out")))] if one.optional else [])])
    code = "new/typed-optional" if one.optional else "new/typed"
    return prompts.text(say(ask), lambda typed: _check(one, typed), say(message(code, form=form_words(one.form))))


def _check(one: BlockField, typed: str) -> str:
    if one.optional and not typed.strip():
        return ""
    wrong = one.wrong(typed.strip())
    return say(_said(wrong)) if wrong else ""


def _said(wrong: Message) -> Value:
    """What is wrong with its way out, in one line."""
    return Items(tuple(filter(None, (say(wrong), say(WayOut(wrong))))), "semicolon")


def _lacking(one: BlockField) -> Message:
    return message("new/lacks", name=one.name, form=form_words(one.form))


def nested_all(said: Mapping[Pointer, Data], home: Pointer) -> dict[str, Data]:
    """The block below `home` in which each answer stands at its place; lists have one entry."""
    block: dict[str, Data] = {}
    for place, value in said.items():
        _put(block, place[len(home) :], value)
    return block


def _put(block: dict[str, Data], keys: Pointer, value: Data) -> None:
    key, *rest = keys
    if not rest:
        block[str(key)] = value
    elif rest[0] == 0:
        entries = block.setdefault(str(key), [{}])
        _put(entries[0], tuple(rest[1:]), value)
    else:
        _put(block.setdefault(str(key), {}), tuple(rest), value)


def names(wanted: Iterable[BlockField]) -> list[str]:
    """What the questions are called where their answers are typed."""
    return [one.name for one in wanted]
