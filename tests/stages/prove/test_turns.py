"""What became of each row of a script."""

import pytest
from tests.samples.prove_cases import STEPS, healthy, named, proven, row, states

QUIET = [each for each in healthy() if "ignition_o" not in each]  # beats that still show the state
BEATS = [row(t, "heartbeat") for t in range(-30, 1500, 60)]


def turn(answer, index):
    """A row's state."""
    return states(answer)[index]


def test_a_healthy_unit_matches_every_row():
    """Also those of which nothing is expected; the unit's own stamp stands beside them."""
    answer = proven(healthy())
    assert states(answer) == ["matched"] * len(STEPS)
    found = answer.as_json()["turns"][3]
    assert found == {
        "t": "2026-03-31T08:05:00Z",
        "key": "on",
        "expected": "on",
        "reported_t": "2026-03-31T08:05:02Z",
        "state": "matched",
    }
    assert answer.as_json()["turns"][0]["reported_t"] is None


def test_missing_only_where_it_is_sure():
    """Never on: the on is missing; the off after it is open, as the opposite turn was not reported."""
    answer = proven([row(-60, "boot"), *BEATS])
    assert (turn(answer, 3), turn(answer, 6)) == ("missing", "open")
    assert str(answer.proof.verdict) == "fails"


def test_missing_off_after_a_reported_on():
    """On was reported, off was not, and the unit was heard long after."""
    assert turn(proven([row(-60, "boot"), row(302, "ignition_on"), *BEATS]), 6) == "missing"


def test_open_where_no_reports_cover_it():
    """Nothing was heard after the turn, or nothing before it."""
    assert turn(proven([row(-60, "boot"), row(302, "ignition_on")]), 6) == "open"
    assert turn(proven([row(t, "heartbeat") for t in range(400, 900, 60)]), 3) == "open"


def test_open_where_the_unit_restarted_in_between():
    """Whatever it had to say was lost with the restart."""
    rows = [row(-60, "boot"), row(302, "ignition_on"), row(810, "power_lost"), row(815, "boot"), *BEATS]
    assert turn(proven(rows), 6) == "open"


def test_open_where_the_state_was_too_short():
    """30 s of off may be swallowed by the debounce: neither it nor the on after it is missing."""
    steps = [(0, "off"), (100, "on"), (400, "off"), (430, "on"), (800, "off")]
    rows = [row(-60, "boot"), row(102, "ignition_on"), row(845, "ignition_off"), *BEATS]
    assert states(proven(rows, steps)) == ["matched", "matched", "open", "open", "matched"]


def test_open_where_the_unit_was_already_there():
    """A unit that was on before the key can report no on."""
    rows = [row(-60, "boot"), row(-55, "ignition_on"), *BEATS]
    answer = proven(rows)
    assert turn(answer, 3) == "open"
    assert named(answer) == ["never_off"]


def test_a_row_that_an_event_contradicts_is_open():
    """An on in accessory; the off behind it, at a row that says off, contradicts nothing."""
    extra = [row(102, "ignition_on", 1), row(220, "ignition_off", 0)]
    answer = proven([each for each in healthy() if "heartbeat" not in each] + extra)
    assert states(answer)[:3] == ["matched", "open", "matched"]
    assert [event["event"] for event in answer.as_json()["false_events"]] == ["ignition_on", "ignition_off"]


@pytest.mark.parametrize(
    "extra",
    [[row(-30, "ignition_on"), row(-20, "ignition_off")], [row(1500, "ignition_on"), row(1600, "ignition_off")]],
)
def test_turns_outside_the_script_are_no_false_events(extra):
    """Before its first row and behind its last."""
    answer = proven([*healthy(), *extra])
    assert answer.proof.false_events == ()
    assert states(answer) == ["matched"] * len(STEPS)


def test_a_first_row_that_says_off_begins_nothing():
    """The off of a key that had just been turned is no false event."""
    rows = [
        row(-300, "ignition_on"),
        row(12, "ignition_off"),
        row(302, "ignition_on"),
        row(820, "ignition_off"),
        row(900, "heartbeat"),
    ]
    answer = proven(rows)
    assert answer.proof.false_events == ()
    assert named(answer) == []
    assert QUIET
