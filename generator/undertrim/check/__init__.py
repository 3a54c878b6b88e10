"""Finding what is wrong with records: rules, the runner that applies them, and reports."""
