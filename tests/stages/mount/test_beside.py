"""Prediction beside measurement."""

from __future__ import annotations

from dataclasses import replace

from tests.samples.mount import BOX, ROOF, sheet, thin_sky
from tests.samples.receptions import reception

from backprobe.evidence.report import Fix, Report
from backprobe.findings import Standing, Verdict
from backprobe.stages.mount.beside import LEAST_MOMENTS, Measured, beside_finding, measured_by_log, measured_by_reports
from backprobe.stages.mount.predict import predict


def reports(*hdop: float | None) -> list[Report]:
    """Reports of one unit with these HDOP and eleven satellites."""
    fixes = [None if each is None else Fix(lat_deg=1.0, lon_deg=1.0, hdop=each, sats=11) for each in hdop]
    return [Report(unit_id="u", time_s=float(k), written="t", fix=fix) for k, fix in enumerate(fixes)]


def test_what_reports_say() -> None:
    """Of eleven the median is the sixth, eight of ten lie from the second to the tenth; without a fix none counts."""
    found = measured_by_reports(reports(None, *(1.0 + 0.1 * k for k in range(11))))
    assert found == Measured(hdop=1.5, hdop_low=1.1, hdop_high=1.9, used=11.0, source="11 reports of the unit")
    assert measured_by_reports(reports(*[1.0] * (LEAST_MOMENTS - 1))) is None


def test_what_a_log_says() -> None:
    """The log's own median and range; a log without HDOP says nothing."""
    log = reception(file="reception.nmea", hdop_hundredths={90: 5, 100: 80, 140: 15}, used={9: 100})
    found = measured_by_log(log)
    assert found is not None
    assert (found.hdop, found.used, found.source) == (1.0, 9.0, "reception.nmea")
    assert measured_by_log(replace(log, hdop_hundredths={})) is None


def test_as_good_as_predicted_or_not() -> None:
    """Within what the prediction keeps for 95 % of a day it holds; above it fails, and says where to look."""
    roof = predict(sheet(ROOF), thin_sky())[0]
    assert roof.usual.hdop_p95 is not None
    good = Measured(hdop=0.8, hdop_low=0.7, hdop_high=0.9, used=14.0, source="12 reports of the unit")
    held = beside_finding(roof, good)
    assert (held.verdict, held.next) == (Verdict.HOLDS, None)
    assert held.limit is not None
    assert (held.limit.value, held.limit.standing) == (roof.usual.hdop_p95, Standing.MODEL)
    assert "14 satellites half the time (12 reports of the unit)" in held.because
    poor = beside_finding(roof, replace(good, hdop=4.0, hdop_high=9.0))
    assert poor.verdict is Verdict.FAILS
    assert "which way up" in str(poor.next)
    assert beside_finding(roof, replace(good, hdop_high=9.0)).verdict is Verdict.THIN


def test_nothing_predicted_leaves_it_open() -> None:
    """A metal box is predicted to have no fix: there is no figure to hold the heard one against."""
    good = Measured(hdop=0.8, hdop_low=0.7, hdop_high=0.9, used=None, source="12 reports of the unit")
    found = beside_finding(predict(sheet(BOX), thin_sky())[0], good)
    assert (found.verdict, found.limit) == (Verdict.OPEN, None)
    assert "no fix for half the day, none for 95 % of it" in found.because
