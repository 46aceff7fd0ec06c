"""A recording in, voltage against time out: compared with plain Python reading of the same rows."""

from __future__ import annotations

import csv
import math
from itertools import pairwise
from pathlib import Path
from statistics import fmean

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from backprobe.errors import UnreadableError
from backprobe.evidence.keys import Key
from backprobe.evidence.recording import Quantity, Recording
from backprobe.formats.recording_csv import read_recording

SAMPLES = Path(__file__).parents[1] / "samples" / "recordings"


def read(*lines: str, thresholds_V: tuple[float, ...] = (10.0,)) -> Recording:
    return read_recording(lambda: lines, file="f.csv", thresholds_V=thresholds_V)


def crank(rows: int, *, dip_at: int = 50, dip_rows: int = 5) -> list[str]:
    """A battery and a wire, 100 rows a second: 12.6 V, dipping to 9.00 V, 14.2 V afterwards."""
    lines = ["time_s,battery,Red 12"]
    for i in range(rows):
        volts = 9.0 if dip_at <= i < dip_at + dip_rows else 12.6 if i < dip_at else 14.2
        lines.append(f"{i * 0.01:.2f},{volts:.2f},{volts - 0.05:.2f}")
    return lines


def test_the_figures_of_a_channel():
    """Extremes with their times, mean, digits and time below, each worked out by hand."""
    recording = read(*crank(100))
    battery = recording.channel("battery")
    assert battery is not None
    assert (battery.lowest, battery.lowest_s) == (9.0, 0.5)  # row 50 at 0.01 s a row
    assert (battery.highest, battery.highest_s) == (14.2, 0.55)  # row 55, after 5 rows of dip
    assert battery.mean == pytest.approx((50 * 12.6 + 5 * 9.0 + 45 * 14.2) / 100)
    assert battery.seconds_below == {10.0: pytest.approx(0.05)}  # 4 steps whole and 2 half: 5 x 0.01 s
    assert (battery.digits, battery.rows, battery.quantity) == (2, 100, Quantity.VOLTAGE)


def test_the_recording_itself():
    """Rows, times, pace; nothing skipped."""
    recording = read(*crank(100))
    assert (recording.name, recording.rows) == ("f.csv", 100)
    assert (recording.start_s, recording.end_s) == (0.0, 0.99)
    assert (recording.interval_s, recording.widest_gap_s) == (0.01, 0.01)
    assert (recording.time_known, recording.time_note) == (True, None)
    assert (recording.skipped, recording.skipped_count) == ((), 0)
    assert [channel.name for channel in recording.voltages] == ["battery", "Red 12"]


@pytest.mark.parametrize(
    "lines",
    [
        ["time_s,red", "0,12.6", "0.5,9.5", "1,12.5"],
        ["time_s;red", "0;12,6", "0,5;9,5", "1;12,5"],
        ["time_s\tred", "0\t12.6", "0.5\t9.5", "1\t12.5"],
        ['"time_s","red"', '"0","12,6"', '"0,5","9,5"', '"1","12,5"'],
        ["Time (ms),red (mV)", "0,12600", "500,9500", "1000,12500"],
        ["Time,red", "(ms),(mV)", "", "0,12600", "500,9500", "1000,12500"],
        ["Logger,7", "", "time_s,red", "0,12.6", "0.5,9.5", "1,12.5"],
        ["Timestamp,red", "01.05.2024 23:59:59.5,12.6", "02.05.2024 00:00:00,9.5",
         "02.05.2024 00:00:00.5,12.5"],
        ["Timestamp,red", "2024-05-01T08:00:00Z,12.6", "2024-05-01T08:00:00.5Z,9.5", "2024-05-01T08:00:01Z,12.5"],
        ["time,red", "23:59:59.5,12.6", "00:00:00.0,9.5", "00:00:00.5,12.5", "00:00:01.0,12.5", "00:00:01.5,12.5"],
        ["epoch,red", "1700000000.0,12.6", "1700000000.5,9.5", "1700000001.0,12.5"],
        ["Index,time_s,red,remark", "0,0,12.6,start", "1,0.5,9.5,", "2,1,12.5,"],
        ["time_s,red,blue", "0,12.6,", "0.5,9.5,OL", "1,12.5,0.1"],
        ["time_s,red\r\n", "0,12.6\r\n", "0.5,9.5\r\n", "1,12.5\r\n"],
        ["time_s,red V", "0,12.6 V", "0.5,9500 mV", "1,12.5 V"],
        ["time_s,red,", "0,12.6,", "0.5,9.5,", "1,12.5,"],
    ],
)  # fmt: skip
def test_ways_of_writing(lines):
    """Whatever the recorder's habits, the dip to 9.5 V comes out half a second after the start."""
    red = read(*lines).channels[0]
    assert red.name in ("red", "red V")
    assert (red.lowest, red.lowest_s) == (9.5, 0.5)


