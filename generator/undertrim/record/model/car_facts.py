"""What the maker says of the car as a whole while work goes on: restraints, rest, lids, and what to do around the battery."""

from dataclasses import dataclass, field

from undertrim.record.model.basics import ALWAYS, Current, Duration, Known, Sources, When


@dataclass(frozen=True, slots=True)
class Restraint:
    """What the maker says of working near airbags and belts; nothing here has a usual value."""

    wait: Duration
    fitted: Known = "unknown"
    memory_keeper: str = "unknown"
    read_faults_first: Known = "unknown"
    source: Sources = ()


@dataclass(frozen=True, slots=True)
class Rest:
    """What the car draws once it is asleep, and how long it takes to fall asleep."""

    current: Current
    asleep_after: Duration
    source: Sources = ()


@dataclass(frozen=True, slots=True)
class Closure:
    """How a lid opens."""

    id: str
    latch: str
    key: Known = "unknown"
    source: Sources = ()


@dataclass(frozen=True, slots=True)
class Todo:
    """One thing to do before the battery goes off or after it is back."""

    id: str
    do: str
    when: When = ALWAYS
    source: Sources = ()


@dataclass(frozen=True, slots=True)
class AfterBattery:
    """What to do around the battery; `checked_none` names the lists found empty, `not_listed` says of the others that nobody looked."""

    before: dict[str, Todo] = field(default_factory=dict)
    after: dict[str, Todo] = field(default_factory=dict)
    checked_none: tuple[str, ...] = ()
    not_listed: str = ""
    source: Sources = ()
