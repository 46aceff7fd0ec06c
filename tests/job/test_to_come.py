"""What the unit's reports show of the supply, and what is therefore not asked of a hand."""

from dataclasses import replace

import pytest
from tests.samples.as_built import JOINTS
from tests.samples.as_built import UNIT as JOINED_UNIT
from tests.samples.jobs import NAMED, PROOF, ROWS, evidence, finding, without

from backprobe.evidence.key_turn import KeyScript
from backprobe.evidence.keys import Key
from backprobe.findings import Verdict
from backprobe.job.judge import JobEvidence, judge_job
from backprobe.job.proving import Proving
from backprobe.job.to_come import BY_REPORTS, SOURCE, joined_supply, meant_for, positions_to_come
from backprobe.stages.probe.findings import REPORTS_CLOSE
from backprobe.stages.probe.slots import SlotName

REPORTING = JOINED_UNIT + "[reporting]\ninterval_s = 60\nstopped_interval_s = 3600\n"
NOT_READ = without(ROWS, "Red,accessory", "Red,on", "Red,after") + "Red,off,12.51,,,1.5\n"


def job(*, rows: str = NOT_READ, named: str = NAMED + JOINTS, unit: str = REPORTING, heard: bool = True) -> JobEvidence:
    """A job whose supply was read at off, in the crank and running alone; `heard`: script and reports are there."""
    given = evidence(rows=rows, named=named, unit=unit)
    return given if heard else replace(given, proving=Proving())


def test_the_reports_close_what_was_not_read():
    """Accessory, on and after stand by the unit's reports, named as such; the supply is chosen."""
    judged = judge_job(job())
    after = finding(judged, "supply_after")
    assert after.verdict is Verdict.HOLDS
    assert after.because.startswith(f"lowest 10 minutes after key-off by {SOURCE}, over ")
    assert after.value == pytest.approx(12.32, abs=0.05)  # the demo's reports of the night
    assert after.low == pytest.approx(after.value - (0.5 + 0.03 * after.value), abs=0.001)
    assert judged.chosen(SlotName.SUPPLY) == "Red"
    assert finding(judged, "join_supply_wire").verdict is Verdict.HOLDS


def test_a_meter_s_own_reading_goes_first():
    """12.58 V after 12 minutes, by the meter."""
    after = finding(judge_job(job(rows=ROWS)), "supply_after")
    assert (after.value, after.because) == (12.58, "proven for 12 minutes, not for a night")


def test_before_the_reports_nothing_of_it_is_asked():
    """The findings are open and the reports close them; the next thing to do is another one."""
    judged = judge_job(job(heard=False))
    assert judged.probe.result.next is None
    open_ones = [finding(judged, name) for name in ("supply_after", "supply_live", "join_supply_wire")]
    assert [(each.verdict, each.next) for each in open_ones] == [(Verdict.OPEN, REPORTS_CLOSE)] * 3
    assert judged.next is not None
    assert judged.next != REPORTS_CLOSE
    assert judged.chosen(SlotName.SUPPLY) is None


@pytest.mark.parametrize(
    ("named", "unit"),
    [
        (NAMED + JOINTS, JOINED_UNIT),  # a unit of which nobody says that it reports at rest
        (NAMED.replace('circuit = "body-builder connector, permanent supply, fuse F12"\n', ""), REPORTING),
        (NAMED.replace('lead = "supply"\n', ""), REPORTING),
    ],
    ids=["no reports at rest", "circuit not known", "not meant"],
)
def test_else_it_is_measured(named: str, unit: str):
    """Without all three the supply's `after` is asked of the meter."""
    judged = judge_job(job(named=named, unit=unit, heard=False))
    assert judged.probe.result.setup.to_come == frozenset()
    upcoming = judged.probe.result.next
    assert upcoming is not None
    assert (upcoming.wire, upcoming.key) in {("Red", key) for key in BY_REPORTS}


def test_a_unit_on_another_wire_says_nothing_of_the_supply():
    """The power lead on Violet, which was meant for the ignition."""
    crossed = JOINTS.replace('"Red"', '"x"').replace('"Violet"', '"Red"').replace('"x"', '"Violet"')
    judged = judge_job(job(rows=ROWS, named=NAMED + crossed))
    assert finding(judged, "join_supply_wire").verdict is Verdict.FAILS
    assert finding(judged, "supply_after").because == "proven for 12 minutes, not for a night"


def test_what_a_script_passed_without_a_report_is_measured():
    """Once there is a proof only the rest is still to come; reports without volts are nothing to wait for."""
    given = job()
    proof = judge_job(given).proof
    reports = given.proving.reports
    assert reports is not None
    assert positions_to_come(given.unit, None, proof=None) == BY_REPORTS
    assert positions_to_come(given.unit, reports, proof=proof) == {Key.AFTER}
    mute = replace(reports, columns=reports.columns - {"supply_V"})
    assert positions_to_come(given.unit, mute, proof=None) == frozenset()


def test_which_wire_is_joined_and_which_is_meant():
    """One of each here; two are none."""
    given = job()
    assert (joined_supply(given.sheet, given.unit), meant_for(given.sheet, SlotName.SUPPLY)) == ("Red", "Red")
    twice = replace(given.sheet, wires=(*given.sheet.wires, replace(given.sheet.wires[0], name="Blue")))
    assert meant_for(twice, SlotName.SUPPLY) is None
    assert isinstance(given.proving.script, KeyScript)
    assert "supply_V" in PROOF["reports.csv"]
