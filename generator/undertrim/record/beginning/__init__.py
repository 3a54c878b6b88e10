"""The record of a car that nobody has recorded yet: complete, with what is usual as a start to correct, and all else unknown.

What is usual rests on evidence that says so (`how: usual`), so that nothing takes it for seen: a record with it cannot be called
verified, and an answer about a car lies over it without a conflict.
"""

from undertrim.record.beginning.car import NewCar
from undertrim.record.beginning.writing import begun

__all__ = ["NewCar", "begun"]
