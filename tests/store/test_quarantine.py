"""What is not taken is kept all the same, once, until somebody decides."""

from __future__ import annotations

from tests.samples.stores import AT, ORGANISATION

from backprobe.store import quarantine
from backprobe.store.opened import Store
from backprobe.store.quarantine import SetAside


def test_the_same_bytes_are_set_aside_once(store: Store) -> None:
    """Handed in twice, listed once, byte for byte, until it is decided on; the bytes stay."""
    item = SetAside(raw=b"\xff not an entry", code="journal", error="not readable", entry=None, job=None)
    with store.writing() as connection:
        for _ in range(2):
            quarantine.set_aside(connection, ORGANISATION, items=[item], received_at=AT, phone="p1")
        [row] = quarantine.listed(connection, ORGANISATION)
        assert (row["raw"], row["code"], row["phone"]) == (item.raw, "journal", "p1")
        quarantine.decide(connection, ORGANISATION, number=row["number"], decision="leave", at=AT)
        assert quarantine.listed(connection, ORGANISATION) == ()
        kept = quarantine.one(connection, ORGANISATION, number=row["number"])
        assert kept is not None
        assert (kept["raw"], kept["decision"]) == (item.raw, "leave")
        assert quarantine.one(connection, "other", number=row["number"]) is None
