"""Tables of reports."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from backprobe.errors import UnreadableError
from backprobe.evidence.report import Event, Fix
from backprobe.formats.report_columns import names_from_option, names_from_toml
from backprobe.formats.reports_csv import read_reports

HEADER = "unit_id,t,received_at,lat,lon,accuracy_m,speed_kmh,sats,hdop,supply_V,ignition,event"
FULL = "L1,2026-03-31T08:00:00Z,2026-03-31T08:00:02Z,-33.1,151.2,4.5,12.5,9,0.9,12.41,1,ignition_on"


def read(*rows, header=HEADER, names=None):
    """The table with these rows."""
    return read_reports([header, *rows], file="reports.csv", names=names)


def test_every_column_is_read():
    """Each cell where it belongs."""
    report = read(FULL).reports[0]
    assert (report.unit_id, report.written) == ("L1", "2026-03-31T08:00:00Z")
    assert report.received_s - report.time_s == 2.0
    assert report.fix == Fix(-33.1, 151.2, 4.5, 0.9, 9)
    assert (report.speed_kmh, report.supply_V, report.ignition, report.event) == (12.5, 12.41, True, Event.IGNITION_ON)


def test_columns_may_be_absent_and_cells_empty():
    """Nothing is made up for them."""
    report = read("1774944000", header="t").reports[0]
    assert (report.unit_id, report.received_s, report.fix, report.ignition, report.event) == (
        "",
        None,
        None,
        None,
        None,
    )
    bare = read("L1,1774944000,,,,,,,,,,null").reports[0]
    assert (bare.fix, bare.supply_V, bare.event) == (None, None, None)


def test_zero_zero_is_no_fix():
    """Units without a position send it."""
    assert read("L1,1774944000,,0.000000,0.0,3,,,,,,").reports[0].fix is None
    assert read("L1,1774944000,,0.0,9.5,3,,,,,,").reports[0].fix == Fix(0.0, 9.5, 3.0)


@pytest.mark.parametrize(
    ("word", "on"), [("1", True), ("On", True), ("true", True), ("0", False), ("OFF", False), ("no", False)]
)
def test_ignition_words(word, on):
    """As servers write them."""
    assert read(f"L1,1774944000,{word}", header="unit_id,t,ignition").reports[0].ignition is on


def test_events_of_other_names():
    """A map file translates them; events that say nothing here are passed over."""
    names = names_from_toml('[events]\nignition_on = "IGN ON"\npower_lost = ["main cut"]', "names.toml")
    header = "unit_id,t,event"
    rows = ["L1,1774944000,Ign-On", "L1,1774944001,MAIN CUT", "L1,1774944002,boot", "L1,1774944003,harsh braking"]
    found = [report.event for report in read(*rows, header=header, names=names).reports]
    assert found == [Event.IGNITION_ON, Event.POWER_LOST, Event.BOOT, None]


def test_columns_of_other_names_and_a_decimal_comma():
    """Semicolons between cells leave the comma to figures."""
    names = names_from_option("unit_id=Gerät,t=Zeit,supply_V=U")
    report = read("L1;31.03.2026 08:00:00;12,41", header="Gerät;Zeit;U", names=names).reports[0]
    assert (report.unit_id, report.supply_V) == ("L1", 12.41)


def test_times_without_zone_are_told():
    """They are UTC until somebody says otherwise."""
    assert read("L1,2026-03-31 08:00:00", header="unit_id,t").zoneless
    assert not read(FULL).zoneless


def test_rows_and_cells_that_cannot_be_read_are_counted():
    """A row needs its time; any other cell is left empty."""
    table = read(
        FULL,
        "L1,yesterday,,,,,,,,,,",
        "L1,1774944000,,95,10,,,,,nan,maybe,",
        "L1,1774944001,later,,,,,,,lots,,",
        FULL + ",x",
    )
    assert len(table.reports) == 3
    assert (table.skipped_rows, table.bad_cells) == (2, 4)
    assert [skipped.place.line for skipped in table.skipped] == [3, 6]
    assert table.reports[1].fix is None


def test_torn_rows_are_read_as_far_as_they_go():
    """The time is enough."""
    assert read("L1,2026-03-31T08:00:00Z,2026-03-31T08:0").reports[0].received_s is None


def test_the_servers_stamps_stand_in_for_missing_ones():
    """A table without t has received_at for both."""
    report = read("L1,1774944000", header="unit_id,received_at").reports[0]
    assert report.time_s == report.received_s == 1774944000.0


@pytest.mark.parametrize(
    ("rows", "words"),
    [((), "there are none"), (("L1,soon", "L1,later"), "not one of 2 rows"), (("\0",), "binary")],
)
def test_a_table_without_reports_is_refused(rows, words):
    """In plain words."""
    with pytest.raises(UnreadableError) as caught:
        read(*rows, header="unit_id,t")
    assert words in str(caught.value)
    with pytest.raises(UnreadableError):
        read_reports([], file="reports.csv")


CELLS = st.text(alphabet='0123456789.,-+TZ:eEnaif" ;\tx', max_size=12)


@given(st.lists(st.lists(CELLS, max_size=14).map(",".join), max_size=6))
def test_any_rows_are_read_or_refused(rows):
    """Nothing but the project's own error comes out, and no row is lost without a count."""
    try:
        table = read(FULL, *rows)
    except UnreadableError:
        return
    said = [row for row in rows if row.strip() and not row.strip().startswith("#")]
    assert len(table.reports) + table.skipped_rows in (len(said), len(said) + 1)


def test_an_export_without_reports_may_be_taken_as_it_is():
    """A header alone: no report, of no unit; rows of which none can be read are refused all the same."""
    table = read_reports(["unit_id,t"], file="r.csv", may_be_empty=True)
    assert (table.reports, dict(table.units), table.columns) == ((), {}, {"unit_id", "t"})
    with pytest.raises(UnreadableError):
        read_reports(["unit_id,t", "L1,soon"], file="r.csv", may_be_empty=True)
