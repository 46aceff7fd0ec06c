"""The job sheet as TOML."""

from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from backprobe.errors import UnreadableError
from backprobe.evidence.hand_over import End, HandOver, Missing
from backprobe.evidence.job_sheet import JobSheet, NamedWire, Vehicle
from backprobe.evidence.joint import Joint, Method
from backprobe.evidence.photo import NamedPhoto, Shows
from backprobe.evidence.supply_pair import SupplyPair
from backprobe.evidence.vehicle_place import VehiclePlace
from backprobe.formats.job_toml import KEYS, read_job

SAMPLES = Path(__file__).resolve().parents[1] / "samples" / "job_sheets"
# each defect with the line that is named and words of what was expected there
DEFECTS = {
    "battery-empty": (8, "a number from 10 to 1000"),
    "battery-kind": (8, "one of: flooded, agm, unknown"),
    "cold-in-fahrenheit": (8, "are these °F? 77 °F are 25 °C"),
    "drain-negative": (8, "a figure from 0 to 20000"),
    "empty": (None, "system_V = 12 or 24, in [vehicle]"),
    "key-misspelt": (2, "did you mean system_V?"),
    "key-above-its-table": (1, "system_V under [vehicle]"),
    "key-twice": (3, "twice"),
    "key-in-a-long-text": (8, "12 or 24"),
    "table-misspelt": (1, "did you mean vehicle?"),
    "system-48": (3, "12 or 24"),
    "system-in-quotation-marks": (2, "without quotation marks"),
    "system-with-unit": (2, "without a unit"),
    "system-missing": (2, "system_V = 12 or 24"),
    "sheet-missing": (4, "sheet = "),
    "sheet-empty": (5, "sheet = "),
    "plate-without-quotation-marks": (3, "text in quotation marks"),
    "fleet-number-is-a-number": (3, "text in quotation marks"),
    "heavy-in-words": (3, "true or false"),
    "model-year-19": (3, "from 1950 to 2100"),
    "cylinders-four-and-a-half": (3, "whole number"),
    "date-is-a-time": (8, "a date"),
    "meter-class-unknown": (8, "did you mean basic?"),
    "meter-class-and-file": (9, "not both"),
    "wire-in-single-brackets": (7, "[[wire]]"),
    "wire-without-name": (10, "[[wire]] number 2"),
    "wire-twice": (11, "'Red' stands twice"),
    "wire-size-without-unit": (13, "18 AWG"),
    "marks-hold-a-number": (9, "a list"),
    "vehicle-is-text": (1, "headed [vehicle]"),
    "place-without-lon": (7, "lon = 151.2"),
    "reports-column-unknown": (8, "a key of [reports.columns]"),
    "reports-event-a-number": (8, "text in quotation marks"),
    "supply-seen-once": (6, "transmit_V beside it"),
    "place-south-pole-passed": (8, "from -90 to 90"),
    "end-misspelt": (6, "did you mean provisional?"),
    "hand-over-without-end": (5, 'end = "proven | provisional | abandoned", in [hand_over]'),
    "missing-without-what": (9, "[[hand_over.missing]] number 2"),
    "missing-in-single-brackets": (5, "headed [[hand_over.missing]]"),
    "joint-in-single-brackets": (5, "headed [[joint]]"),
    "joint-without-lead": (7, "[[joint]] number 2"),
    "joint-twice": (9, "'power' stands twice"),
    "joint-method-misspelt": (7, "did you mean crimped_butt?"),
    "joint-fuse-with-unit": (7, "without quotation marks and unit"),
    "joint-length-negative": (7, "from 0 to 100"),
    "ground-drop-without-load": (8, "drop_mV and load_A together"),
    "input-twice": (11, "'door' stands twice"),
    "join-level-unknown": (8, "did you mean IV?"),
    "join-level-four-at-24": (8, "no level IV at 24 V: I, II, III"),
    "joint-fuse-type-unknown": (9, "one of: C, E, F"),
    "input-isolation-misspelt": (9, "did you mean diode?"),
    "input-reported-in-words": (9, "a date and time"),
    "route-in-words": (8, "true or false"),
    "join-ambient-in-fahrenheit": (8, "are these °F? 140 °F are 60 °C"),
    "mount-in-words": (8, "true or false"),
    "photo-without-file": (5, 'file = "photos/…"'),
    "photo-twice": (8, "'photos/a.jpg' stands twice"),
    "photo-shows-misspelt": (7, "did you mean bare_joint?"),
}


def sample(name):
    """The text of a sample."""
    return (SAMPLES / f"{name}.toml").read_text(encoding="utf-8")


def test_the_least_job_sheet():
    """Voltage and unit sheet are enough; a crank and an accessory position are taken to be there."""
    assert read_job(sample("good-least"), "job.toml") == JobSheet(vehicle=Vehicle(system_V=12), unit_sheet="unit.toml")


