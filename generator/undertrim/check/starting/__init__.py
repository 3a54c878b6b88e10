"""Starts the records of cars that have none: nothing is written that the check would refuse, and none beside a record that has the car."""

from undertrim.check.starting.known import Known, known
from undertrim.check.starting.sisters import called, shared_with
from undertrim.check.starting.starting import Fresh, fresh, like

__all__ = ["Fresh", "Known", "called", "fresh", "known", "like", "shared_with"]
