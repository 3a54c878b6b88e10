"""How sure a record's facts are: what changed since it was verified, what is unknown or disputed, how old the evidence is."""
