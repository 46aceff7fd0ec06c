"""The VIN that the vehicle says of itself."""

from __future__ import annotations

from dataclasses import replace

import pytest
from tests.samples.bus_heard import VIN, cycle_heard

from backprobe.findings import Verdict
from backprobe.stages.bus.heard import VinHeard
from backprobe.stages.bus.vin import vin_finding, vin_said, vin_valid

OTHER = "1G4AH59H45G118341"  # the example of 49 CFR 565.15, its check digit is right


@pytest.mark.parametrize(
    ("said", "wanted", "verdict", "word"),
    [
        (VIN, None, Verdict.HOLDS, "check digit are right"),
        (VIN, VIN, Verdict.HOLDS, "as the job does"),
        (VIN, " 1m8gdm9axkp-042788 ", Verdict.HOLDS, "as the job does"),
        (VIN, OTHER, Verdict.FAILS, f"the job says {OTHER}"),
        ("1M8GDM9A0KP042788", None, Verdict.FAILS, "position 9 is 0"),
        ("1M8GDM9AXKP04278", None, Verdict.FAILS, "16 characters"),
        (None, VIN, Verdict.OPEN, "only when they are asked"),
    ],
)
def test_the_vin_against_the_job_s(said: str | None, wanted: str | None, verdict: Verdict, word: str) -> None:
    """Right, the job's, another's, wrong, or not said."""
    finding = vin_finding(cycle_heard(said), wanted=wanted)
    assert finding is not None
    assert (finding.verdict, finding.id) == (verdict, "bus_vin")
    assert word in finding.because
    assert (finding.next is None) == (verdict is Verdict.HOLDS)


def test_nothing_said_and_nothing_asked_is_no_finding() -> None:
    """Then there is nothing to compare."""
    assert vin_finding(cycle_heard(None), wanted=None) is None
    assert vin_said(cycle_heard(None)) is None


def test_computers_that_disagree_are_a_matter_to_be_decided() -> None:
    """A computer of another vehicle was fitted, or this one's was set wrongly."""
    heard = replace(cycle_heard(), vins=(VinHeard(VIN, 0, 3), VinHeard(OTHER, 33, 1)))
    finding = vin_finding(heard, wanted=VIN)
    assert finding is not None
    assert finding.verdict is Verdict.OPEN
    assert VIN in finding.because
    assert OTHER in finding.because


def test_a_european_vin_has_no_check_digit_to_be_wrong() -> None:
    """Only for North America is position 9 judged."""
    assert vin_valid("YV2XTY0A5KA123456")
    assert not vin_valid("YV2XTY0A5KA12345O")
