"""What follows from a record: variants, procedures, tallies. Nothing here reads or writes files."""
