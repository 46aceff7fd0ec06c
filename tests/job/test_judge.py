"""A whole job judged: both slots, the recordings, the VIN, what the journal leaves open, and the one next step."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from tests.samples.as_built import JOINTS
from tests.samples.as_built import UNIT as JOINED_UNIT
from tests.samples.jobs import (
    NAMED,
    ROWS,
    VEHICLE,
    crank_recording,
    evidence,
    finding,
    without,
)

from backprobe.evidence.keys import Capture, Key
from backprobe.evidence.reading import WireFacts
from backprobe.findings import Finding, Stage, Verdict
from backprobe.job.judge import (
    WEAK_BATTERY,
    JobJudgement,
    joined_facts,
    judge_job,
    meant_wires,
    setup_of,
    spelled_alike,
    with_recordings,
)
from backprobe.stages.probe.permission import bans, identified
from backprobe.stages.probe.slots import PROOF, SlotName
from backprobe.stages.walkround.cautions import BEFORE_CRANK

RED = 'circuit = "body-builder connector, permanent supply, fuse F12"\n'
ROWS_NOT_CRANKED = without(ROWS, "Red,crank", "Violet,crank")
# a second constant with more room in the crank than Red: 11.90 V against 11.40 V
SPARE = """\
Spare,off,12.64,,,
Spare,accessory,12.60,,,
Spare,on,12.50,,,
Spare,crank,11.90,logged,,
Spare,running,14.10,,,
Spare,after,12.60,,12,
"""
# what a vehicle says of itself, two rows a second: at rest, cranked down to 9.14 V, running
OBD_HEAD = "ENGINE_RUN_TIME (),ENGINE_RPM (),CONTROL_MODULE_VOLTAGE ()"
OBD_ROWS = [*[(0, 0, 12.1)] * 4, (0, 210, 9.14), (0, 240, 9.9), *[(n // 2, 900, 14.1) for n in range(20)]]
OBD = "\n".join([OBD_HEAD, *(f"{run},{rpm},{volts}" for run, rpm, volts in OBD_ROWS)]) + "\n"


def verdict_of(judged: JobJudgement, slot: SlotName) -> set[Verdict]:
    """The verdicts found on a slot."""
    return {each.verdict for each in judged.findings if each.id.startswith(f"{slot}_")}


def test_a_good_job_holds_and_leaves_nothing_to_do():
    """Every slot proven, circuits named, one loaded reading: both wires are chosen, no next step."""
    judged = judge_job(evidence())
    assert judged.verdict is Verdict.HOLDS
    assert [judged.chosen(slot) for slot in SlotName] == ["Red", "Violet"]
    assert judged.next is None


@pytest.mark.parametrize(("lead", "slot"), [("Red", SlotName.SUPPLY), ("Violet", SlotName.IGNITION)])
def test_a_slot_stays_open_until_its_circuit_is_named(lead: str, slot: SlotName):
    """The volts are right and nobody has said what the wire feeds: open, not chosen, and asked for."""
    head, _, tail = NAMED.partition(f'name = "{lead}"\n')
    named = head + f'name = "{lead}"\n' + "\n".join(line for line in tail.split("\n") if not line.startswith("circ"))
    judged = judge_job(evidence(named=named))
    found = finding(judged, f"{slot}_circuit")
    assert found.verdict is Verdict.OPEN
    assert judged.chosen(slot) is None
    assert found.next == f"name the circuit of {lead}: fuse label, the maker's diagram or the body-builder connector"


def test_nothing_named_at_all_keeps_both_slots_open():
    """No sheet entry: the findings are about the wires that read as supply and ignition, and neither is chosen."""
    judged = judge_job(evidence(named=""))
    assert judged.verdict is Verdict.OPEN
    assert [judged.chosen(slot) for slot in SlotName] == [None, None]
    assert {finding(judged, f"{slot}_circuit").what for slot in SlotName} == {
        "Red: what it feeds",
        "Violet: what it feeds",
    }


@pytest.mark.parametrize("word", ["airbag", "ABS", "steering", "engine control", "starter", "CAN-H", "HV", "sensor"])
def test_a_banned_circuit_fails_and_is_never_tapped(word: str):
    """One such word in the circuit's name: the slot fails, no load is asked for, tap is never, nothing is chosen."""
    judged = judge_job(evidence(named=NAMED.replace("permanent supply", word)))
    assert finding(judged, "supply_circuit").verdict is Verdict.FAILS
    assert judged.chosen(SlotName.SUPPLY) is None
    wire = judged.probe.result.wire("Red")
    assert wire is not None
    assert wire.tap == "never"
    assert "supply_loaded_drop" not in [each.id for each in judged.findings]