@pytest.mark.parametrize(
    ("name", "rows", "lowest_s", "skipped", "known"),
    [
        ("lines-before-the-header-and-a-unit-row.csv", 40, 1.0, 0, True),  # row 20 at 50 ms a row
        ("midnight-without-date.csv", 40, 20.0, 0, True),
        ("clock-set-back-an-hour.csv", 40, 20.0, 0, True),
        ("last-line-torn.csv", 40, 2.0, 1, True),
        ("run-time-stands-while-cranking.csv", 60, 10.0, 0, False),  # row 20 at 0.5 s a row
        ("rows-damaged.csv", 38, 2.0, 5, True),  # of 40 rows one torn, one with a time that falls back
    ],
)
def test_samples(name, rows, lowest_s, skipped, known):
    """Small files, each named for its defect; in each the dip to 9.62 V begins with row 20."""
    lines = (SAMPLES / name).read_text(encoding="utf-8").splitlines()
    recording = read_recording(lambda: lines, file=name, thresholds_V=(10.0,))
    channel = recording.channel("Red 12") or recording.channel("Rot 12") or recording.channel("CONTROL_MODULE_VOLTAGE")
    assert channel is not None
    assert recording.rows == rows
    assert round(channel.lowest, 2) == (9.58 if "Rot 12" in lines[3] else 9.62)  # the red wire lies 40 mV lower there
    assert channel.lowest_s == pytest.approx(lowest_s)
    assert (recording.skipped_count, recording.time_known) == (skipped, known)


def test_damaged_rows_are_named():
    """Torn, link lost, time falling back, 412 V, a mistyped key: five places; OL is a gap and none."""
    lines = (SAMPLES / "rows-damaged.csv").read_text(encoding="utf-8").splitlines()
    recording = read_recording(lambda: lines, file="f", thresholds_V=())
    assert sorted(s.place.line or 0 for s in recording.skipped) == [7, 10, 18, 33, 38]
    assert [(round(mark.time_s, 1), mark.key) for mark in recording.keys] == [
        (0.0, Key.ON),
        (2.0, Key.CRANK),
        (2.4, Key.RUNNING),
    ]


def test_negative_times_are_fine():
    """A scope counts from its trigger."""
    recording = read("time_s,red", "-0.2,12.6", "-0.1,12.6", "0,9.0", "0.1,12.5")
    assert (recording.start_s, recording.end_s) == (-0.2, 0.1)


