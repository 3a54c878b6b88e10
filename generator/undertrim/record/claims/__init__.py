"""Claims files: what somebody found out about cars, read within limits, each answer by itself (schema/claim.schema.json)."""

from undertrim.record.claims.answer import FOUND, Answer, Found, Photo
from undertrim.record.claims.new_vehicle import NewVehicle
from undertrim.record.claims.reading import LAYOUT, SHARED, TABLES, Bad, ClaimsFile, of_source, read

__all__ = [
    "FOUND",
    "LAYOUT",
    "SHARED",
    "TABLES",
    "Answer",
    "Bad",
    "ClaimsFile",
    "Found",
    "NewVehicle",
    "Photo",
    "of_source",
    "read",
]
