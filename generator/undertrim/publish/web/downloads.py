"""What a vehicle's page leads to besides other pages: its sheets and paper templates, each in every paper it is printed on."""

from collections.abc import Mapping
from dataclasses import dataclass, field


@dataclass(frozen=True, slots=True)
class Link:
    """A file beside the page, maybe with a page of it, and its paper."""

    href: str
    paper: str


@dataclass(frozen=True, slots=True)
class Downloads:
    """What is printed of a vehicle: its sheets, and by its id each opening that has a template; `lang` is the tag of their language."""

    fitting: tuple[Link, ...] = ()
    wiring: tuple[Link, ...] = ()
    templates: Mapping[str, tuple[Link, ...]] = field(default_factory=dict)
    lang: str = ""


NOTHING = Downloads()
