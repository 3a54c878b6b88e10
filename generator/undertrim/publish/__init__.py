"""Site, PDF and data made from checked records."""
