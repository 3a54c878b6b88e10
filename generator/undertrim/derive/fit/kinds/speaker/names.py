"""What the parts of a speaker and of its opening are called."""

from undertrim.words import message

BASKET = message("fit-speaker/basket")
MOUNTING_DEPTH = message("fit-speaker/mounting-depth")
CAR = message("fit-speaker/the-car")