def test_the_supply_stays_open_until_it_was_read_under_load():
    """Without the row of 12.29 V at 1.5 A: open, not chosen, and the load is the next step."""
    judged = judge_job(evidence(rows=without(ROWS, "Red,on,12.29")))
    assert finding(judged, "supply_loaded_drop").verdict is Verdict.OPEN
    assert judged.chosen(SlotName.SUPPLY) is None
    assert judged.chosen(SlotName.IGNITION) == "Violet"
    assert judged.next is not None
    assert "load of about 1 to 2 A" in judged.next


def test_a_load_is_not_asked_for_before_the_circuit_is_known():
    """A lamp can set off a restraint circuit: the name comes first, in the finding and as the job's next step."""
    judged = judge_job(evidence(rows=without(ROWS, "Red,on,12.29"), named=NAMED.replace(RED, "")))
    assert judged.next is not None
    assert judged.next.startswith("name the circuit of Red")
    then = finding(judged, "supply_loaded_drop").next
    assert then is not None
    assert then.startswith("name its circuit first")


def test_another_wire_that_reads_as_well_is_not_chosen():
    """Spare has 11.90 V - 9 V = 2.9 V of room, Red 2.4 V; nobody has named Spare, so the job is about Red."""
    judged = judge_job(evidence(rows=ROWS + SPARE))
    assert judged.probe.result.supply == "Spare"
    assert judged.chosen(SlotName.SUPPLY) == "Red"
    assert judged.verdict is Verdict.HOLDS


def test_a_rival_is_named_where_the_wire_that_was_meant_fails():
    """Red hangs on an airbag circuit, Spare reads as a constant: it is to be named first, and is not chosen yet."""
    judged = judge_job(evidence(rows=ROWS + SPARE, named=NAMED.replace("permanent supply", "airbag")))
    assert judged.chosen(SlotName.SUPPLY) is None
    assert judged.next == (
        'do not use Red; Spare is fit by its volts: name its circuit, and give it lead = "supply" in the job sheet'
    )


def test_two_wires_meant_for_one_lead_stay_open():
    """The sheet gives lead = "supply" to Red and to Spare: somebody must decide."""
    spare = '[[wire]]\nname = "Spare"\nlead = "supply"\ncircuit = "fuse F3"\n'
    judged = judge_job(evidence(rows=ROWS + SPARE, named=NAMED + spare))
    found = finding(judged, "supply_meant")
    assert (found.verdict, found.what) == (Verdict.OPEN, "Supply wire: Red or Spare")
    assert judged.chosen(SlotName.SUPPLY) is None
    assert judged.next == 'decide which of them is the supply, and give lead = "supply" to that one alone'


def test_a_wire_is_the_same_in_other_capitals_and_spaces():
    """'RED ' on the sheet is Red of the table, so that what forbids the one forbids the other."""
    judged = judge_job(evidence(named=NAMED.replace('"Red"', '"RED "').replace("permanent supply", "airbag")))
    assert finding(judged, "supply_circuit").verdict is Verdict.FAILS
    assert [wire.name for wire in judged.probe.result.wires] == ["Red", "Violet"]
    assert judged.chosen(SlotName.SUPPLY) is None


