"""Devices that somebody fitted before."""

from __future__ import annotations

from backprobe.evidence.walkround import Fate, FoundDevice, Walkround
from backprobe.findings import Verdict
from backprobe.stages.walkround.previous_device import ASK, LOOK, previous_device


def with_device(fate: Fate | None = None, consent: str | None = None) -> Walkround:
    """A walkround on which a tracker was found."""
    return Walkround(devices=(FoundDevice(what="a tracker", fate=fate, consent=consent),))


def test_looked_for_and_none_found_holds():
    """That somebody looked must be said."""
    found = previous_device(Walkround(looked_for_devices=True))
    assert (found.verdict, found.because) == (Verdict.HOLDS, "no other device found")


def test_nobody_looked_is_open():
    """Said or not said."""
    for looked in (None, False):
        found = previous_device(Walkround(looked_for_devices=looked))
        assert (found.verdict, found.next) == (Verdict.OPEN, LOOK)


def test_left_or_removed_by_consent_holds():
    """What, what became of it, and by whose consent; that one looked is plain then."""
    for fate in Fate:
        found = previous_device(with_device(fate, "Maud Linden"))
        assert found.verdict is Verdict.HOLDS
        assert found.because == f"found: a tracker ({fate} by consent of Maud Linden)"


def test_removed_without_consent_fails():
    """It is somebody's."""
    found = previous_device(with_device(Fate.REMOVED))
    assert (found.verdict, found.next) == (Verdict.FAILS, ASK)
    assert found.because == "a tracker was removed, and nobody is named who consented"


def test_left_without_consent_and_fate_unknown_are_open():
    """Both can still be asked."""
    assert previous_device(with_device(Fate.LEFT)).verdict is Verdict.OPEN
    assert previous_device(with_device(None, "Maud Linden")).because == "a tracker: left or removed is not said"


def test_each_device_counts():
    """One that is settled does not speak for another."""
    two = Walkround(
        looked_for_devices=True,
        devices=(FoundDevice(what="a", fate=Fate.LEFT, consent="x"), FoundDevice(what="b", fate=Fate.REMOVED)),
    )
    assert previous_device(two).because == "b was removed, and nobody is named who consented"
