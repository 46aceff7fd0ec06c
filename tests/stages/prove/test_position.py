"""Position and first fix."""

import pytest
from tests.samples.prove_cases import HERE, START_S, reports, row

from backprobe.evidence.corner import Corner, CornerIndex
from backprobe.evidence.report import Fix
from backprobe.evidence.vehicle_place import VehiclePlace
from backprobe.findings import Verdict
from backprobe.stages.prove.position import accuracy_of_m, first_fix_s, fixes_of, middle_of, position_of
from backprobe.stages.prove.power_up import PowerUp

DEGREE_M = 111_195.08  # along a meridian


def fixes(metres, accuracy=4.0, count=4):
    """Fixes so many metres north of the vehicle."""
    return [Fix(HERE.lat_deg + metres / DEGREE_M, HERE.lon_deg, accuracy)] * count


@pytest.mark.parametrize(
    ("metres", "verdict"),
    [
        (0, Verdict.HOLDS),
        (12, Verdict.HOLDS),
        (14, Verdict.THIN),
        (19, Verdict.THIN),
        (20, Verdict.FAILS),
        (5000, Verdict.FAILS),
    ],
)
def test_both_accuracies_count(metres, verdict):
    """4 m and 5 m make 6.4 m: twice that holds (12.8 m), three times is doubtful (19.2 m), more fails."""
    found = position_of(fixes(metres), HERE)
    assert found.verdict is verdict
    assert found.as_json()["u_m"] == 6.4
    assert found.as_json()["distance_m"] == pytest.approx(metres, abs=0.1)
    assert found.beyond == (1.0 if verdict is Verdict.FAILS else 0.0)


def test_the_first_fixes_of_a_cold_start_do_not_count():
    """The later half does."""
    assert position_of([*fixes(900, count=3), *fixes(0, count=4)], HERE).verdict is Verdict.HOLDS


def test_without_a_place_or_a_fix_it_is_open():
    """Nothing is assumed."""
    assert position_of([], HERE).as_json() == {"verdict": "open", "distance_m": None, "u_m": None}
    assert position_of(fixes(0), None).verdict is Verdict.OPEN


def test_a_place_of_unknown_accuracy_is_taken_as_fifteen_metres():
    """√(4² + 15²) = 15.5 m."""
    assert position_of(fixes(0), VehiclePlace(lat_deg=HERE.lat_deg, lon_deg=HERE.lon_deg)).as_json()["u_m"] == 15.5


@pytest.mark.parametrize(
    ("fix", "metres"), [(Fix(1, 1, 7.0, 3.0), 7), (Fix(1, 1, 0.5), 2), (Fix(1, 1, None, 1.6), 8), (Fix(1, 1), 10)]
)
def test_the_accuracy_of_a_fix(fix, metres):
    """The receiver's own, at least 2 m; else 5 m times HDOP; else 10 m."""
    assert accuracy_of_m(fix) == pytest.approx(metres)


def stamped(*rows):
    """The rows with their times."""
    return [(report.time_s, report) for report in reports(rows)]


def test_fixes_on_the_road_do_not_count():
    """Only those until shortly after the script, and while the vehicle stood."""
    driving = row(500).replace(",0,9,", ",62,9,")
    assert len(fixes_of(stamped(row(0), driving, row(900), row(2000)), last_s=START_S + 800)) == 2


def test_the_first_fix_counts_from_power_up():
    """(0, 0) is no fix."""
    kept = stamped(row(-60, "boot", place="0,0,"), row(-30, place="0.0,0.0,"), row(-15))
    assert first_fix_s(kept, PowerUp(0, START_S - 60, by_event=True)) == 45
    assert first_fix_s(kept, PowerUp(0)) is None
    assert first_fix_s(kept[:2], PowerUp(0, START_S - 60)) is None


def test_where_the_unit_reports_itself():
    """100 m north of the corner, from the later half of the fixes; said where the vehicle's place is not known too."""
    corner = Corner(HERE.lat_deg, HERE.lon_deg, ("Main Street", "Mill Lane"))
    index = CornerIndex(corners=(corner,), attribution="© somebody", source="m.osm.pbf")
    found = position_of([*fixes(5000), *fixes(100)], None, corners=index)
    assert found.verdict is Verdict.OPEN
    assert found.as_json()["where"]["text"] == "corner of Main Street and Mill Lane, 100 m north"
    assert found.as_json()["where"]["attribution"] == "© somebody"
    assert position_of(fixes(5000), HERE, corners=index).as_json()["where"]["text"] == "no named corner within 300 m"


def test_without_corners_or_fixes_nothing_is_named():
    """The answer then has no such key."""
    index = CornerIndex(corners=(), attribution="© somebody", source="m.osm.pbf")
    assert "where" not in position_of([], HERE, corners=index).as_json()
    assert "where" not in position_of(fixes(0), HERE).as_json()


def test_the_middle_of_fixes():
    """A single stray one does not move it; nor does the antimeridian."""
    assert middle_of([*fixes(0, count=3), *fixes(900, count=1)]) == (HERE.lat_deg, HERE.lon_deg)
    assert abs(middle_of([Fix(0.0, 179.999), Fix(0.0, -179.999)])[1]) == 180.0