def test_joints_are_held_against_the_wires_that_were_chosen():
    """Joined as proven leads, wires and fuses hold; with the supply and the ignition crossed both fail."""
    judged = judge_job(evidence(named=NAMED + JOINTS, unit=JOINED_UNIT))
    leads = [f"join_{lead}_{what}" for lead in SlotName for what in ("wire", "fuse")]
    assert {finding(judged, name).verdict for name in ("join_leads", *leads)} == {Verdict.HOLDS}
    assert {finding(judged, name).stage for name in leads} == {Stage.JOIN}
    crossed = JOINTS.replace('"Red"', '"x"').replace('"Violet"', '"Red"').replace('"x"', '"Violet"')
    failed = judge_job(evidence(named=NAMED + crossed, unit=JOINED_UNIT))
    assert finding(failed, "join_supply_wire").because.startswith("joined to Violet; the wire that was proven")
    assert finding(failed, "join_ignition_wire").verdict is Verdict.FAILS


def test_a_joint_s_wire_and_lead_are_the_same_in_other_capitals_and_spaces():
    """'r ED' is Red, 'POWER' is power; a wire that nobody measured keeps its spelling."""
    joints = JOINTS.replace('lead = "power"\nwire = "Red"', 'lead = "POWER"\nwire = "r ED"')
    assert finding(judge_job(evidence(named=NAMED + joints, unit=JOINED_UNIT)), "join_supply_wire").verdict is (
        Verdict.HOLDS
    )
    other = JOINTS.replace('wire = "Red"', 'wire = "Green"')
    assert (
        "joined to Green"
        in finding(judge_job(evidence(named=NAMED + other, unit=JOINED_UNIT)), "join_supply_wire").because
    )


def test_a_wire_through_which_nothing_was_read_yet():
    """An empty table: both slots open, the first reading is asked for, nothing fails."""
    judged = judge_job(evidence(rows=""))
    assert judged.verdict is Verdict.OPEN
    assert finding(judged, "supply_wire").because == "not measured yet"
    assert judged.next is not None
    assert judged.next.startswith("measure Red ")


def test_the_crank_step_says_what_to_mind():
    """Asking for a crank asks for a vehicle out of gear and nobody near it; the job's next step says all of it."""
    judged = judge_job(evidence(rows=ROWS_NOT_CRANKED))
    asked = "measure Red while the engine cranks, with a MIN hold"
    short = finding(judged, "supply_crank").next
    assert short == f"{asked} (out of gear, parking brake on, nobody near the engine)"
    assert judged.next is not None
    assert judged.next.startswith(f"{asked}: ")
    assert judged.next.endswith(f"; before the crank: {BEFORE_CRANK}")


def test_recordings_give_the_crank_of_the_wires_that_they_name():
    """Without a crank reading in the table, the recorded 10.39 V and 10.34 V prove both wires, as in the demo."""
    heard = {"crank.csv": crank_recording("Red", "Violet", "Grey")}
    judged = judge_job(evidence(rows=ROWS_NOT_CRANKED, recordings=heard))
    assert judged.verdict is Verdict.HOLDS
    assert round(finding(judged, "supply_crank").value or 0.0, 2) == 10.39
    assert round(finding(judged, "ignition_crank").value or 0.0, 2) == 10.34
    assert not [each for each in judged.findings if each.id.startswith("recording")]


def test_a_recording_s_channel_is_the_wire_in_other_capitals():
    """A channel 'RED' is the wire Red."""
    heard = {"crank.csv": crank_recording("RED", "violet", "Grey")}
    judged = judge_job(evidence(rows=ROWS_NOT_CRANKED, recordings=heard))
    assert [wire.name for wire in judged.probe.result.wires] == ["Red", "Violet", "Grey"]
    assert judged.verdict is Verdict.HOLDS


def test_a_recording_beats_a_thin_min_hold():
    """9.90 V by a MIN hold of 100 ms allows 9.90 - 0.23 - 0.68 × (12.4 - 9.9) = 7.97 V: thin; a recording holds."""
    rows = ROWS_NOT_CRANKED + "Red,crank,9.90,min,,\nViolet,crank,11.90,min,,\n"
    alone = finding(judge_job(evidence(rows=rows)), "supply_crank")
    assert alone.verdict is Verdict.THIN
    assert alone.low is not None
    assert alone.low <= 9.90 - 0.23 - 0.68 * (12.4 - 9.9)
    heard = {"crank.csv": crank_recording("Red", "Violet", "Grey")}
    both = finding(judge_job(evidence(rows=rows, recordings=heard)), "supply_crank")
    assert both.verdict is Verdict.HOLDS
    assert round(both.value or 0.0, 2) == 10.39


