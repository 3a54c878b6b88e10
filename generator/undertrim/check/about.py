"""What a size in a text is about, told by the words beside it. The word lists are ours; common practice."""

from undertrim.check.mentions import Mention, after, before

_FASTENERS = frozenset("screw screws bolt bolts nut nuts".split())
_TOOLS = frozenset(
    "socket sockets spanner spanners wrench wrenches driver screwdriver nutdriver bit bits hex hexagon hexagons".split()
)
_VAGUE = frozenset("driver bit bits".split())
"""Tools only behind a size: '5 mm bit', but not 'a bit 5 mm lower'."""
_KEYS = frozenset(["key", "keys"])
_LINKS = frozenset("( of size sized is are take takes need needs with a an the head heads".split())
_ELSEWHERE = frozenset(
    """and or the a an of to from with by at on in into onto over under until before after for then when while its
    their that which it is are so but as than past behind above below beside along around near off out up down back
    away apart left right free inboard outboard""".split()
)
_LOOSE = frozenset(
    "least most to than within every another about roughly nearly almost under over some last first".split()
)
_SOFT = frozenset("cable cables lead leads wire wires slack loom harness tape foam cord cloth".split())
_PLUGS = frozenset("plug plugs connector connectors terminal terminals lamp lamps bulb bulbs fuse fuses relay".split())


def fastener_or_tool(text: str, mention: Mention) -> str:
    """'fastener' for '7 mm screws' and 'screws (7 mm)', 'tool' for '7 mm socket', '' for anything else."""
    return _ahead(after(text, mention.end)) or _behind(text, mention)


def _ahead(words: list[str]) -> str:
    """The noun that follows, with up to two words such as 'long' between."""
    for place, word in enumerate(words[:3]):
        if word in _KEYS and "hex" in words[:place]:
            return "tool"
        if word in _FASTENERS or word in _TOOLS:
            return "" if "drill" in words[:place] else _class(word)
        if word in _ELSEWHERE or not word[0].isalpha():
            break
    return ""


def _behind(text: str, mention: Mention) -> str:
    """The noun that goes before, unless what follows the size tells a way or a place."""
    following = after(text, mention.end)[:1]
    if following and (following[0] in _ELSEWHERE - {"and", "or", "to"} or moves(following)):
        return ""
    for word in before(text, mention.start)[:4]:
        if word not in _VAGUE and (word in _FASTENERS or word in _TOOLS):
            return _class(word)
        if word not in _LINKS:
            break
    return ""


def _class(word: str) -> str:
    return "fastener" if word in _FASTENERS else "tool"


def is_length(text: str, mention: Mention) -> bool:
    """Whether the words say that it is how long something is."""
    return not {"long", "longer", "length"}.isdisjoint((*after(text, mention.end)[:2], *before(text, mention.start)[:2]))


def moves(words: list[str]) -> bool:
    """Whether the next word is a way to go: 'rearward', 'forwards'."""
    return bool(words) and words[0].rstrip("s").endswith("ward")


def is_loose(text: str, mention: Mention) -> bool:
    """Whether it is a limit, a rough figure, a way to go or a bit of cable, which no field can contradict."""
    ahead = after(text, mention.end)
    limited = not _LOOSE.isdisjoint(before(text, mention.start)[:2])
    return limited or moves(ahead) or ahead[:1] in (["to"], ["-"], ["–"]) or not _SOFT.isdisjoint(ahead[:3])


def is_name(text: str, mention: Mention) -> bool:
    """Whether it is the name of a plug, lamp or fuse that only looks like a size: 'plug T20', 'T10 bulb'."""
    return not _PLUGS.isdisjoint((*before(text, mention.start)[:1], *after(text, mention.end)[:1]))
