"""What became of the turns of the key, as findings."""

from dataclasses import replace

import pytest
from tests.samples.prove_cases import at, healthy, proven, row

from backprobe.evidence.unit_sheet import Reporting, UnitSheet
from backprobe.evidence.unit_sheet import Supply as SheetSupply
from backprobe.findings import Verdict
from backprobe.stages.prove.delays import Estimate
from backprobe.stages.prove.setup import Timing, timing_of
from backprobe.stages.prove.turn_findings import delay_limit, through_crank, turned, unturned
from backprobe.stages.prove.turns import TurnState

PROOF = proven(healthy()).proof
SHEET = UnitSheet(
    name="L",
    leads=(),
    maker=None,
    supply=SheetSupply(least_V=8, most_V=32),
    reporting=Reporting(debounce_on_s=2, debounce_off_s=20, interval_s=60),
)


def with_state(state):
    """The proof with its off in another state."""
    return replace(PROOF, turns=(*PROOF.turns[:-1], replace(PROOF.turns[-1], state=state)))


def test_an_off_that_was_reported():
    """One turn, its delay with twice the standard uncertainty, against what is usual without a sheet."""
    found = turned(PROOF, on=False)
    assert (found.id, found.verdict, found.value) == ("prove_off", Verdict.HOLDS, PROOF.off_delay.value_s)
    assert found.low == PROOF.off_delay.value_s - 2 * PROOF.off_delay.u_s
    assert (found.limit.value, found.unit) == (60.0, "s")
    assert found.because.startswith("1 of 1 turn reported; the unit's clock, ")
    assert found.next is None


def test_no_delay_is_below_zero():
    """2.4 s ± 4 s reach from 0, as nobody reports a turn before it; a clock that is behind is shown as it is."""
    assert turned(replace(PROOF, on_delay=Estimate(2.4, 2.0)), on=True).low == 0.0
    assert turned(replace(PROOF, on_delay=Estimate(-9.0, 1.0)), on=True).low == -9.0


@pytest.mark.parametrize(("state", "verdict"), [(TurnState.MISSING, Verdict.FAILS), (TurnState.OPEN, Verdict.OPEN)])
def test_a_turn_that_was_not_reported(state, verdict):
    """Named with its moment, and the script is to be turned again."""
    found = turned(with_state(state), on=False)
    assert found.verdict is verdict
    assert f"0 of 1 turn reported; 'off' at {at(800)}: {state}" in found.because
    assert "through the script again" in found.next


def test_a_delay_beyond_its_limit():
    """It fails where the unit's clock is known; else it may be the clock, and is open."""
    late = replace(PROOF, on_delay=Estimate(40.0, 2.0))
    assert turned(late, on=True).verdict is Verdict.FAILS
    alone = turned(replace(late, clock_offset=None), on=True)
    assert alone.verdict is Verdict.OPEN
    assert alone.because.endswith("the delay and the offset of the unit's clock together")


def test_nothing_measured_is_open():
    """No delay, no value."""
    found = turned(replace(PROOF, on_delay=None), on=True)
    assert (found.verdict, found.value, found.low, found.high) == (Verdict.OPEN, None, None, None)


def test_limits_by_the_sheet_or_by_practice():
    """Debounce and 10 s; without a sheet 15 s and 60 s."""
    assert [delay_limit(timing_of(SHEET), on=on).value for on in (True, False)] == [12.0, 30.0]
    assert delay_limit(timing_of(SHEET), on=False).basis == "20 s debounce by the unit's sheet, and 10 s"
    assert [delay_limit(Timing(), on=on).value for on in (True, False)] == [15.0, 60.0]
    assert delay_limit(Timing(), on=True).basis == "a healthy unit reports on within that time"


def test_a_crank_shorter_than_the_off_delay_proves_nothing_of_the_wire():
    """2 s of crank, off after 20 s: the unit did not restart, and that is all."""
    found = through_crank(PROOF)
    assert found.verdict is Verdict.HOLDS
    assert found.because.startswith("no restart in 1 crank, the longest 2.0 s. That it stayed on proves nothing")


def test_a_crank_longer_than_the_off_delay_would_show_it():
    """Off after 0.5 s: an ignition lost for 2 s would have been reported."""
    found = through_crank(replace(PROOF, off_delay=Estimate(0.5, 0.3)))
    assert found.because.endswith("off is reported after 0.5 s: an ignition lost in it would show")


def test_a_script_without_a_crank():
    """Open: what a unit does in a crank shows only there."""
    found = through_crank(proven(healthy(), [(0, "off"), (300, "on"), (800, "off")]).proof)
    assert (found.verdict, found.because) == (Verdict.OPEN, "the script holds no crank")
    assert "in a crank" in found.next


def test_a_unit_that_restarts_in_the_crank():
    """It fails, and says where to look."""
    found = through_crank(proven([*healthy(), row(506, "boot", 1)]).proof)
    assert (found.verdict, found.because) == (Verdict.FAILS, "pattern: resets in crank")
    assert found.next.startswith("look at the supply's tap")


def test_a_unit_of_which_no_turn_was_reported():
    """Nothing can be said of the crank either."""
    silent = proven([row(-60, "boot"), *(row(t, "heartbeat") for t in range(-30, 1200, 60))]).proof
    assert through_crank(silent).verdict is Verdict.OPEN


def test_what_nobody_turned():
    """None on a clean script; each named, and open, where there are some."""
    assert unturned(PROOF) == ()
    rows = [*healthy(), row(620, "ignition_off", 0), row(640, "ignition_on", 1)]
    (found,) = unturned(proven(rows).proof)
    assert found.verdict is Verdict.OPEN
    assert f"off at {at(620)}, on at {at(640)}" in found.because