def test_a_min_hold_outside_the_limit_is_not_outdone_by_a_recording():
    """8.90 V by MIN fails the 9 V limit, whatever another crank shows."""
    rows = ROWS_NOT_CRANKED + "Red,crank,8.90,min,,\n"
    heard = {"crank.csv": crank_recording("Red", "Violet", "Grey")}
    judged = judge_job(evidence(rows=rows, recordings=heard))
    assert finding(judged, "supply_crank").verdict is Verdict.FAILS
    assert judged.chosen(SlotName.SUPPLY) is None


def test_what_a_vehicle_says_of_itself_is_no_wire():
    """A log with engine speed: its voltage is nothing to tap, its dip of 9.14 V is a finding of its own, and thin."""
    judged = judge_job(evidence(rows=ROWS_NOT_CRANKED, recordings={"drive.csv": OBD}))
    assert [wire.name for wire in judged.probe.result.wires] == ["Red", "Violet"]
    (dip,) = (each for each in judged.findings if each.id.startswith("recording.dip."))
    assert (dip.verdict, dip.value) == (Verdict.THIN, 9.14)
    assert dip.what.startswith("drive.csv: ")


def test_a_wire_that_was_declared_counts_even_beside_engine_speed():
    """A recording of Red with the engine's speed in another column is evidence on Red."""
    text = crank_recording("Red", "Violet", "Grey")
    head, *rows = text.splitlines()
    speeds = (f"{row},{900 if float(row.split(',')[0]) > 3.3 else 0}" for row in rows)
    heard = {"crank.csv": "\n".join([f"{head},ENGINE_RPM", *speeds]) + "\n"}
    judged = judge_job(evidence(rows=ROWS_NOT_CRANKED, recordings=heard))
    assert "Grey" not in [wire.name for wire in judged.probe.result.wires]
    assert finding(judged, "supply_crank").verdict is Verdict.HOLDS


def test_a_battery_that_fails_says_what_to_do():
    """7.56 V in the vehicle's own log: outside 9 V, and the battery is looked at before anything is fitted."""
    judged = judge_job(evidence(recordings={"drive.csv": OBD.replace("9.14", "7.56")}))
    assert judged.verdict is Verdict.FAILS
    assert judged.next == f"{WEAK_BATTERY}; before the crank: {BEFORE_CRANK}"


def test_a_battery_is_judged_where_no_wire_at_stake_was_recorded():
    """Channels Blue and White are no wires of this job's slots: the battery's dip stands for the recording."""
    judged = judge_job(evidence(recordings={"crank.csv": crank_recording("Blue", "White", "Grey")}))
    (dip,) = (each for each in judged.findings if each.id.startswith("recording.dip."))
    assert dip.id == "recording.dip.battery"


def test_a_missing_vin_is_open():
    """Nothing is judged of a VIN that nobody wrote down."""
    judged = judge_job(evidence(vehicle=VEHICLE.replace('vin = "5ZLDR7HV5KR200417"\n', "")))
    walked = [each.what for each in judged.findings if each.stage is Stage.WALKROUND]
    assert walked == ["VIN", "Walkround"]
    assert judged.verdict is Verdict.OPEN
    assert judged.next == "write the VIN from the plate into the job sheet"


def test_a_wrong_check_digit_names_the_misread_character():
    """D in position 4 read as O, which no VIN has: the form fails, and the right VIN is offered."""
    judged = judge_job(evidence(vehicle=VEHICLE.replace("5ZLD", "5ZLO")))
    assert judged.verdict is Verdict.FAILS
    assert judged.next is not None
    assert "position 4 is D, not O (5ZLDR7HV5KR200417)" in judged.next


def test_a_mistaken_figure_names_the_places_that_would_make_it_right():
    """1 in position 16 read as 7: the check digit fails and position 16 is among the readings offered."""
    judged = judge_job(evidence(vehicle=VEHICLE.replace("200417", "200477")))
    found = finding(judged, "vin_check_digit")
    assert found.verdict is Verdict.FAILS
    assert found.next is not None
    assert "position 16 is 1, not 7 (5ZLDR7HV5KR200417)" in found.next


