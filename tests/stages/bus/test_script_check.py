"""A key script that a hand wrote, against the bus."""

from __future__ import annotations

from dataclasses import replace

import pytest
from tests.samples.bus_heard import cycle_heard

from backprobe.evidence.key_turn import KeyScript
from backprobe.findings import Finding, Verdict
from backprobe.formats.key_script_csv import read_key_script
from backprobe.stages.bus.heard import Heard
from backprobe.stages.bus.script import script_lines
from backprobe.stages.bus.script_check import script_finding

NOON_S = 1_774_944_000.0
HEARD = replace(cycle_heard(), stamped_s=NOON_S)


def script(*, later_s: float = 0.0, without: str = "") -> KeyScript:
    """What a hand would write down that turns the key as the bus shows it."""
    lines = [line for line in script_lines(HEARD, start_s=NOON_S + later_s) if not line.endswith(f",{without}")]
    return read_key_script(lines, file="key-script.csv")


def found(heard: Heard, written: KeyScript) -> Finding:
    """The finding, which must be there."""
    finding = script_finding(heard, written)
    assert finding is not None
    return finding


@pytest.mark.parametrize(
    ("later_s", "verdict", "value", "side"),
    [
        (0.0, Verdict.HOLDS, 0.0, "earlier"),
        (4.0, Verdict.HOLDS, 4.0, "4.0 s earlier"),
        (-10.0, Verdict.HOLDS, 10.0, "10.0 s later"),
        (15.0, Verdict.FAILS, 15.0, "15.0 s earlier"),
    ],
)
def test_ten_seconds_are_a_hand_s(later_s: float, verdict: Verdict, value: float, side: str) -> None:
    """A script that is 4 s late holds; one of a clock that is 15 s off is to be righted first."""
    finding = found(HEARD, script(later_s=later_s))
    assert (finding.verdict, finding.value) == (verdict, value)
    assert side in finding.because
    assert (finding.next is None) == (verdict is Verdict.HOLDS)


def test_a_turn_that_nobody_wrote_down_fails() -> None:
    """The bus shows a crank, the script has none."""
    finding = found(HEARD, script(without="crank"))
    assert finding.verdict is Verdict.FAILS
    assert "the script lacks crank" in finding.because


def test_another_day_s_script_is_not_compared() -> None:
    """No turn lies near another; neither does a log without a time of day, or no script."""
    assert script_finding(HEARD, script(later_s=86_400.0)) is None
    assert script_finding(cycle_heard(), script()) is None
    assert script_finding(HEARD, None) is None
