"""The page that a device without a signal shows in the place of one that it does not keep (`assets/undertrim/keeper.js`): it says what to do."""

from undertrim.publish.web.content import Body
from undertrim.publish.web.pages import environment
from undertrim.words import message, say

PAGE = "not-kept"
"""Where it stands in the site."""


def page() -> Body:
    """The page in the language of the reader."""
    body = environment().get_template("not-kept.html.j2").render()
    return Body(say(message("not-kept/title")), lambda: body, body)
