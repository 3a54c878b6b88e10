"""The language of a record's own names and texts, for whoever reads another."""

from dataclasses import dataclass

from undertrim.words import Language, Message, message, say


@dataclass(frozen=True, slots=True)
class OwnLanguage:
    """The tag of the language that a record is written in; empty where it does not say."""

    tag: str

    def say(self, speech: Language) -> str:
        """What is said of it to a reader of another language; nothing to one of the same, or where nobody knows."""
        return say(self.told("vehicle/own-language", speech), speech) if self.differs(speech) else ""

    def told(self, code: str, speech: Language) -> Message:
        """The same in a sentence of the catalogue that names the language."""
        return message(code, language=_named(self.tag, speech.tag))

    def differs(self, speech: Language) -> bool:
        """Whether it is known to be another language than the reader's."""
        return bool(self.tag) and _plain(self.tag) != _plain(speech.tag)


def _plain(tag: str) -> str:
    """The language alone: whoever reads `pt-BR` reads `pt`."""
    return tag.partition("-")[0]


def _named(tag: str, reader: str) -> str:
    """The name of a language as its reader calls it (Unicode CLDR), else its tag."""
    from babel import Locale, UnknownLocaleError  # only needed where a record is in another language

    try:
        return Locale.parse(tag, sep="-").get_display_name(Locale.parse(reader, sep="-")) or tag
    except (UnknownLocaleError, ValueError):
        return tag
