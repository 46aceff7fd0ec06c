"""The whole Spanish catalogue, and how its sentences are joined."""

from __future__ import annotations

from collections.abc import Iterator

from backprobe.tongues.catalogue import pairs_in
from backprobe.tongues.spanish import (
    bus,
    desk,
    drawings,
    files,
    files_sheets,
    hand_over,
    job,
    join,
    join_fuses,
    join_joints,
    join_mount,
    journal,
    limits,
    mount,
    parked,
    phone,
    probe,
    prove,
    prove_patterns,
    reception,
    recording,
    server,
    together,
    walkround,
    walkround_vin,
    words,
)

BOOKS = (
    bus,
    desk,
    drawings,
    files,
    files_sheets,
    hand_over,
    job,
    join,
    join_fuses,
    join_joints,
    join_mount,
    journal,
    limits,
    mount,
    parked,
    phone,
    probe,
    prove,
    prove_patterns,
    reception,
    recording,
    server,
    together,
    walkround,
    walkround_vin,
    words,
)
JOINTS = {" and ": " y ", " or ": " o "}


def pairs() -> Iterator[tuple[str, str]]:
    """Each sentence of the engine with its Spanish."""
    for book in BOOKS:
        yield from pairs_in(book.SENTENCES)
