"""The figures of a log, each with the range that the log allows."""

import pytest
from tests.samples.receptions import reception

from backprobe.evidence.reception import Rest
from backprobe.stages.mount.reception import figures


def test_share_of_positions() -> None:
    """150 of 200 moments; from the first position on 150 of 180."""
    log = reception(epochs=200, fixes=150, since_first=180, duration_ms=199_000)
    assert figures.fix_share(log) == 0.75
    kept = figures.kept_percent(log)
    assert kept is not None
    assert kept[0] == pytest.approx(100 * 150 / 180)
    assert kept[1] < kept[0] < kept[2]


def test_a_long_log_shows_more_than_a_short_one() -> None:
    """No gap in 20 minutes, 120 steps of ten seconds: 96.9 % at least. In two minutes, 12 steps: 75.7 %."""
    long = figures.kept_percent(reception(epochs=1200, fixes=1200, since_first=1200, duration_ms=1_200_000))
    short = figures.kept_percent(reception(epochs=120, fixes=120, since_first=120, duration_ms=120_000))
    assert long is not None
    assert short is not None
    assert long[1] == pytest.approx(96.9, abs=0.05)  # 120 / (120 + 1.96²)
    assert short[1] == pytest.approx(75.7, abs=0.1)  # 12 / (12 + 1.96²)


def test_never_a_position() -> None:
    """There is nothing to keep, and no time to the first."""
    log = reception(fixes=0, since_first=0, first_fix_ms=None, used={}, hdop_hundredths={})
    assert figures.kept_percent(log) is None
    assert figures.first_fix_s(log) is None
    assert figures.used(log) is None
    assert figures.hdop(log) is None
    assert figures.hdop_p95(log) is None
    assert figures.fix_share(reception(epochs=0, fixes=0, since_first=0)) == 0.0


def test_medians_and_ranges() -> None:
    """HDOP 0.90 at most moments, 2.50 at some: median 0.90, eight of ten within 0.90 to 1.20, the 95th at 2.50."""
    log = reception(
        hdop_hundredths={90: 80, 120: 12, 250: 8}, used={5: 20, 9: 60, 12: 20}, top4_tenths={385: 3, 400: 4}
    )
    assert figures.hdop(log) == pytest.approx((0.9, 0.9, 1.2))
    assert figures.hdop_p95(log) == pytest.approx(2.5)
    assert figures.used(log) == (9.0, 5.0, 12.0)
    assert figures.cn0_top4_dBHz(log) == 40.0


def test_begins_fixed() -> None:
    """Where the first moment has a position nothing was seen of the search."""
    assert figures.begins_fixed(reception(epochs=10, since_first=10))
    assert not figures.begins_fixed(reception(epochs=10, since_first=9))


def test_scatter_with_its_range() -> None:
    """Four positions count: six degrees of freedom, from √(6 / 14.449) to √(6 / 1.237) times the radius."""
    log = reception(rest=Rest(600, 600, 40, 1200, 2500))
    found = figures.scatter(log)
    assert found is not None
    assert found.r95_m == pytest.approx((2.5, 2.5 * (6 / 14.449) ** 0.5, 2.5 * (6 / 1.2373) ** 0.5), rel=1e-3)


def test_no_scatter_where_nothing_scatters() -> None:
    """No rest, or a receiver that holds its position."""
    assert figures.scatter(reception(rest=None)) is None
    assert figures.scatter(reception(rest=Rest(600, 600, 10, 0, 0))) is None


def test_under_way() -> None:
    """More than a tenth faster than a walk."""
    assert figures.moved(reception(fixes=100, moving=11))
    assert not figures.moved(reception(fixes=100, moving=10))


def test_wilson_against_its_formula() -> None:
    """Half of 100: 0.5 ± 1.96 √(0.25 / 100 + 1.96² / 40000) / (1 + 1.96² / 100), 0.404 to 0.596."""
    assert figures.wilson(0.5, 100) == pytest.approx((0.4038, 0.5962), abs=1e-4)
