"""The derived facts of a record as plain data: what the page shows, the sheet prints and the JSON beside the page holds."""
