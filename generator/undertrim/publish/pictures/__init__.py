"""Pictures for page and paper alike, and which of them goes with a fact."""
