"""What holds of one receiver's log stands in one line of the record."""

from tests.samples.receptions import reception

from backprobe.cases.record_reception import together
from backprobe.findings import Verdict
from backprobe.stages.mount.reception.findings import reception_findings


def test_what_holds_stands_together() -> None:
    """A good log: one line with every figure and its limit."""
    (line,) = together(reception_findings(reception()))
    assert line.what == "Reception, reception.nmea"
    assert line.verdict is Verdict.HOLDS
    for part in (
        "position kept 100.0 % (at least 95)",
        "time to the first position 10 s (at most 60)",
        "satellites used 9.0 satellites (at least 6)",
        "HDOP at half of all moments 0.90 (at most 2)",
        "scatter at rest, 95 % radius 2.1 m (at most 8)",
        "no side of the sky is weaker",
    ):
        assert part in line.because


def test_what_does_not_hold_keeps_its_bar() -> None:
    """One that is thin stays as it is, and so does a log of which only one thing holds."""
    findings = reception_findings(reception(used={5: 300, 8: 890}))
    shown = together(findings)
    assert [each.id for each in shown] == ["reception_holds", "reception_used"]
    one = (findings[0],)
    assert together(one) == one


def test_every_log_has_its_line() -> None:
    """Two logs, two lines; other findings stay where they are."""
    first, second = (reception_findings(reception(file=name)) for name in ("nmea/a.nmea", "nmea/b.nmea"))
    shown = together((*first, *second))
    assert [each.what for each in shown] == ["Reception, nmea/a.nmea", "Reception, nmea/b.nmea"]
