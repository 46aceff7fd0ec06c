"""The unit on the bench: ready, or the dash stays shut."""

from __future__ import annotations

from dataclasses import replace

import pytest

from backprobe.evidence.meter import Meter
from backprobe.evidence.walkround import Bench
from backprobe.findings import Verdict
from backprobe.stages.walkround.unit_ready import CHARGE, MEASURE_AGAIN, SHUT, unit_ready

METER = Meter(name="basic", percent=0.5, counts=2)
SERIAL = "LN2-00417"
READY = Bench(
    serial=SERIAL,
    activated=True,
    firmware="4.2.1",
    firmware_wanted="4.2.1",
    backup_V=3.94,
    backup_least_V=3.6,
    lights=("network: one flash a second",),
)


def only(bench: Bench, serial: str | None = SERIAL):
    """The one finding on a unit."""
    (found,) = unit_ready(bench, serial, meter=METER)
    return found


def test_a_ready_unit_holds_with_its_figures():
    """3.94 V ± (0.5 % of 3.94 + 2 counts of 0.01) = ± (0.0197 + 0.02) = ± 0.04 V, 3.90 V at least: over 3.6 V."""
    found = only(READY)
    assert found.verdict is Verdict.HOLDS
    assert found.because == "unit ready: firmware 4.2.1, backup 3.94 ± 0.04 V (≥ 3.6 V)"


@pytest.mark.parametrize(
    ("change", "words"),
    [
        ({"serial": "LN2-00471"}, "serial number LN2-00417 on the sheet, LN2-00471 on the unit"),
        ({"activated": False}, "it is not activated"),
        ({"firmware": "4.1.9"}, "firmware 4.1.9, 4.2.1 is wanted"),
        ({"lights": ()}, "none of its lights came on"),
    ],
)
def test_a_unit_that_is_not_ready_fails_and_the_dash_stays_shut(change: dict[str, object], words: str):
    """Each by itself."""
    found = only(replace(READY, **change))
    assert (found.verdict, found.because) == (Verdict.FAILS, words)
    assert (found.next or "").startswith(SHUT)


@pytest.mark.parametrize("name", ["serial", "activated", "firmware", "firmware_wanted", "backup_V", "lights"])
def test_what_was_not_looked_at_is_open_and_the_dash_stays_shut(name: str):
    """A unit of which it is not known that it is ready is not ready."""
    found = only(replace(READY, **{name: None}))
    assert found.verdict is Verdict.OPEN
    assert (found.next or "").startswith(SHUT)


def test_a_voltage_without_its_least_says_nothing():
    """It is told, and asked for."""
    found = only(replace(READY, backup_least_V=None))
    assert found.because == "its backup battery shows 3.94 V; the least it must have is not said"


def test_a_unit_without_a_battery_is_asked_for_none():
    """Where `backup = false` says so."""
    found = only(replace(READY, backup=False, backup_V=None, backup_least_V=None))
    assert (found.verdict, found.because) == (Verdict.HOLDS, "unit ready: firmware 4.2.1")


def test_a_serial_that_the_sheet_lacks_is_open():
    """It is written into the sheet, from the unit."""
    found = only(READY, serial=None)
    assert (found.verdict, found.next) == (Verdict.OPEN, "write the serial number LN2-00417 into the job sheet")


def test_a_serial_in_other_capitals_is_the_same():
    """Spaces and capitals aside."""
    assert only(replace(READY, serial="ln2-00417 ")).verdict is Verdict.HOLDS


@pytest.mark.parametrize(
    ("volts", "verdict", "then"),
    [(3.62, Verdict.THIN, MEASURE_AGAIN), (3.59, Verdict.FAILS, CHARGE), (3.6, Verdict.THIN, MEASURE_AGAIN)],
)
def test_a_backup_battery_that_does_not_hold_stands_by_itself_with_its_figures(
    volts: float, verdict: Verdict, then: str
):
    """3.62 V ± (0.0181 + 0.02) reaches down to 3.58 V, below 3.6 V; 3.59 V is below it.

    3.6 V may have been read as 3.60 V or to 0.1 V; the coarser counts: ± (0.018 + 0.2).
    """
    ready, battery = unit_ready(replace(READY, backup_V=volts), SERIAL, meter=METER)
    assert (ready.verdict, ready.because) == (
        Verdict.HOLDS,
        "all but its backup battery is well: firmware 4.2.1",
    )
    assert (battery.id, battery.verdict, battery.next) == ("unit_backup", verdict, then)
    assert (battery.value, battery.unit) == (volts, "V")
    assert battery.limit is not None
    assert battery.limit.value == 3.6
    if volts == 3.62:
        assert battery.low == pytest.approx(3.5819)
