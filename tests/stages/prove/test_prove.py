"""The whole way, and what is left out on it."""

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from tests.samples.prove_cases import HEADER, STEPS, at, healthy, named, proven, row, states

from backprobe.errors import InputError, UnreadableError
from backprobe.evidence.report import Event, Report
from backprobe.findings import Verdict
from backprobe.formats.key_script_csv import read_key_script
from backprobe.formats.reports_csv import read_reports
from backprobe.stages.prove.prove import prove, undoubled
from backprobe.stages.prove.setup import ProveSetup


def test_a_healthy_unit_holds():
    """Every row matched, no pattern, nothing left out."""
    answer = proven(healthy())
    assert answer.proof.verdict is Verdict.HOLDS
    assert named(answer) == []
    assert answer.as_json()["left_out"] == {}


def test_what_is_left_out_is_counted_by_reason():
    """Other units, repeats, torn rows, and what came before the power-up."""
    old = [row(-9000, "boot"), row(-8000, "ignition_on")]
    rows = [*old, *healthy(), healthy()[1], *healthy(unit="L9"), "L1,torn"]
    found = proven(rows).as_json()["left_out"]
    assert found == {"other_unit": len(healthy()), "doubled": 1, "unreadable": 1, "before_power_up": 2}


def test_repeats_are_taken_once_as_they_first_came():
    """Three times the same is a repeat; what the server stamps looks alike without being the same."""
    first, again = Report("L1", 10.0, "10", 12.0, event=Event.BOOT), Report("L1", 10.0, "10", 11.0, event=Event.BOOT)
    assert undoubled([first, again, first]) == (again,)
    stamped = [Report("L1", 10.0, "10", 10.0, event=Event.IGNITION_ON)] * 3
    assert len(undoubled(stamped)) == 3
    assert len(undoubled([first] * 5)) == 5


def test_reports_without_unit_ids_are_the_jobs():
    """A table of one unit need not name it."""
    header = HEADER.removeprefix("unit_id,")
    rows = [header, *(each.partition(",")[2] for each in healthy())]
    script = read_key_script(["t,key", *(f"{at(t)},{key}" for t, key in STEPS)], file="script.csv")
    answer = prove(script, read_reports(rows, file="reports.csv"), setup=ProveSetup(unit_id="L1"))
    assert answer.proof.unit_id == "L1"
    assert states(answer) == ["matched"] * len(STEPS)


def test_a_script_that_ends_with_the_engine_running():
    """The off is still to be turned: open, no delay is made up."""
    answer = proven([row(-60, "boot"), row(302, "ignition_on"), *(row(t) for t in range(330, 900, 60))], STEPS[:-1])
    assert answer.proof.verdict is Verdict.OPEN
    assert answer.proof.off_delay is None


def test_a_hundred_thousand_rows_of_backlog():
    """All in one second, all alike but for their stamps: named, and counted."""
    rows = [row(t / 50, "", late=4000 - t / 50) for t in range(-3000, 97_000)]
    answer = proven([row(-61, "boot"), *rows])
    assert named(answer)[0] == "backlog"


WORDS = [*("ignition_on", "ignition_off", "boot", "power_lost", "power_restored", "heartbeat", "", "door"), None]
DATES = [-1e6, -3600.0, -60.0, 0.0, 100.0, 300.0, 302.0, 500.0, 800.0, 820.0, 900.0, 3600.0, 4e5, -6.2e8, -1.5e9]
MOMENTS = st.sampled_from(DATES) | st.floats(-2000, 5000).map(lambda t: round(t, 1))
PLACES = st.sampled_from(["0,0,", "-33.1,151.2,4", "95,x,"])
REPORT = st.builds(
    lambda t, event, state, late, unit, place: row(t, event or "", state, late=late, unit=unit, place=place),
    MOMENTS,
    st.sampled_from(WORDS),
    st.sampled_from([None, 0, 1]),
    st.sampled_from([None, 0.0, 1.0, 700.0, -5.0]),
    st.sampled_from(["L1", "L9", ""]),
    PLACES,
)
KEYS = ["off", "accessory", "on", "crank", "running", "unlock", "doors_open", "doors_shut"]
GAPS = st.sampled_from([0, 0, 1, 30, 60, 300, 7200])
SCRIPT = st.lists(st.tuples(GAPS, st.sampled_from(KEYS)), min_size=2, max_size=12)


@settings(deadline=None, max_examples=150, suppress_health_check=[HealthCheck.too_slow])
@given(st.lists(REPORT, min_size=1, max_size=25), SCRIPT)
def test_any_script_and_any_reports_are_answered_or_refused(rows, steps):
    """Nothing but the project's own error; the answer keeps its promises."""
    t, timed = 0, []
    for gap, key in steps:
        t += gap
        timed.append((t, key))
    try:
        answer = proven(rows, timed)
    except InputError:
        return
    found = answer.as_json()
    assert len(found["turns"]) == len(timed)
    assert all(0 <= pattern["strength"] <= 1 for pattern in found["patterns"])
    for turn in found["turns"]:
        assert (turn["reported_t"] is not None) <= (turn["state"] == "matched" and turn["expected"] != "none")
        assert turn["expected"] != "none" or turn["state"] != "missing"


@pytest.mark.parametrize("setup", [{}, {"place": None}, {"unit_id": None}])
def test_a_single_report_is_enough_to_be_answered(setup):
    """Open, not an error."""
    assert proven([row(400)], **setup).proof.verdict in (Verdict.OPEN, Verdict.FAILS)


def test_the_files_only_unit_is_taken_under_another_name_if_it_tells_the_script():
    """A server may number its units otherwise than their makers do: believed if turns were reported, else refused."""
    named = {"unit_id": None, "unit_serial": "LN2-00417"}
    assert proven(healthy(), **named).proof.unit_id == "L1"
    silent = [row(-60, "boot"), *(row(t, "heartbeat", 0) for t in range(-30, 1200, 60))]
    with pytest.raises(UnreadableError, match="reports of unit LN2-00417, whose turns of the key these are"):
        proven(silent, **named)
    assert proven(silent, unit_id="L1", unit_serial="LN2-00417").proof.unit_id == "L1"
