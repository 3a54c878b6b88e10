"""Which plugs no meter goes on."""

from undertrim.record.model import Connector, VehicleRecord


def circuit(record: VehicleRecord, connector: Connector) -> str:
    """The circuit of the tether that a plug belongs to: ordinary, restraint or high-voltage; ordinary if it names none."""
    name, _, tether = connector.at.partition("/")
    part = record.parts.get(name)
    return part.tethers[tether].circuit if part and tether in part.tethers else "ordinary"
