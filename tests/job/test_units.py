"""A unit that the server says is in another vehicle fails in this one, until the server takes that back."""

from __future__ import annotations

from tests.samples.journals import Phone

from backprobe.findings import Verdict
from backprobe.job.fold import fold
from backprobe.job.units import unit_findings

REFUSED = {"serial": "LN2-00417", "held_by": "LY-2026-07", "vehicle": "5ZLDR7HV5KR200417"}


def test_a_refused_unit_fails() -> None:
    """The finding names the unit, the job and the vehicle that has it."""
    server = Phone("server")
    server.say("unit_refused", REFUSED)
    state = fold(server.entries)
    [finding] = unit_findings(state)
    assert state.settled
    assert (finding.id, finding.verdict) == ("unit_elsewhere", Verdict.FAILS)
    assert finding.because == ("this serial number is in another vehicle: job LY-2026-07, vehicle 5ZLDR7HV5KR200417")


def test_taken_back_it_is_gone() -> None:
    """A withdrawn refusal, and a claim, are no finding."""
    server = Phone("server")
    server.withdraws(server.say("unit_refused", {**REFUSED, "vehicle": None}))
    server.say("unit_claimed", {"serial": "LN2-00417", "vehicle": None})
    assert unit_findings(fold(server.entries)) == ()
