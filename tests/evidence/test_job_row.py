"""A job as a line of a list."""

from __future__ import annotations

from backprobe.evidence.job_row import COLUMNS, JobRow


def test_what_is_not_known_is_none():
    """A job that was just made: no vehicle, no unit, no place, nothing that fails."""
    job = JobRow(id="j1", name="LY 07", state="open", verdict="open")
    assert [name for name in COLUMNS if getattr(job, name) not in (None, 0)] == ["id", "name", "state", "verdict"]
    assert COLUMNS[0] == "id"
