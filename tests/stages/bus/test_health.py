"""How the bus itself does."""

from __future__ import annotations

from dataclasses import replace

import pytest
from tests.samples.bus_heard import cycle_heard

from backprobe.findings import Finding, Verdict
from backprobe.stages.bus.health import health_findings
from backprobe.stages.bus.heard import Health, Heard, SilentNode


def found(heard: Heard) -> dict[str, Finding]:
    """The findings by their ids."""
    return {finding.id: finding for finding in health_findings(heard)}


def of(**health: object) -> Heard:
    """A log of 10,000 frames with this state of the bus."""
    return replace(cycle_heard(), frames=10_000, health=Health(nodes=5, **health))  # type: ignore[arg-type]


def test_a_sound_bus() -> None:
    """No errors, room to spare, nobody silent."""
    findings = found(cycle_heard())
    assert {name: str(finding.verdict) for name, finding in findings.items()} == {
        "bus_errors": "holds",
        "bus_load": "holds",
        "bus_silent": "holds",
    }


@pytest.mark.parametrize(("between", "verdict"), [(0, Verdict.HOLDS), (10, Verdict.HOLDS), (11, Verdict.FAILS)])
def test_one_error_in_a_thousand_is_the_limit(between: int, verdict: Verdict) -> None:
    """10 of 10,000 are allowed, 11 are not."""
    finding = found(of(errors_between=between))["bus_errors"]
    assert (finding.verdict, finding.value) == (verdict, between / 10)
    assert "common practice, no source" in (finding.limit.warrant if finding.limit else "")


def test_errors_before_the_first_good_frame_are_told_apart() -> None:
    """A logger that wakes before the bus hears nothing but errors."""
    finding = found(of(errors_before=250))["bus_errors"]
    assert finding.verdict is Verdict.HOLDS
    assert "250 before the first good one" in finding.because


@pytest.mark.parametrize(
    ("shares", "verdict"),
    [((0.40, 0.48), Verdict.HOLDS), ((0.60, 0.73), Verdict.THIN), ((0.75, 0.92), Verdict.FAILS)],
)
def test_the_load_has_a_range(shares: tuple[float, float], verdict: Verdict) -> None:
    """How many bits were stuffed a log does not say: the whole range must be inside 70 %."""
    finding = found(of(busiest=shares, average=(0.3, 0.4)))["bus_load"]
    assert (finding.verdict, finding.value, finding.high) == (verdict, 100 * shares[0], 100 * shares[1])
    assert "250 kbit/s is assumed" in finding.because


def test_a_silent_computer_is_named_with_its_time() -> None:
    """Who, from when to when, and what to do, with the caution."""
    silent = (SilentNode(11, 15.0, 20.0), SilentNode(3, 25.0, None))
    finding = found(of(silent=silent))["bus_silent"]
    assert finding.verdict is Verdict.OPEN
    assert "computer 11 was silent from 15.0 s until 20.0 s" in finding.because
    assert "computer 3 was silent from 25.0 s and did not come back" in finding.because
    assert "listen only" in (finding.next or "")


def test_a_short_log_does_not_show_who_falls_silent() -> None:
    """Nine seconds say nothing of it."""
    assert "bus_silent" not in found(replace(cycle_heard(), length_s=9.0))


def test_a_car_s_bus_is_counted_and_not_guessed() -> None:
    """Nothing but short identifiers."""
    finding = found(replace(cycle_heard(), health=Health(eleven_bit=500)))["bus_quantities"]
    assert finding.verdict is Verdict.OPEN
    assert "counted, not guessed" in finding.because


def test_what_the_log_lacks_is_said() -> None:
    """Lost packets, torn lines and a clock that was set back, the first with its place."""
    heard = replace(
        cycle_heard(),
        lost_messages=2,
        skipped={"torn_line": 3, "clock_set_back": 1, "eleven_bit": 9},
        places=("a.log, line 7: (0.5 (a frame)",),
    )
    findings = found(heard)
    assert findings["bus_lost"].verdict is Verdict.THIN
    assert "2 long messages lack packets" in findings["bus_lost"].because
    assert findings["bus_log"].because.startswith(
        "passed over: 3 lines that hold no whole frame, 1 times that fall back"
    )
    assert "line 7" in findings["bus_log"].because
