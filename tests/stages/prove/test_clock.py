"""What the unit's clock may be out by."""

import pytest
from tests.samples.prove_cases import START_S, healthy, reports, row, script

from backprobe.stages.prove.clock import lead_of, shifts, unset_shifts, unwrapped
from backprobe.stages.prove.observed import observe

SCRIPT = script()
ROLLOVER_S = 1024 * 7 * 86_400


def stamped(rows):
    """The rows in the order of their stamps."""
    return unwrapped(reports(rows), SCRIPT).stamped


def beliefs(rows):
    """The beliefs about the clock, as (quarters, gps, offset or None)."""
    found = stamped(rows)
    return [(s.quarters, s.gps, s.offset_s) for s in shifts(found, observe(found).edges, script=SCRIPT)]


def shifted(seconds, **more):
    """What a healthy unit reports whose clock is ahead; the server's times are right."""
    rows = healthy(**more)
    return [moved(each, seconds) for each in rows]


def moved(line, seconds):
    """A row with its own stamp moved."""
    cells = line.split(",")
    [report] = reports([line])
    cells[1] = str(report.time_s + seconds)
    return ",".join(cells)


def test_a_rolled_over_date_is_undone():
    """1,024 weeks, once or twice; a report of last year is left as it is."""
    flat = unwrapped(reports([*shifted(-ROLLOVER_S), row(-200 * 86_400)]), SCRIPT)
    assert flat.rolled_over == len(healthy())
    assert min(time_s for time_s, _ in flat.stamped) == START_S - 200 * 86_400
    assert unwrapped(reports(shifted(-2 * ROLLOVER_S)), SCRIPT).rolled_over == len(healthy())


@pytest.mark.parametrize("zero", [0.0, 315_964_800.0])
def test_a_clock_that_was_never_set_is_set_apart(zero):
    """1970 or 1980, whatever the distance."""
    flat = unwrapped(reports(shifted(zero + 5000 - START_S)), SCRIPT)
    assert len(flat.unset) == len(healthy())
    assert flat.stamped == ()


@pytest.mark.parametrize("offset", [0.0, -40.0, 7.5, 300.0])
def test_the_server_tells_an_ordinary_offset(offset):
    """All reports are 1 s under way; 0.6 s are allowed for: the offset is 0.4 s short."""
    [only] = [each for each in beliefs(shifted(offset)) if each[2] is not None]
    assert only == (0, False, pytest.approx(offset - 0.4))


@pytest.mark.parametrize("quarters", [4, -20, 23, 40])
def test_quarter_hours_are_a_zone(quarters):
    """With an offset beside it that is told apart."""
    assert beliefs(shifted(900 * quarters + 3))[0] == (quarters, False, pytest.approx(2.6))


def test_eighteen_seconds_are_gps_time():
    """Beside a zone as well; 30 s are an ordinary offset."""
    assert beliefs(shifted(18))[0] == (0, True, pytest.approx(-0.4))
    assert beliefs(shifted(3618))[0] == (4, True, pytest.approx(-0.4))
    assert beliefs(shifted(30))[0][1] is False


def test_one_wild_stamp_does_not_speak_for_all():
    """Three must agree within 2 s."""
    rows = [*shifted(5), moved(row(100), 9000)]
    assert lead_of(stamped(rows), SCRIPT).ahead_s == pytest.approx(4.0)


def test_few_reports_say_little():
    """The uncertainty of one report is √(2² + 8²) = 8.2 s, of a hundred 2.0 s."""
    assert lead_of(stamped([row(0)]), SCRIPT).u_s == pytest.approx(8.246, abs=0.001)
    assert lead_of(stamped([row(t) for t in range(100)]), SCRIPT).u_s == pytest.approx(2.0, abs=0.01)
    assert lead_of(stamped([row(0, late=None)]), SCRIPT) is None


def test_without_arrivals_the_turns_suggest_zones():
    """The plain belief first, the right zone among the others."""
    found = beliefs(shifted(3600, late=None))
    assert found[0] == (0, False, None)
    assert 4 in [quarters for quarters, _, _ in found]


def test_reports_that_are_all_late_may_be_just_that():
    """Twenty minutes late with nothing fresh: a clock that is behind, or a unit that was out of reach."""
    rows = healthy(late=1200)
    assert [offset for _, _, offset in beliefs(rows)][:2] == [pytest.approx(-1199.4), None]


def test_a_clock_that_was_never_set_is_placed_by_its_turns():
    """Such that events fall on rows of the script: its true distance is among the tries."""
    rows = shifted(315_964_800 - START_S, late=None)
    flat = unwrapped(reports(rows), SCRIPT)
    tries = unset_shifts(flat.unset, observe(flat.unset).edges, script=SCRIPT)
    assert any(abs(each.base_s - (315_964_800 - START_S) - 2) <= 2 for each in tries)
