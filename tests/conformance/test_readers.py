"""One examination for every reader of tables: whatever is wrong with the file, they answer alike.

A reader yields what it can, counts what it passes over with file, line and text, and refuses with the project's own
error what holds nothing.
"""

from __future__ import annotations

import tracemalloc
from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from backprobe.errors import Skipped, UnreadableError
from backprobe.files.open import text_lines
from backprobe.formats.readings_csv import MOST_ROWS, read_readings
from backprobe.formats.recording_csv import read_recording

Opener = Callable[[], Iterable[str]]


@dataclass(frozen=True)
class Examined:
    """What a reader made of a file: the figures it took, in order, and what it passed over."""

    volts: list[float]
    skipped: Sequence[Skipped]


@dataclass(frozen=True)
class Reader:
    """A reader under examination: how it is called, a header, and rows to read with the volts each must give."""

    name: str
    read: Callable[[Opener], Examined]
    header: str
    row: Callable[[int], tuple[str, float]]
    most_rows: int

    def lines(self, rows: int) -> list[str]:
        """A file of so many rows."""
        return [self.header, *(self.row(i)[0] for i in range(rows))]

    def volts(self, rows: int) -> list[float]:
        """What those rows hold."""
        return [self.row(i)[1] for i in range(rows)]


def examine_readings(lines: Opener) -> Examined:
    table = read_readings(lines(), file="f.csv", system_V=12)
    return Examined([reading.volts for reading in table.readings], table.skipped)


def examine_recording(lines: Opener) -> Examined:
    recording = read_recording(lines, file="f.csv", thresholds_V=(9.0,))
    window = recording.fine(recording.start_s, recording.end_s)
    return Examined(list(window.values["Grün 1"]), recording.skipped)


READERS = [
    Reader(
        "readings",
        examine_readings,
        "wire,key,volts",
        lambda i: (f"Grün {i},on,{10 + i % 40 / 10:.1f}", float(f"{10 + i % 40 / 10:.1f}")),
        MOST_ROWS,
    ),
    Reader(
        "recording",
        examine_recording,
        "time_s,Grün 1,battery",
        lambda i: (f"{i / 100:.2f},{10 + i % 40 / 10:.1f},12.60", float(f"{10 + i % 40 / 10:.1f}")),
        100_000,
    ),
]
by_name = pytest.mark.parametrize("reader", READERS, ids=lambda reader: reader.name)


@by_name
@pytest.mark.parametrize("codec", ["utf-8", "utf-8-sig", "utf-16", "utf-16-le", "utf-16-be", "cp1252"])
@pytest.mark.parametrize("end", ["\n", "\r\n", "\r"])
def test_encodings_and_line_ends(tmp_path, reader, codec, end):
    """A wire called 'Grün' from any system: the same figures, nothing skipped."""
    path = tmp_path / "f.csv"
    path.write_bytes((end.join(reader.lines(50)) + end).encode(codec))
    examined = reader.read(text_lines(path))
    assert examined.volts == reader.volts(50)
    assert list(examined.skipped) == []


@by_name
@pytest.mark.parametrize(("delimiter", "comma"), [(";", True), ("\t", True), (";", False), ("\t", False)])
def test_delimiters_and_decimal_commas(reader, delimiter, comma):
    """As a spreadsheet of another country saves it."""
    lines = [line.replace(",", delimiter) for line in reader.lines(50)]
    if comma:
        lines = [lines[0], *(line.replace(".", ",") for line in lines[1:])]
    assert reader.read(lambda: lines).volts == reader.volts(50)


@by_name
def test_quoted_decimal_commas(reader):
    """Every cell in quotes, commas inside them."""
    rows = [",".join(f'"{cell}"' for cell in line.split(",")).replace(".", ",") for line in reader.lines(50)[1:]]
    assert reader.read(lambda: [reader.header, *rows]).volts == reader.volts(50)


