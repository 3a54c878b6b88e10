"""All pages of a vehicle as one text, for who asks whether something is shown at all."""

from undertrim.publish.encoding import Published
from undertrim.publish.web import pages


def all_pages(facts: Published) -> str:
    """The bodies of its pages one after the other."""
    return "\n".join(pages.vehicle(facts).values())
