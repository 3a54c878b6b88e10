"""Records as people write them: reading, schema, typed model, units and vocabulary."""
