"""A bus log's answer."""

from __future__ import annotations

from dataclasses import replace

from tests.samples.bus_heard import VIN, cycle_heard

from backprobe.findings import Verdict
from backprobe.stages.bus.answer import answer

SHAPE = [
    *("ok", "format", "frames", "skipped", "vin", "key", "lowest", "rpm_max", "sampled_fast_enough"),
    *("verdict", "findings"),
]


def test_the_answer_has_its_shape() -> None:
    """Each field in its place, seconds from the first frame."""
    given = answer(cycle_heard(), vin=VIN).as_json()
    assert list(given) == SHAPE
    assert given["vin"] == {"value": VIN, "valid": True}
    assert given["key"] == {
        "on_s": 5.0,
        "off_s": 30.98,
        "cranks": [{"start_s": 9.0, "end_s": 9.88, "started": True}],
    }
    assert given["lowest"] == {"V": 10.2, "at_s": 9.0}
    assert (given["rpm_max"], given["sampled_fast_enough"], given["verdict"]) == (750.0, False, "thin")


def test_the_worst_finding_is_the_verdict() -> None:
    """Another vehicle's VIN fails whatever else holds."""
    assert answer(cycle_heard(), vin="1G4AH59H45G118341").verdict is Verdict.FAILS


def test_nothing_is_asked_of_a_starter_that_is_not_there() -> None:
    """An electric vehicle: no dip to be proven, and READY in the place of the crank."""
    heard = cycle_heard(on_s=1e9, crank_s=1e9)
    given = answer(heard, has_crank=False)
    assert "bus_dip" not in {finding.id for finding in given.findings}
    asked = [finding.next for finding in given.findings if finding.next]
    assert any("READY" in each for each in asked)
    assert not any("crank" in each for each in asked)


def test_what_was_not_heard_is_null() -> None:
    """No VIN, no voltage, no speed."""
    heard = replace(cycle_heard(None), volts=None, rpm_max=None)
    given = answer(heard).as_json()
    assert (given["vin"], given["lowest"], given["rpm_max"]) == (None, None, None)


def test_the_system_is_told_by_the_volts_unless_it_is_known() -> None:
    """28 V are a 24 V system's; what the job says goes before."""
    assert answer(cycle_heard(scale=2.0)).system_V == 24
    assert answer(cycle_heard(), system_V=24).system_V == 24
    assert answer(replace(cycle_heard(), volts=None)).system_V == 12