def test_the_full_job_sheet():
    """Every key comes out where it belongs."""
    job = read_job(sample("good-full"), "job.toml")
    assert job.vehicle == Vehicle(
        system_V=24,
        vin="1M8GDM9AXKP042788",
        plate="HV 204",
        fleet_number="0204",
        maker="Harrow & Vale",
        model="Drover 7",
        model_year=2019,
        heavy=True,
        has_crank=True,
        has_accessory=False,
        cylinders=6,
        battery_switch=True,
    )
    assert (job.unit_sheet, job.unit_serial, job.unit_id) == ("../units/lantern-2.toml", "LN2-00417", "0417")
    assert job.supply_pair == SupplyPair(24.8, 24.76, 0.01)
    assert job.report_names.columns == {"unit_id": "Device", "t": "Sent at"}
    assert sorted(job.report_names.events) == ["ign_on", "key_on", "start_up"]
    assert job.place == VehiclePlace(lat_deg=-33.1, lon_deg=151.2, accuracy_m=5.0)
    assert (job.id, job.yard, job.technician, job.date) == ("2026-031", "Millrace", "Ines Okafor", "2026-03-31")
    assert (job.meter_class, job.meter_file) == ("service", None)
    assert job.wires[0] == NamedWire(
        name="Red/blue",
        lead="supply",
        circuits=("body-builder connector X4, permanent supply, fuse F12",),
        connector="X4",
        cavity="7",
        colour="RDBU",
        size="1.5 mm2",
    )
    assert job.wires[1] == NamedWire(
        name="Violet", circuits=("ignition feed", "fuse F31"), marks=("label 'IGN'",), size="16 AWG"
    )
    assert job.joints == (
        Joint(
            lead="power",
            wire="Red/blue",
            method=Method.SOLDERED_SLEEVE,
            fuse_A=3.0,
            fuse_type="C",
            place="a hand behind connector X4",
            length_m=2.5,
            undo="cut the sleeve out and close the wire with a butt connector",
            strip_mm=8.0,
            overlap_mm=12.0,
            strain_relief=True,
            damp=False,
            drip_loop=True,
            hottest_C=70.0,
            pull_N=95.0,
            tugged=True,
            drop_mV=1.5,
            drop_A=2.0,
            right_way=True,
            tap_most_A=30.0,
            near_module=True,
            bare_mm=0.5,
            turns=5.0,
        ),
        Joint(lead="door", end="cut back and capped, 40 mm inside the loom", cut_mm=40.0, capped=True, tied_back=True),
    )
    assert job.photos == (
        NamedPhoto(file="photos/joint.jpg", shows=Shows.BARE_JOINT, note="before the sleeve was shrunk"),
        NamedPhoto(file="photos/later.png"),
    )
    assert job.hand_over == HandOver(
        end=End.PROVISIONAL,
        missing=(
            Missing(what="a report from the road", owed_by="Millrace yard office", until="2026-04-07"),
            Missing(what="one parked night", owed_by="the night watch", until="the first Monday of April"),
        ),
        restored=("fuse F12 back in its place",),
        why="no coverage in the yard",
        told_driver=("the unit draws 4 mA", "call the yard before the batteries are changed"),
    )


def test_inline_tables_and_a_byte_order_mark_read_the_same():
    """TOML may be written in many ways."""
    job = read_job(sample("good-inline-tables-and-bom"), "job.toml")
    assert job.vehicle == Vehicle(system_V=24, heavy=True)
    assert job.date == "on the last Tuesday of March"
    assert [wire.name for wire in job.wires] == ["Red", "Blue"]


def test_the_driver_may_be_told_before_the_end():
    """Of a job that has not ended: nothing says yet how it ends."""
    assert read_job(sample("good-told-before-the-end"), "job.toml").hand_over is None


@pytest.mark.parametrize("name", DEFECTS)
def test_defects_are_refused_with_line_and_expectation(name):
    """Each sample that is named for its defect."""
    line, words = DEFECTS[name]
    with pytest.raises(UnreadableError) as caught:
        read_job(sample(name), "job.toml")
    assert caught.value.place.line == line
    assert words in caught.value.expected


def test_every_defective_sample_is_in_the_table():
    """No sample lies about unread."""
    assert {path.stem for path in SAMPLES.glob("*.toml") if not path.stem.startswith("good-")} == set(DEFECTS)


VALUES = ['"x"', '""', "12", "24", "true", "[1]", '["a"]', "{}", "nan", "2026-03-31", "'18 AWG'", "''"]
LINES = [f"[{name}]" for name in (*KEYS, "other")] + ["[[wire]]", "= 3", "other = 1", '"""']
LINES += [f"{key} = {value}" for keys in KEYS.values() for key in keys for value in VALUES]


@given(st.lists(st.sampled_from(LINES), max_size=12).map("\n".join))
def test_any_sheet_is_read_or_refused(text):
    """Whatever lines are put together, nothing but the project's own error comes out, with a line that exists."""
    try:
        job = read_job("[vehicle]\nsystem_V = 12\n[unit]\nsheet = 'u'\n" + text, "job.toml")
    except UnreadableError as error:
        line, job = error.place.line, None
        refused_within = line is None or 1 <= line <= text.count("\n") + 5
    else:
        refused_within = True
    assert refused_within
    assert job is None or job.vehicle.system_V in (12, 24)