def test_engine_data():
    """Voltage and speed; the run-time column stands during the crank, so time is unknown and that is said."""
    rows = ["0.0, 0.0, 17.6, 12.4,"] * 6 + ["0.0, 0.0, 17.6, 9.14,"] * 4
    rows += [f"{2.0 * (i // 4 + 1)}, 900.0, 17.6, 14.1," for i in range(40)]
    recording = read("ENGINE_RUN_TINE (),ENGINE_RPM (),THROTTLE (),CONTROL_MODULE_VOLTAGE ()", *rows)
    assert [channel.name for channel in recording.channels] == ["ENGINE_RPM", "CONTROL_MODULE_VOLTAGE"]
    voltage, speed = recording.channel("CONTROL_MODULE_VOLTAGE"), recording.channel("ENGINE_RPM")
    assert voltage is not None
    assert speed is not None
    assert not recording.time_known
    assert "stands at 0 while the engine is cranked" in (recording.time_note or "")
    assert recording.interval_s == 0.5  # four rows for every 2 s where the run time counts
    assert (voltage.lowest, voltage.lowest_s) == (9.14, 3.0)  # row 6 x 0.5 s
    assert voltage.seconds_below == {10.0: 2.0}  # 4 rows x 0.5 s
    assert (speed.quantity, speed.highest, speed.seconds_below) == (Quantity.ENGINE_SPEED, 900.0, {})
    assert (recording.start_s, recording.end_s) == (0.0, 24.5)  # 50 rows
    assert list(recording.bucket_start_s[:3]) == [0.0, 0.5, 1.0]


def test_a_standing_clock():
    """A plain file whose time stands still while rows go on is not trusted either."""
    rows = [f"{t:g},12.5" for t in [0, 1, 2, 3, *[4] * 9, 5, 6, 7]]
    recording = read("time_s,red", *rows)
    assert not recording.time_known
    assert "stands still at 4 s over 9 rows" in (recording.time_note or "")


def test_a_clock_set_back_is_joined_with_a_note():
    """The hour of winter time is not lost, and said."""
    times = [7200 + i for i in range(10)] + [7200 + 10 - 3600 + i for i in range(10)]
    recording = read("time_s,red", *(f"{t},12.5" for t in times))
    assert recording.rows == 20
    assert recording.end_s - recording.start_s == 19.0
    assert recording.time_known
    assert "set back by 3599 s at line 12" in (recording.time_note or "")


def test_key_column():
    """Turns of the key; unknown words are counted and keep their row's voltages."""
    words = ["off", "off", "On", "on", "cranck", "crank", "", "running"]
    recording = read("time_s,red,key", *(f"{i},12.{i},{word}" for i, word in enumerate(words)))
    assert [(mark.time_s, mark.key) for mark in recording.keys] == [
        (0.0, Key.OFF),
        (2.0, Key.ON),
        (5.0, Key.CRANK),
        (7.0, Key.RUNNING),
    ]
    assert recording.rows == 8
    assert [(s.place.line, s.place.text) for s in recording.skipped] == [(6, "cranck")]


def test_a_key_back_to_on_is_a_turn():
    """A key column may fall back to `on` after the crank."""
    words = ["on", "crank", "on"]
    recording = read("time_s,red,key", *(f"{i},12,{word}" for i, word in enumerate(words)))
    assert [mark.key for mark in recording.keys] == [Key.ON, Key.CRANK, Key.ON]


@pytest.mark.parametrize(
    ("row", "says"),
    [
        ("0.3", "a whole row of 3 cells"),
        ("0.3,12", "a whole row of 3 cells"),
        ("0.3,12,12,12", "at most 3 cells"),
        ("soon,12,12", "a time"),
        ("nan,12,12", "a time"),
        ("-5,12,12", "a time that goes on"),
        ("0.3,12,1\0", "a whole row"),
        ("0.3,12,120", "blue within -80 to 80"),
        ("0.3,12,inf", "blue within -80 to 80"),
        ("0.3,12,low", "a figure in V in column blue"),
        ("0.3,12,1_2", "a figure in V in column blue"),
        ("0.3,12,٣", "a figure in V in column blue"),
        ("0.3,12,12 A", "a figure in V in column blue"),
        ("time_s,red,blue", "a time"),
    ],
)
def test_what_is_skipped(row, says):
    """Each is counted with its line; the rows around it are read."""
    rows = [f"{i / 10},12,12" for i in range(8)]
    recording = read("time_s,red,blue", *rows[:3], row, *rows[3:])
    assert recording.skipped_count == 1
    assert recording.skipped[0].place.line == 5
    assert says in recording.skipped[0].expected
    blue = recording.channel("blue")
    assert blue is not None
    assert (blue.lowest, blue.highest, blue.rows) == (12.0, 12.0, 8)


