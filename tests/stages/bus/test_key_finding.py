"""The key's cycle in words."""

from __future__ import annotations

from dataclasses import replace

from tests.samples.bus_frames import key_cycle
from tests.samples.bus_heard import cycle_heard, listened

from backprobe.findings import Verdict
from backprobe.stages.bus.key_finding import clock_finding, distance_finding, key_finding


def test_a_whole_cycle_is_told_in_its_order() -> None:
    """On with its volts, crank, running, off."""
    finding = key_finding(cycle_heard())
    assert finding.verdict is Verdict.HOLDS
    assert finding.because == (
        "key on at 5.0 s with 12.40 V; crank at 9.0 s, running 0.9 s later; "
        "off at 31.0 s, when the engine stood; the first computers fell silent at 29.9 s"
    )


def test_a_start_that_fails_is_said_so() -> None:
    """The engine stands again after 0.8 s."""
    assert "crank at 9.0 s for 0.8 s; the engine did not start" in key_finding(cycle_heard(starts=False)).because


def test_a_log_that_breaks_off_in_the_crank() -> None:
    """Neither started nor not."""
    heard = listened([frame for frame in key_cycle() if frame.time_s < 9.5]).heard
    assert "crank at 9.0 s; the log breaks off in it" in key_finding(heard).because


def test_no_turn_of_the_key_is_open() -> None:
    """Driving from the first frame to the last; what to log is said, with the caution."""
    heard = listened([frame for frame in key_cycle() if 12.0 < frame.time_s < 25.0]).heard
    finding = key_finding(heard)
    assert finding.verdict is Verdict.OPEN
    assert finding.because.startswith("the engine ran when the log began; no turn of the key in 13 s")
    assert "begin the log with the key off" in (finding.next or "")
    assert "listen only" in (finding.next or "")


def test_an_engine_that_stood_is_said_so() -> None:
    """Key on from the first frame to the last, and nothing more."""
    heard = listened([frame for frame in key_cycle(crank_s=99.0) if 6.0 < frame.time_s < 20.0]).heard
    assert (
        key_finding(heard).because == "the key was on when the log began; no turn of the key in 14 s; the engine stood"
    )


def test_nobody_reports_an_engine_speed() -> None:
    """Then no crank can be seen."""
    frames = [frame for frame in key_cycle(asleep=False) if frame.can_id >> 8 & 0xFFFF != 61444]
    assert "no computer reports an engine speed" in key_finding(listened(frames).heard).because


def test_the_distance_is_told_with_what_says_it() -> None:
    """It is no limit's matter: the figure is for the record."""
    finding = distance_finding(replace(cycle_heard(), distance=(917, 424_983.515)))
    assert finding is not None
    assert (finding.verdict, finding.as_json()["value"], finding.unit) == (Verdict.HOLDS, 424_983.5, "km")
    assert "SPN 917" in finding.because
    assert distance_finding(cycle_heard()) is None


def test_the_vehicle_s_clock_against_the_logger_s() -> None:
    """It said 12:00:00 at 3.0 s; the logger's clock showed 12:00:10 then: 10 s behind."""
    noon_s = 1_710_504_000.0
    heard = replace(cycle_heard(), clock=(noon_s, 3.0), stamped_s=noon_s + 7.0)
    finding = clock_finding(heard)
    assert finding is not None
    assert finding.value == -10.0
    assert "2024-03-15 12:00:00 UTC at 3.0 s, 10.0 s behind the logger's" in finding.because


def test_a_logger_that_knows_no_time_compares_nothing() -> None:
    """The vehicle's own clock is told alone."""
    finding = clock_finding(replace(cycle_heard(), clock=(1_710_504_000.0, 3.0)))
    assert finding is not None
    assert finding.value is None
    assert clock_finding(cycle_heard()) is None
