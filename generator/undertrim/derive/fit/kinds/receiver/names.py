"""What the sizes of an opening in the dash are called."""

from undertrim.words import message

OPENING = message("fit-receiver/opening")
CLEAR_DEPTH = message("fit/clear-depth")
