"""What a photograph is once its file was read."""

from dataclasses import dataclass

from undertrim.resources import table


class Broken(Exception):  # noqa: N818 - it names the state of the file
    """No picture of the formats we know can be read from it."""


@dataclass(frozen=True, slots=True)
class Picture:
    """A photograph as read: width and height in px, the format by its row in data/photos.toml, and the digest of its bytes.

    `turned` is whether it must be turned to be seen upright, `frames` how many pictures the file holds, `located` whether it tells where
    it was taken.
    """

    width: int
    height: int
    format: str
    digest: str
    turned: bool = False
    frames: int = 1
    located: bool = False

    @property
    def too_large(self) -> bool:
        """Whether its longer edge is longer than it may be."""
        return max(self.width, self.height) > int(table("photos")["most"]["edge"])
