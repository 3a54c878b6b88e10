"""The visit: one car of a record, the openings worked at, and the gear that goes into each. All that a person reads is a view of one."""
