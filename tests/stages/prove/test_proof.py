"""The verdict, and the proof as JSON."""

from dataclasses import replace

import pytest
from tests.samples.prove_cases import healthy, proven

from backprobe.findings import Verdict
from backprobe.stages.prove.delays import Estimate
from backprobe.stages.prove.parked import Parked
from backprobe.stages.prove.patterns import INCOMPLETE, Pattern, PatternId
from backprobe.stages.prove.position import Position
from backprobe.stages.prove.supply import Supply
from backprobe.stages.prove.turns import TurnState

PROOF = proven(healthy()).proof


def with_state(state):
    """The proof with one turn in another state."""
    return replace(PROOF, turns=(*PROOF.turns[:-1], replace(PROOF.turns[-1], state=state)))


@pytest.mark.parametrize(
    ("proof", "verdict"),
    [
        (PROOF, Verdict.HOLDS),
        (with_state(TurnState.OPEN), Verdict.OPEN),
        (with_state(TurnState.MISSING), Verdict.FAILS),
        (replace(PROOF, off_delay=None), Verdict.OPEN),
        (replace(PROOF, on_delay=Estimate(40.0, 2.0)), Verdict.FAILS),
        (replace(PROOF, on_delay=Estimate(40.0, 2.0), clock_offset=None), Verdict.OPEN),
        (replace(PROOF, parked=Parked(1.0, 0.5, lost=True)), Verdict.FAILS),
        (replace(PROOF, position=Position(Verdict.THIN)), Verdict.THIN),
        (replace(PROOF, position=Position(Verdict.OPEN)), Verdict.OPEN),
        (replace(PROOF, position=Position(Verdict.FAILS)), Verdict.FAILS),
        (replace(PROOF, supply=Supply(Verdict.FAILS)), Verdict.FAILS),
        (replace(PROOF, supply=Supply(Verdict.OPEN)), Verdict.HOLDS),
    ],
)
def test_the_verdict_is_the_worst_of_its_parts(proof, verdict):
    """A supply that nobody measured is no part of it."""
    assert proof.verdict is verdict


@pytest.mark.parametrize("pattern", PatternId)
def test_a_pattern_is_a_fault_or_keeps_the_evidence_incomplete(pattern):
    """The one fails, the other is open."""
    proof = replace(PROOF, patterns=(Pattern(pattern, 0.9),))
    assert proof.verdict is (Verdict.OPEN if pattern in INCOMPLETE else Verdict.FAILS)
    assert proof.names(pattern)


def test_figures_are_rounded_to_their_digits():
    """Delays and distance to 0.1."""
    found = PROOF.as_json()
    assert found["off_delay_s"] == {"value": 20.4, "u": 2.3}
    assert found["first_fix_s"] == 0.0
    assert found["left_out"] == {}
    assert "other_unit" not in found
