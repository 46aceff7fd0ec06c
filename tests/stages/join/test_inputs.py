"""The unit's inputs against the signals' real levels."""

from __future__ import annotations

from dataclasses import replace

from tests.samples.wiring import (
    MADE,
    TOLD,
    built,
    verdicts,
)

from backprobe.evidence.join_sheet import SignalLevels
from backprobe.evidence.joint import Joint, Method
from backprobe.findings import Verdict


def test_an_input_is_held_against_its_thresholds():
    """Active low: 0.2 V when on, at most 1.0 V; 12.3 V when off, at least 4.0 V. A lamp's 2.4 V is neither."""
    on_white = Joint(lead="door", wire="White", method=Method.CRIMPED_BUTT, **MADE)
    case = built(on_white)

    def at(level: SignalLevels) -> dict[str, Verdict]:
        return verdicts(replace(case, sheet=replace(case.sheet, join=replace(TOLD, levels=(level,)))))

    good = at(SignalLevels(lead="door", on_V=0.2, off_V=12.3))
    assert (good["join_door_low"], good["join_door_high"]) == (Verdict.HOLDS, Verdict.HOLDS)
    assert at(SignalLevels(lead="door", on_V=2.4, off_V=12.3))["join_door_low"] is Verdict.FAILS
    assert at(SignalLevels(lead="door", on_V=0.2, floats_off=True))["join_door_circuit"] is Verdict.HOLDS
    assert at(SignalLevels(lead="door", on_V=12.3, floats_off=True))["join_door_circuit"] is Verdict.FAILS
    assert at(SignalLevels(lead="door", on_V=0.2, off_V=12.3, coil=True))["join_door_circuit"] is Verdict.FAILS
    assert verdicts(case)["join_inputs_told"] is Verdict.OPEN
