"""The language of a record's own names and texts, for whoever reads another."""

from dataclasses import dataclass

from undertrim.words import Language, message, say


@dataclass(frozen=True, slots=True)
class OwnLanguage:
    """The tag of the language that a record is written in; empty where it does not say."""

    tag: str

    def say(self, speech: Language) -> str:
        """What is said of it to a reader of another language; nothing to one of the same, or where nobody knows."""
        if not self.tag or _plain(self.tag) == _plain(speech.tag):
            return ""
        return say(message("vehicle/own-language", language=_named(self.tag, speech.tag)), speech)


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
