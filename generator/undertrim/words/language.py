"""A language: its texts, its plurals, its decimal mark, and which of its words change before what follows them.

English stands in `english/`. Any other is a folder `locale/<tag>/LC_MESSAGES` of gettext files, one for each room, so that several people can write in it
at once; what is no text stands beside them in `language.toml`.
"""

import re
import tomllib
from collections.abc import Callable, Iterator, Mapping, Sequence
from contextlib import contextmanager
from contextvars import ContextVar
from dataclasses import dataclass, field
from functools import cache, wraps
from pathlib import Path
from typing import TypeVar

from undertrim import resources

Made = TypeVar("Made")

Text = str | tuple[str, ...]
"""A text, or its forms by number: for English the singular and the plural."""


class UnknownLanguage(Exception):  # noqa: N818 - it names what was asked for
    """There is no catalogue of this language."""


@dataclass(frozen=True, slots=True)
class Before:
    """A word that is another one before what begins in a certain way: Spanish says `y`, but `e` before the same sound.

    `beginning` is a pattern that Python, JavaScript and Typst read alike: no looking ahead.
    """

    word: str
    instead: str
    beginning: str

    def fits(self, text: str, value: str) -> bool:
        """Whether a text ends with the word, and what follows it begins so."""
        return text.endswith(f" {self.word} ") and _pattern(self.beginning).match(value) is not None

    def changed(self, text: str) -> str:
        """The text with the other word at its end."""
        return f"{text[: -len(self.word) - 1]}{self.instead} "


@cache
def _pattern(text: str) -> re.Pattern[str]:
    return re.compile(text)


@dataclass(frozen=True, slots=True, eq=False)  # each is itself, so that what is made for it can be kept
class Language:
    """A language by its tag, with its texts by context and English; what is missing is said in English.

    `form` tells which form of a text goes with a number.
    """

    tag: str = "en"
    texts: Mapping[tuple[str, Text], Text] = field(default_factory=dict)
    form: Callable[[int], int] = lambda number: int(number != 1)
    decimal_mark: str = "."
    group_mark: str = ","
    before: tuple[Before, ...] = ()

    def text(self, context: str, english: Text, number: int = 1) -> str:
        """The text of a context; `number` chooses where there is more than one."""
        found = self.texts.get((context, english))
        if isinstance(found, str):
            return found
        if found:
            return found[self.form(number)]
        return english if isinstance(english, str) else english[int(number != 1)]

    def leading(self, text: str, value: str) -> str:
        """A text as it stands before a value that is put in after it."""
        return next((rule.changed(text) for rule in self.before if rule.fits(text, value)), text)

    @property
    def forms(self) -> str:
        """A digit for each number below 200: the form that goes with it. Rules of plurals ask for no more than two digits and whether there are more."""
        return "".join(str(self.form(number)) for number in range(200))

    def number(self, value: float) -> str:
        """A number with no more digits than it needs; a whole one with all it has."""
        return f"{value:d}" if isinstance(value, int) else f"{value:g}".replace(".", self.decimal_mark)

    def grouped(self, value: int) -> str:
        """A whole number with its thousands set apart."""
        return f"{value:,}".replace(",", self.group_mark)


ENGLISH = Language()
_SPOKEN: ContextVar[Language] = ContextVar("spoken", default=ENGLISH)


def spoken() -> Language:
    """The language of whoever reads what is said now."""
    return _SPOKEN.get()


@contextmanager
def speaking(speech: Language) -> Iterator[None]:
    """Everything said within is said in this language: a command or a build has one reader, and needs not hand the language on."""
    token = _SPOKEN.set(speech)
    try:
        yield
    finally:
        _SPOKEN.reset(token)


def once_per_language(make: Callable[[], Made]) -> Callable[[], Made]:
    """Lets what says the same whenever it is asked be made once for each language. Nobody may change what it gives.

    The preview builds the site again with every record that is saved, and the rules' pages alone took a third of that.
    """

    @cache
    def kept(_: Language) -> Made:
        return make()

    @wraps(make)
    def asked() -> Made:
        return kept(spoken())

    return asked


def tags() -> list[str]:
    """The tags of all languages that the program speaks."""
    folder = _locale()
    others = (item.name for item in folder.iterdir() if _files(item.name)) if folder.is_dir() else ()
    return sorted({ENGLISH.tag, *others})


_LOCALE, _PRIORITY = ("LC_ALL", "LC_MESSAGES", "LANG"), "LANGUAGE"
"""Where the environment says which language its user reads: the first of these that says anything, and before it a list of languages,
unless the former asks for none (GNU gettext manual, 2.3.2 and 2.3.3)."""


def of_environment(environment: Mapping[str, str]) -> str:
    """The tag of the first language that the user of an environment reads and the program speaks; empty where there is none."""
    place = next((environment[name] for name in _LOCALE if environment.get(name)), "")
    plain = place.partition(".")[0] in ("C", "POSIX")
    said = environment.get(_PRIORITY) if not plain else ""
    asked = [one.partition(".")[0].replace("_", "-") for one in (said or place).split(":")]  # `es_MX.UTF-8`
    spoken_here = tags()
    found = (tag for one in asked for tag in (one, one.partition("-")[0]) if tag in spoken_here)
    return next(found, "")


def _locale() -> Path:
    return resources.inside("words", "locale")


def _files(tag: str) -> list[Path]:
    """The gettext files of a language."""
    return sorted((_locale() / tag / "LC_MESSAGES").glob("*.po"))


@cache
def language(tag: str) -> Language:
    """A language that the program speaks. Raises UnknownLanguage."""
    if tag == ENGLISH.tag:
        return ENGLISH
    if tag not in tags():  # which are names of folders, so that no tag leads out of ours
        raise UnknownLanguage(tag)
    return read(tag, *_files(tag))


def read(tag: str, *paths: Path) -> Language:
    """A language from its gettext files. Texts that a translator has not looked at since they changed are left out."""
    from gettext import c2py

    from babel import Locale, UnknownLocaleError  # only needed for another language than English
    from babel.messages.pofile import read_po
    from babel.numbers import get_decimal_symbol, get_group_symbol

    texts: dict[tuple[str, Text], Text] = {}
    plural = "(n != 1)"
    for path in paths:
        with path.open("rb") as file:
            catalogue = read_po(file)
        plural = catalogue.plural_expr
        texts |= {
            (entry.context or "", _text(entry.id)): _text(entry.string)
            for entry in catalogue
            if entry.id and not entry.fuzzy and entry.string and all(entry.string)
        }
    try:
        place = Locale.parse(tag, sep="-")
        marks = get_decimal_symbol(place), get_group_symbol(place)
    except UnknownLocaleError:
        marks = ENGLISH.decimal_mark, ENGLISH.group_mark
    return Language(tag, texts, c2py(plural), *marks, _before(tag))


def _before(tag: str) -> tuple[Before, ...]:
    """The words of a language that change before what follows them."""
    file = _locale() / tag / "language.toml"
    rules = tomllib.loads(file.read_text(encoding="utf-8"))["before"] if file.is_file() else ()
    return tuple(Before(**rule) for rule in rules)


def _text(text: str | Sequence[str]) -> Text:
    return text if isinstance(text, str) else tuple(text)
