"""What a journal leaves open."""

from backprobe.findings import Stage, Verdict
from backprobe.job.disputed import disputed


def test_each_matter_is_a_finding_that_asks_for_a_decision():
    """Two wires claimed for one slot: open, in the words that the journal gives; nothing without a matter."""
    (found,) = disputed(["tap_supply: Blue or Red"])
    assert (found.id, found.stage, found.verdict) == ("journal_open", Stage.HAND_OVER, Verdict.OPEN)
    assert found.because == "tap_supply: Blue or Red"
    assert found.next is not None
    assert disputed([]) == ()
