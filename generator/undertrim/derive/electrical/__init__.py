"""The arithmetic of power and sound: cable, fuse, load, filter, level, delay, rest. Numbers in, numbers and words out."""
