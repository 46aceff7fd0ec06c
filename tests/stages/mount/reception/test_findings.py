"""A log against what a good place shows."""

from typing import Any

import pytest
from tests.samples.receptions import OPEN_SKY, reception, sky_bins

from backprobe.evidence.reception import Rest
from backprobe.findings import Finding, Stage, Verdict
from backprobe.stages.mount.reception.findings import reception_findings

BLOCKED = sky_bins({az: cn0 - 16 if 90 <= az < 180 else cn0 for az, cn0 in OPEN_SKY.items()})


def found(**changes: Any) -> dict[str, Finding]:
    """The findings on a log by id."""
    return {finding.id: finding for finding in reception_findings(reception(**changes))}


def test_a_good_place_holds_in_all() -> None:
    """Eight findings of the mount, all hold, and nothing is left to do."""
    findings = found()
    assert list(findings) == [
        "reception_blocked",
        "reception_fix_kept",
        "reception_first_fix",
        "reception_used",
        "reception_hdop",
        "reception_hdop_p95",
        "reception_cn0",
        "reception_scatter",
    ]
    assert {finding.verdict for finding in findings.values()} == {Verdict.HOLDS}
    assert {finding.stage for finding in findings.values()} == {Stage.MOUNT}
    assert [finding.next for finding in findings.values() if finding.next] == []


@pytest.mark.parametrize(
    ("changes", "name", "verdict"),
    [
        ({"fixes": 1000}, "reception_fix_kept", Verdict.FAILS),
        ({"epochs": 60, "fixes": 60, "since_first": 60, "duration_ms": 60_000}, "reception_fix_kept", Verdict.THIN),
        ({"first_fix_ms": 61_000}, "reception_first_fix", Verdict.FAILS),
        ({"used": {5: 1190}}, "reception_used", Verdict.FAILS),
        ({"used": {5: 300, 8: 890}}, "reception_used", Verdict.THIN),
        ({"hdop_hundredths": {210: 1190}}, "reception_hdop", Verdict.FAILS),
        ({"hdop_hundredths": {90: 1000, 410: 190}}, "reception_hdop_p95", Verdict.FAILS),
        ({"top4_tenths": {350: 1200}}, "reception_cn0", Verdict.FAILS),
        ({"top4_tenths": {360: 1200}}, "reception_cn0", Verdict.THIN),
        ({"top4_tenths": {}}, "reception_cn0", Verdict.FAILS),
        ({"top4_tenths": {}, "told": 0, "bins": ()}, "reception_cn0", Verdict.OPEN),
        ({"top4_tenths": {}, "told": 0, "bins": ()}, "reception_blocked", Verdict.OPEN),
        ({"rest": Rest(1190, 1190, 120, 4000, 8100)}, "reception_scatter", Verdict.THIN),  # from memory
        ({"rest": Rest(70, 70, 20, 2000, 5000)}, "reception_scatter", Verdict.THIN),
        ({"moving": 600}, "reception_blocked", Verdict.OPEN),
        ({"bins": sky_bins(dict(list(OPEN_SKY.items())[::2]))}, "reception_blocked", Verdict.OPEN),
        ({"bins": BLOCKED}, "reception_blocked", Verdict.THIN),
        ({"bins": BLOCKED, "top4_tenths": {350: 1200}}, "reception_blocked", Verdict.FAILS),
    ],
)
def test_each_limit_is_kept(changes: dict[str, Any], name: str, verdict: Verdict) -> None:
    """Beyond its limit it fails, with a range across it it is thin, without evidence it is open; each says next."""
    finding = found(**changes)[name]
    assert finding.verdict is verdict
    assert finding.next


def test_never_a_position_fails() -> None:
    """A metal box: no position, and no figures that need one."""
    findings = found(fixes=0, since_first=0, first_fix_ms=None, used={}, hdop_hundredths={}, rest=None)
    assert findings["reception_fix_kept"].verdict is Verdict.FAILS
    assert not {"reception_first_fix", "reception_used", "reception_hdop", "reception_scatter"} & set(findings)


def test_a_log_that_begins_with_a_position_says_nothing_of_the_search() -> None:
    """No finding on the time to the first one."""
    assert "reception_first_fix" not in found(epochs=1200, fixes=1200, since_first=1200, first_fix_ms=0)


def test_a_log_without_moments_is_open() -> None:
    """Good sentences of other kinds."""
    findings = reception_findings(reception(epochs=0, fixes=0, since_first=0, first_fix_ms=None))
    assert [(each.id, each.verdict) for each in findings] == [("reception_log", Verdict.OPEN)]


def test_the_side_is_named() -> None:
    """By the compass, or by the cab where the heading is known: front to the north-west, south-east is the rear."""
    compass = reception_findings(reception(bins=BLOCKED))[0]
    cab = reception_findings(reception(bins=BLOCKED), heading_deg=315.0)[0]
    assert "south-east, 9" in compass.because
    assert "rear" in cab.because
    assert "4 satellites are 1" in compass.because
    assert "turn the vehicle" in (compass.next or "")


def test_every_limit_names_its_basis() -> None:
    """Each finding with a figure has a limit with a source or a standing."""
    for finding in found().values():
        assert finding.value is None or (finding.limit is not None and finding.limit.warrant)
