"""Where a recording's rows begin and what stands in each column."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from backprobe.errors import UnreadableError
from backprobe.evidence.recording import Quantity
from backprobe.formats.recording_layout import Layout, layout_of


def names(layout: Layout) -> list[str]:
    return [column.name for column in layout.columns]


@pytest.mark.parametrize(
    ("head", "skip", "channels"),
    [
        (["time_s,battery,Red 12,key", "0,12.6,0.1,off"], 1, ["battery", "Red 12"]),
        (["Zeit;Rot (mV)", "0,00;12600"], 1, ["Rot"]),
        (["t\tred\tblue", "0\t1,5\t2"], 1, ["red", "blue"]),
        (["time|red", "0|1.5"], 1, ["red"]),
        (["Time,Channel A,Channel B", "(ms),(mV),(A)", "", "0,12600,3"], 2, ["Channel A"]),
        (["Logger,DL-7", "Time,14:46", "", "time_s,red", "0,12.1"], 4, ["red"]),
        (["sep=;", "time;red", "0;12,1"], 2, ["red"]),
        (["# time_s,red", "0,12.1"], 1, ["red"]),
        (["\ufefftime_s,red\r\n", "0,12.1\r\n"], 1, ["red"]),
        (["Index,Timestamp,Voltage(V),Serial Number", "0,06.06.2020 14:46:55,12.1,7"], 1, ["Voltage"]),
        (["No.,time_s,red,remark", "1,0,12.1,ok", "2,1,12.0,ok", "3,2,12.0,ok"], 1, ["red"]),
        (["time_s,1,2", "0,12.1,0.2"], 1, ["1", "2"]),
        (["time_s,12V,5V ref", "0,12.1,5.0"], 1, ["12V", "5V ref"]),
    ],
)
def test_layouts(head, skip, channels):
    """Lines before the header, unit rows, delimiters, and columns that are not for us."""
    layout = layout_of(head, file="f")
    assert layout.skip == skip
    assert names(layout) == channels


def test_engine_data_by_channel_name():
    """Of a file of engine data only the module's voltage and the engine's speed are taken."""
    head = ["ENGINE_RUN_TINE (),ENGINE_RPM (),THROTTLE (),CONTROL_MODULE_VOLTAGE ()", "0.0, 0.0, 17.6, 12.382,"]
    layout = layout_of(head, file="f")
    assert [(c.name, c.quantity, c.place) for c in layout.columns] == [
        ("ENGINE_RPM", Quantity.ENGINE_SPEED, 1),
        ("CONTROL_MODULE_VOLTAGE", Quantity.VOLTAGE, 3),
    ]
    assert layout.run_time
    assert layout.time_place == 0


def test_a_column_of_units():
    """It counts where one channel has no unit of its own; with two channels it cannot be told whose it is."""
    assert layout_of(["time_s,value,unit", "0,12.6,V"], file="f").unit_place == 2
    assert layout_of(["time_s,value,unit", "0,350,mV"], file="f").unit_place == 2
    assert layout_of(["time_s,value (mV),unit", "0,12.6,V"], file="f").unit_place is None
    assert layout_of(["time_s,a,b,unit", "0,12.6,1,V"], file="f").unit_place is None


def test_a_real_clock_is_preferred_to_the_run_time():
    """Where the file has both, the clock that always goes on is taken."""
    layout = layout_of(["ENGINE_RUN_TIME (),time_s,CONTROL_MODULE_VOLTAGE ()", "0,0.5,12.3"], file="f")
    assert (layout.time_place, layout.run_time) == (1, False)


def test_digits_are_those_written():
    """Decimals in V: '12600' mV has three, '12.30' V two; of several rows the most count."""
    layout = layout_of(["time_s,a (mV),b,c", "0,12600,12.30,12", "1,12600,12.3,12"], file="f")
    assert [column.digits for column in layout.columns] == [3, 2, 0]


def test_figures_too_large_for_volts_are_noted():
    """12600 without a unit is neither a voltage nor silently dropped."""
    layout = layout_of(["time_s,red,blue", "0,12600,12.6", "1,12600,12.6"], file="f")
    assert names(layout) == ["blue"]
    assert layout.notes[0].place.text == "red"
    assert "is (mV) missing" in layout.notes[0].expected


def test_running_numbers_are_no_voltage():
    """Ten rows numbered one by one; a short ramp of whole volts is still a channel."""
    numbered = ["line,time_s,red", *[f"{i},{i / 10},12.5" for i in range(10)]]
    assert names(layout_of(["count off" + numbered[0][4:], *numbered[1:]], file="f")) == ["red"]
    assert names(layout_of(["time_s,red", "0,10", "1,11", "2,12"], file="f")) == ["red"]


def test_a_channel_among_damage_is_kept():
    """Two good rows among many torn ones still show what the column is; mostly words are passed over and noted."""
    head = ["time_s,red,blue", "0,12.6,0.1", "1,12.5,0.1", *[f"{i},:,0.1" for i in range(2, 12)]]
    assert names(layout_of(head, file="f")) == ["red", "blue"]
    layout = layout_of(["time_s,red,blue", "0,7,0.1", *[f"{i},word,0.1" for i in range(1, 30)]], file="f")
    assert names(layout) == ["blue"]
    assert layout.notes[0].expected == "voltages in V; red holds mostly words"


@pytest.mark.parametrize(
    ("head", "line", "says"),
    [
        ([], None, "a header line"),
        (["", "\ufeff"], None, "a header line"),
        (["0,12.1", "1,12.2"], 1, "a header line"),
        (["red,blue", "12.1,12.2"], 1, "a header line"),
        (["time_s,red"], 1, "rows below the header"),
        (["time_s,red", "# nothing"], 1, "rows below the header"),
        (["time_s,red", "soon,12.1"], 1, "a count of seconds"),
        (["time_s,temperature (°C)", "0,21"], 1, "a column with voltages"),
        (["time_s,red", "0,12600"], 1, "is (mV) missing"),
        (["time_s,red,Red (V)", "0,12,12"], 1, "red stands there 2 times"),
        (["time_s,red,key,key", "0,12,on,on"], 1, "key stands there 2 times"),
    ],
)
def test_refused(head, line, says):
    """What has no header, time, rows or voltage is refused with its line."""
    with pytest.raises(UnreadableError) as refusal:
        layout_of(head, file="f")
    assert refusal.value.place.line == line
    assert says in refusal.value.expected


@given(st.lists(st.text(), max_size=6))
def test_any_text(head):
    """Any text has a layout or is refused in the project's own way."""
    try:
        assert layout_of(head, file="f").columns
    except UnreadableError:
        return


@given(
    st.lists(st.lists(st.sampled_from(["time_s", "red", "0", "1", "12.1", "(V)", "key", "", '"', "on"])), max_size=6)
)
def test_any_cells(rows):
    """The same with cells that look like those of a recording."""
    try:
        layout = layout_of([",".join(row) for row in rows], file="f")
    except UnreadableError:
        return
    assert layout.needed <= layout.width
    assert layout.skip <= len(rows)
