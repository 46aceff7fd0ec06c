"""What a unit says at the moment."""

import pytest
from tests.samples.prove_cases import HEADER, START_S, row

from backprobe.formats.reports_csv import read_reports
from backprobe.stages.prove.heard import Heard, heard_of
from backprobe.stages.prove.setup import ProveSetup

SETUP = ProveSetup(unit_serial="L1")


def heard(*rows, header=HEADER, setup=SETUP):
    """What is heard by these rows."""
    return heard_of(read_reports([header, *rows], file="reports.csv"), setup=setup)


def test_the_newest_by_the_units_own_stamp():
    """A buffered report that arrives last is not what the unit says now: at 60 s it is on, at 90 s there is no fix."""
    found = heard(row(60, "ignition_on", 1), row(90, "heartbeat", place=",,"), row(10, "boot", 0, late=200.0))
    assert (found.count, found.others) == (3, 0)
    assert (found.last_s, found.received_s) == (START_S + 90, START_S + 91)
    assert (found.fix_s, found.ignition, found.ignition_s) == (START_S + 60, True, START_S + 60)
    assert found.as_json()["supply_V"] == 12.4


def test_an_event_says_the_ignition_where_the_column_is_empty():
    """Off by the event of the last report."""
    found = heard(row(60, "ignition_on", 1), row(90, "ignition_off"))
    assert (found.ignition, found.ignition_s) == (False, START_S + 90)


def test_other_units_are_counted_and_say_nothing():
    """Reports of two neighbours, none of the job's own; a file's only unit is taken for it, as in the proof."""
    assert heard(row(60, "ignition_on", 1, unit="L2"), row(61, unit="L3")) == Heard(count=0, others=2)
    assert heard(row(60, unit="L2"), row(61, unit="L2")).count == 2


@pytest.mark.parametrize(
    ("setup", "count"), [(ProveSetup(unit_id="l2"), 1), (ProveSetup(unit_id="L9"), 0), (ProveSetup(), 0)]
)
def test_the_unit_that_is_named_is_meant(setup, count):
    """Its id in any case of letters; where nobody named one of several, none is taken."""
    assert heard(row(60, unit="L1"), row(61, unit="L2"), setup=setup).count == count


def test_without_units_all_are_the_jobs():
    """A file with no column of units."""
    rows = [each.partition(",")[2] for each in (row(60), row(61))]
    assert heard(*rows, header=HEADER.partition(",")[2]).count == 2