@by_name
@pytest.mark.parametrize("junk", ["~~~~", "torn, li", "?,?,?", '"never closed', "Grün", "\u2028\u2028x", "=1+1,,#REF!"])
@pytest.mark.parametrize("at", [1, 25, 50])
def test_junk_is_counted_with_its_place(reader, junk, at):
    """A line of junk costs itself: one place with file, line and text; every other row is read."""
    lines = reader.lines(50)
    lines.insert(at, junk)
    examined = reader.read(lambda: lines)
    assert examined.volts == reader.volts(50)
    assert [(s.place.file, s.place.line, s.place.text) for s in examined.skipped] == [("f.csv", at + 1, junk)]
    assert examined.skipped[0].expected


@by_name
def test_a_line_torn_off(reader):
    """The last line ends in the middle: it is counted or read, and everything above it stands."""
    lines = reader.lines(50)
    for length in range(1, len(lines[-1])):
        torn = [*lines[:-1], lines[-1][:length]]
        examined = reader.read(lambda torn=torn: torn)
        assert examined.volts[:49] == reader.volts(49)
        assert len(examined.volts) - 49 + len(examined.skipped) == 1


@by_name
def test_blank_lines_and_notes(reader):
    """Blank lines and lines that begin with # are neither read nor counted, and keep their number."""
    lines = ["", "# a note", *reader.lines(20), "", "# the end", "junk", ""]
    examined = reader.read(lambda: lines)
    assert examined.volts == reader.volts(20)
    assert [skipped.place.line for skipped in examined.skipped] == [26]


@by_name
@pytest.mark.parametrize(
    "lines", [[], [""], ["\ufeff"], ["only words"], ["1,2,3", "4,5,6"], ["\0\0\0\0"], ["a,b,c"] * 30], ids=repr
)
def test_nothing_to_read(reader, lines):
    """No header: refused with the file's name, never with anything but the project's own error."""
    with pytest.raises(UnreadableError) as refusal:
        reader.read(lambda: lines)
    assert refusal.value.place.file == "f.csv"


@by_name
def test_rows_of_which_none_can_be_read(reader):
    """Rows stand there and not one is any good: that is bad input, and the first bad row is named."""
    with pytest.raises(UnreadableError) as refusal:
        reader.read(lambda: [reader.header, "junk", "more junk"])
    assert "line" in str(refusal.value)


@by_name
def test_an_empty_file(tmp_path, reader):
    """An empty file is refused in plain words."""
    path = tmp_path / "f.csv"
    path.touch()
    with pytest.raises(UnreadableError, match="this one is empty"):
        reader.read(text_lines(path))


@by_name
def test_memory_is_flat(reader):
    """As many rows as may come, from a stream: far less memory than the rows would take."""

    def stream() -> Iterator[str]:
        yield reader.header
        for i in range(reader.most_rows):
            yield reader.row(i)[0]

    def peak_MB() -> float:
        tracemalloc.start()
        if reader.name == "recording":
            assert read_recording(stream, file="f.csv", thresholds_V=(9.0,)).rows == reader.most_rows
        else:
            assert len(reader.read(stream).volts) == reader.most_rows
        peak = tracemalloc.get_traced_memory()[1] / 1e6
        tracemalloc.stop()
        return peak

    assert peak_MB() < 10  # 100,000 rows of 3 cells are some 20 MB as Python strings and floats


def test_the_recording_reader_needs_no_more_for_ten_times_the_rows():
    """Peak memory of 20,000 and of 200,000 rows, both past the limit of the envelope, is the same within a tenth."""

    def peak(rows: int) -> int:
        def stream() -> Iterator[str]:
            yield "time_s,a,b"
            for i in range(rows):
                yield f"{i / 100:.2f},{10 + i % 40 / 10:.1f},12.60"

        tracemalloc.start()
        assert read_recording(stream, file="f.csv", thresholds_V=()).rows == rows
        most = tracemalloc.get_traced_memory()[1]
        tracemalloc.stop()
        return most

    assert peak(200_000) < 1.1 * peak(20_000)


@by_name
@settings(deadline=None)
@given(lines=st.lists(st.text(), max_size=8), headed=st.booleans())
def test_any_text(reader, lines, headed):
    """Arbitrary text, with and without a header above it: a result or the project's own refusal."""
    lines = [reader.header, *reader.lines(2)[1:], *lines] if headed else lines
    try:
        reader.read(lambda: lines)
    except UnreadableError as refusal:
        assert str(refusal)  # noqa: PT017
