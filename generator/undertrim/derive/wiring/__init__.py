"""What follows from the wiring of a record: meter readings, button ladders, plugs."""
