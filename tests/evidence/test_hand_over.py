"""How a job ends, as it is stated."""

from __future__ import annotations

from backprobe.evidence.hand_over import End, HandOver, Missing


def test_a_job_has_three_ends():
    """The words that sheets and records use."""
    assert [str(end) for end in End] == ["proven", "provisional", "abandoned"]


def test_only_the_end_must_be_said():
    """All else is empty until somebody says it; whether that is enough for the end is judged elsewhere."""
    ended = HandOver(end=End.PROVEN)
    assert (ended.missing, ended.undone, ended.restored, ended.why, ended.told_driver) == ((), (), (), None, ())
    assert Missing(what="one parked night") == Missing(what="one parked night", owed_by=None, until=None)
