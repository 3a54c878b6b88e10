"""How the records of a collection were before: at a revision of git, or in another folder. Nothing here writes into the collection."""