def test_what_the_journal_leaves_open_keeps_the_job_open():
    """Two disputes: two findings, each with what to do; the wires stay chosen."""
    told = replace(evidence(), disputes=("serial: LN2-00417 or LN2-00471", "entry 7 was corrected in two ways"))
    judged = judge_job(told)
    assert judged.verdict is Verdict.OPEN
    assert [each.because for each in judged.findings if each.id == "journal_open"] == list(told.disputes)
    assert judged.next == "decide which of the two is right and write it down"
    assert judged.chosen(SlotName.SUPPLY) == "Red"


def test_what_fails_is_done_before_what_is_open():
    """An open VIN stands first among the findings, a failing wire is still the next step."""
    judged = judge_job(
        evidence(
            vehicle=VEHICLE.replace('vin = "5ZLDR7HV5KR200417"\n', ""),
            named=NAMED.replace("ignition feed", "steering"),
        )
    )
    assert judged.findings[0].verdict is Verdict.OPEN
    assert judged.next is not None
    assert judged.next.startswith("do not use Violet")


def test_the_setup_comes_from_both_sheets():
    """System, crank and accessory from the vehicle; the lowest supply from the unit; 12 V, 6 cylinders, 8 V."""
    vehicle = VEHICLE + "has_accessory = false\ncylinders = 6\n"
    setup = setup_of(evidence(vehicle=vehicle))
    assert (setup.system_V, setup.has_crank, setup.has_accessory) == (12, True, False)
    assert (setup.unit_least_V, setup.cylinders, setup.meter.name) == (8.0, 6, "basic")


def test_an_electric_vehicle_needs_no_crank():
    """No crank: no finding on one, and a reading on the charger is asked of the ignition."""
    judged = judge_job(evidence(vehicle=VEHICLE + "has_crank = false\n", rows=ROWS_NOT_CRANKED))
    assert not [each for each in judged.findings if each.id.endswith("_crank")]
    found = finding(judged, "ignition_dead")
    assert found.verdict is Verdict.OPEN


def test_wires_of_table_sheet_and_recording_come_once_and_in_that_order():
    """Red and Violet of the table, Blue declared on the sheet alone; the facts of both sources together."""
    given = evidence(named=NAMED + '[[wire]]\nname = "Blue"\nmarks = "twisted"\n')
    table = with_recordings(given.table, given.sheet, heard=())
    assert table.wires == ("Red", "Violet", "Blue")
    assert table.facts["Blue"] == WireFacts(marks=("twisted",))


def test_facts_of_table_and_sheet_are_joined():
    """What either forbids stays; what both say stands once."""
    sheet = spelled_alike(evidence(named='[[wire]]\nname = "r ED"\ncircuit = ["F12", "SRS"]\n').sheet, ("Red",))
    joined = joined_facts({"Red": WireFacts(circuits=("F12",), marks=("yellow",))}, sheet.wires)
    assert joined == {"Red": WireFacts(circuits=("F12", "SRS"), marks=("yellow",))}


def test_wires_meant_for_a_lead_are_all_named():
    """Each lead with every wire that claims it; a lead that no wire claims is left out."""
    sheet = evidence(named='[[wire]]\nname = "A"\nlead = "supply"\n[[wire]]\nname = "B"\nlead = "supply"\n').sheet
    assert meant_wires(sheet) == {SlotName.SUPPLY: ("A", "B")}


CIRCUITS = st.sampled_from(["fuse F12"] * 4 + ["", "airbag supply"])
LEADS = st.sampled_from(["supply"] * 3 + [""] * 3 + ["ignition"])
levels = st.sampled_from(["0.02", "4.8", "8.6", "9.9", "10.9", "11.6", "12.3", "12.6", "14.1"])
captures = st.sampled_from(["", "min", "max", "logged"])
loads = st.sampled_from(["", "", "1.5", "8"])
keys = st.sampled_from(["off", "accessory", "on", "crank", "running", "after"])
wires = st.sampled_from(["Red", "Violet", "Spare"])


