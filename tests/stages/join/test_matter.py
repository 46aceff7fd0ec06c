"""What is missing of a matter is asked for once."""

from __future__ import annotations

from backprobe.findings import Verdict
from backprobe.stages.join.matter import either, findings_of, matter


def test_all_that_is_missing_stands_in_one_finding():
    """Each once, in the order in which it was missed; the first is the next thing to do."""
    fine = either("a", "A", faults=(), fine="well", then="nothing")
    each = matter("ground", (fine, "this", "that", "this"), table="[ground]")
    first, asked = findings_of(each)
    assert first.verdict is Verdict.HOLDS
    assert (asked.id, asked.verdict) == ("join_ground_told", Verdict.OPEN)
    assert asked.because == "not told: this; that"
    assert asked.next == "complete [ground] of the job sheet: this"


def test_faults_are_all_named():
    """A finding with two faults fails for both."""
    bad = either("a", "A", faults=("one", "two"), fine="well", then="mend it")
    assert (bad.verdict, bad.because, bad.next) == (Verdict.FAILS, "one; two", "mend it")
