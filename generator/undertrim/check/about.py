"""What a size in a text is about, told by the words beside it (data/words.toml)."""

from functools import cache

from undertrim.check.mentions import Mention, after, before
from undertrim.resources import table


def fastener_or_tool(text: str, mention: Mention) -> str:
    """'fastener' for '7 mm screws' and 'screws (7 mm)', 'tool' for '7 mm socket', '' for anything else."""
    return _ahead(after(text, mention.end)) or _behind(text, mention)


def is_length(text: str, mention: Mention) -> bool:
    """Whether the words say that it is how long something is."""
    return _any("long", [*after(text, mention.end)[:2], *before(text, mention.start)[:2]])


def is_loose(text: str, mention: Mention) -> bool:
    """Whether it is a limit, a rough figure, a way to go or a bit of cable, which no field can contradict."""
    ahead = after(text, mention.end)
    limited = _any("loose", before(text, mention.start)[:2]) or ahead[:1] in (["to"], ["-"], ["–"])
    return limited or _moves(ahead) or _any("soft", ahead[:3])


def is_name(text: str, mention: Mention) -> bool:
    """Whether it is the name of a plug, lamp or fuse that only looks like a size: 'plug T20', 'T10 bulb'."""
    return _any("plugs", [*before(text, mention.start)[:1], *after(text, mention.end)[:1]])


def _ahead(words: list[str]) -> str:
    """The noun that follows, with up to two words such as 'long' between."""
    for place, word in enumerate(words[:3]):
        if sort := _sort(word):
            return "" if "drill" in words[:place] else sort
        if word in _words("elsewhere") or word in _words("joints") or not word[0].isalpha():
            break
    return ""


def _behind(text: str, mention: Mention) -> str:
    """The noun that goes before, unless what follows the size tells a way or a place."""
    following = after(text, mention.end)[:1]
    if _any("elsewhere", following) or _moves(following):
        return ""
    for word in before(text, mention.start)[:4]:
        if (sort := _sort(word)) and word not in _words("vague"):
            return sort
        if word not in _words("links"):
            break
    return ""


def _sort(word: str) -> str:
    if word in _words("fasteners"):
        return "fastener"
    return "tool" if word in _words("tools") else ""


def _moves(words: list[str]) -> bool:
    """Whether the next word is a way to go: 'rearward', 'forwards'."""
    return bool(words) and words[0].rstrip("s").endswith("ward")


def _any(name: str, words: list[str]) -> bool:
    return not _words(name).isdisjoint(words)


@cache
def _words(name: str) -> frozenset[str]:
    return frozenset(table("words")["size"][name])