def test_a_channel_is_not_lost_among_damage():
    """More bad cells than good ones: the channel stays, the bad cells are counted."""
    recording = read("time_s,red,blue", "0,12.6,1", "1,12.5,1", *[f"{i},:,1" for i in range(2, 6)])
    red = recording.channel("red")
    assert red is not None
    assert (red.rows, recording.skipped_count) == (2, 4)


def test_the_first_twenty_places_and_the_full_count():
    """Fifty bad rows: all counted, twenty shown."""
    rows = [line for i in range(50) for line in (f"{i},12.5", "torn")]
    recording = read("time_s,red", *rows)
    assert (len(recording.skipped), recording.skipped_count, recording.rows) == (20, 50, 50)


def test_a_torn_last_line():
    """'1' where every line above has two decimals is the beginning of 12.60: left out, and said."""
    rows = [f"{i / 10:.1f},12.60" for i in range(9)]
    recording = read("time_s,red", *rows, "0.9,1")
    assert recording.rows == 9
    assert recording.channels[0].lowest == 12.6
    assert recording.skipped[0].place.line == 11
    assert read("time_s,red", *rows, "0.9,12.61").skipped_count == 0


def test_figures_with_few_decimals_are_no_torn_lines():
    """Where a recorder drops zeros at the end, a short last figure is nothing special."""
    assert read("time_s,red", "0,12.65", "1,12.6", "2,12.55", "3,12.5", "4,12").rows == 5


def test_gaps_are_nan_and_not_counted():
    """Empty cells, dashes and OL are no values and no faults."""
    recording = read("time_s,red", "0,12", "1,", "2,-", "3,OL", "4,NaN", "5,11")
    assert recording.skipped_count == 0
    assert (recording.rows, recording.channels[0].rows, recording.channels[0].mean) == (6, 2, 11.5)
    window = recording.fine(0.0, 5.0)
    assert [math.isnan(v) for v in window.values["red"]] == [False, True, True, True, True, False]


def test_a_channel_without_values_is_left_out_and_said():
    """Nothing was connected: no channel, one place."""
    recording = read("time_s,red,blue", "0,12,", "1,12,")
    assert [channel.name for channel in recording.channels] == ["red"]
    assert recording.skipped[0].place.text == "blue"
    assert list(recording.fine(0, 1).values) == ["red"]


@pytest.mark.parametrize(
    ("lines", "says"),
    [
        ([], "a header line"),
        (["12.6,12.5", "12.6,12.5"], "a header line"),
        (["time_s,red"], "rows below the header"),
        (["time_s,red,Red", "0,1,1"], "each channel once"),
        (["time_s,red", "0,-", "1,-"], "a voltage in at least one row of red"),
        (["time_s,red", "0,12,6", "1,12,6"], "not one row can be read"),
        (["time_s,current (A)", "0,1"], "a column with voltages"),
    ],
)
def test_unreadable(lines, says):
    """Where there is nothing to judge the file is refused."""
    with pytest.raises(UnreadableError, match=r"f\.csv") as refusal:
        read(*lines)
    assert says in refusal.value.expected


def test_a_key_that_never_rests_is_refused():
    """More turns than any hand makes would fill the memory."""
    words = ["on", "off"] * 6000
    with pytest.raises(UnreadableError, match="turned at most 10,000 times"):
        read("time_s,red,key", *(f"{i},12,{word}" for i, word in enumerate(words)))


def long(rows: int) -> list[str]:
    """Rows enough for several blocks, no two alike."""
    return ["time_s,a,b"] + [
        f"{i * 0.002:.3f},{12 + (i * 37 % 101) / 100:.2f},{(i * 53 % 97) / 10:.1f}" for i in range(rows)
    ]


