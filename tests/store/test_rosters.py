"""Rows of rosters are written together, if what is kept is still what was looked at."""

from __future__ import annotations

from tests.samples.stores import ORGANISATION

from backprobe.store import entries, rosters
from backprobe.store.opened import Store


def test_rows_are_numbered_and_changed_in_place(store: Store) -> None:
    """Two new, then one changed and one new; vehicles and units do not mix; figures stay figures."""
    with store.writing() as connection:
        held = entries.held(connection, ORGANISATION)
        empty = rosters.mark_of(())
        new = [(None, {"plate": "LY 07", "lat_deg": 51.5}), (None, {"plate": "LY 08"})]
        assert rosters.write(held, new, kind="vehicles", mark=empty)
        kept = rosters.rows(connection, ORGANISATION, kind="vehicles")
        assert kept == ((1, {"plate": "LY 07", "lat_deg": 51.5}), (2, {"plate": "LY 08"}))
        assert not rosters.write(held, [(None, {"plate": "LY 09"})], kind="vehicles", mark=empty)
        more = [(2, {"plate": "LY 08", "yard": "Ω"}), (None, {"plate": "LY 09"})]
        assert rosters.write(held, more, kind="vehicles", mark=rosters.mark_of(kept))
        assert [values["plate"] for _, values in rosters.rows(connection, ORGANISATION, kind="vehicles")] == [
            "LY 07",
            "LY 08",
            "LY 09",
        ]
        assert rosters.rows(connection, ORGANISATION, kind="units") == ()