@settings(max_examples=300, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(
    dropped=st.sets(st.integers(0, 17), max_size=2),
    added=st.lists(st.tuples(wires, keys, levels, captures, loads), max_size=2),
    spare=st.booleans(),
    named=st.tuples(CIRCUITS, CIRCUITS, CIRCUITS),
    leads=st.tuples(LEADS, st.sampled_from(["ignition", "ignition", ""]), LEADS),
)
def test_no_wire_is_chosen_without_what_its_slot_demands(
    dropped: set[int],
    added: list[tuple[str, ...]],
    spare: bool,
    named: tuple[str, ...],
    leads: tuple[str, ...],
):
    """Rows taken out, strange ones put in, circuits and leads at will: a chosen wire is named, allowed and proven."""
    rows = [line for i, line in enumerate((ROWS + SPARE * spare).splitlines()) if i not in dropped]
    rows += [f"{wire},{key},{volts},{capture},,{load}" for wire, key, volts, capture, load in added]
    sheet = ""
    for wire, circuit, lead in zip(("Red", "Violet", "Spare"), named, leads, strict=True):
        sheet += f'[[wire]]\nname = "{wire}"\n'
        sheet += f'circuit = "{circuit}"\n' if circuit else ""
        sheet += f'lead = "{lead}"\n' if lead else ""
    judged = judge_job(evidence(rows="\n".join(rows) + "\n", named=sheet))
    for slot in SlotName:
        assert_chosen_rightly(judged, slot)


def assert_chosen_rightly(judged: JobJudgement, slot: SlotName) -> None:
    """What must be true of the wire that a job chooses for a slot, if it chooses one."""
    name = judged.chosen(slot)
    if name is None:
        return
    facts = judged.probe.facts[name]
    readings = [reading for reading in judged.evidence.table.readings if reading.wire == name]
    assert identified(facts)
    assert not bans(facts)
    assert not {Verdict.FAILS, Verdict.OPEN} & verdict_of(judged, slot)
    assert any(reading.key is Key.CRANK and reading.capture in PROOF for reading in readings)
    if slot is SlotName.SUPPLY:
        assert any(reading.key is Key.AFTER for reading in readings)
        loaded = [reading for reading in readings if reading.load_A == 1.5 and reading.capture is not Capture.MAX]
        assert loaded


ENDS = """\
[hand_over]
end = "provisional"
[[hand_over.missing]]
what = "a night"
owed_by = "the yard"
until = "May"
"""
NOT_SIGNED = Finding(
    id="sign_off", stage=Stage.HAND_OVER, what="Sign-off", verdict=Verdict.OPEN, because="nobody", next="sign it"
)


def test_nothing_is_said_of_the_end_until_somebody_says_it():
    """No [hand_over], no finding on it; a sign-off that is there is told all the same."""
    judged = judge_job(evidence())
    assert not [each for each in judged.findings if each.id in ("ending", "sign_off")]
    assert judge_job(replace(evidence(), sign_off=NOT_SIGNED)).findings[-1] == NOT_SIGNED


def test_a_job_that_can_end_is_to_be_signed_first():
    """Then the one thing to do is to sign; once signed, what is owed."""
    ready = evidence(named=NAMED + ENDS)
    judged = judge_job(replace(ready, sign_off=NOT_SIGNED))
    assert [each.id for each in judged.findings[-2:]] == ["sign_off", "ending"]
    assert judged.next == "sign it"
    signed = judge_job(replace(ready, sign_off=replace(NOT_SIGNED, verdict=Verdict.HOLDS, next=None)))
    assert signed.next == "a night: owed by the yard until May"


def test_a_job_that_cannot_end_so_is_not_to_be_signed_yet():
    """What stands in the way of the end comes before the sign-off."""
    judged = judge_job(replace(evidence(named=NAMED + '[hand_over]\nend = "abandoned"\n'), sign_off=NOT_SIGNED))
    assert [each.id for each in judged.findings[-2:]] == ["ending", "sign_off"]
    assert (judged.next or "").startswith("write into [hand_over]")