def test_a_long_recording_against_plain_python():
    """30,000 rows: every figure as the csv module and plain Python give it."""
    lines = long(30_000)
    recording = read(*lines, thresholds_V=(5.0, 12.5))
    rows = [[float(cell) for cell in row] for row in csv.reader(lines[1:])]
    times = [row[0] for row in rows]
    assert recording.widest_gap_s == pytest.approx(max(b - a for a, b in pairwise(times)))
    for place, name in ((1, "a"), (2, "b")):
        channel = recording.channel(name)
        assert channel is not None
        values = [row[place] for row in rows]
        assert (channel.lowest, channel.highest) == (min(values), max(values))
        assert channel.lowest_s == times[values.index(min(values))]
        assert channel.highest_s == times[values.index(max(values))]
        assert channel.mean == pytest.approx(fmean(values), abs=1e-12)
        for threshold, seconds in channel.seconds_below.items():
            halves = [(t - s) * ((v < threshold) + (u < threshold)) / 2
                      for (s, u), (t, v) in pairwise(zip(times, values, strict=True))]  # fmt: skip
            assert seconds == pytest.approx(sum(halves), abs=1e-9)
        starts = [times.index(start) for start in recording.bucket_start_s]
        for i, (first, end) in enumerate(pairwise([*starts, len(times)])):
            assert channel.envelope.lows[i] == min(values[first:end])
            assert channel.envelope.highs[i] == max(values[first:end])


NO_ROWS = ["", "torn", "0.1,12", ",,,", "x,12.1,3", "nan,1,1", "# note", "\0"]
WRONG_TIMES = ["1,OL,2", "5,12.5,oops", "0.2,99,1", "-7,12,3"]
ODD = st.sampled_from(NO_ROWS + WRONG_TIMES)


@settings(max_examples=40, deadline=None)
@given(st.dictionaries(st.integers(0, 5999), ODD, max_size=12))
def test_odd_lines_cost_only_themselves(odd):
    """Odd lines strewn in cost themselves; a wrong time within 20 steps of the right one may cost those 20 rows."""
    lines = long(6000)
    good = [line for at, line in enumerate(lines[1:]) if at not in odd]
    for at, line in odd.items():
        lines[1 + at] = line
    recording = read(*lines)
    window = recording.fine(recording.start_s, recording.end_s)
    assert len(window.time_s) == recording.rows
    assert list(window.time_s) == sorted(window.time_s)
    assert recording.channels[0].lowest == min(v for v in window.values["a"] if not math.isnan(v))
    wrong = sum(1 for line in odd.values() if line in WRONG_TIMES)
    assert len(good) - 20 * wrong <= recording.rows <= len(good) + wrong
    if not wrong:
        assert list(window.time_s) == [float(line.split(",")[0]) for line in good]
        assert list(window.values["b"]) == [float(line.split(",")[2]) for line in good]
    assert recording.skipped_count >= sum(1 for line in odd.values() if line not in ("", "# note", *WRONG_TIMES))


@settings(deadline=None)
@given(st.lists(st.text(), max_size=8))
def test_any_text(lines):
    """Arbitrary text gives a recording or the project's own refusal, nothing else."""
    try:
        assert read(*lines).rows > 0
    except UnreadableError:
        return


CELLS = st.sampled_from(
    ["0", "1", "2.5", "-3", "1e9", "nan", "inf", "1e999", "12.6", "120", "", "OL", "on", "crank", '"', "\v", "1_0"]
)


@settings(deadline=None)
@given(
    st.lists(st.lists(CELLS, max_size=5).map(",".join), max_size=12),
    st.sampled_from(["time_s,red,key", "t;red", "run_time,red"]),
)
def test_any_rows(rows, header):
    """The same below a header, and what comes out fits together."""
    try:
        recording = read(header, *rows)
    except UnreadableError:
        return
    assert recording.start_s <= recording.end_s
    assert math.isfinite(recording.end_s)
    for channel in recording.channels:
        assert -80 <= channel.lowest <= channel.mean + 1e-9
        assert channel.mean <= channel.highest + 1e-9 <= 80 + 1e-9
        assert len(channel.envelope.lows) == len(recording.bucket_start_s)
    assert len(recording.fine(recording.start_s, recording.end_s).time_s) == recording.rows
