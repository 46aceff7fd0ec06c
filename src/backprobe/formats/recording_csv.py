"""A recording: lines of CSV in, voltage against time out, in one pass and in memory that does not grow with the rows.

`time_s,<channel>…[,key]`, as real recorders export it: other delimiters, decimal comma, units in the header or in a
row beneath it, lines before the header, dates and times of day, columns that are not for us, cells that hold nothing.
Engine data by channel name (`CONTROL_MODULE_VOLTAGE ()`, `ENGINE_RPM ()`, a run-time column) is read as well.
"""

from __future__ import annotations

from array import array
from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass, field
from itertools import islice

from backprobe.errors import Place, UnreadableError
from backprobe.evidence.keys import Key
from backprobe.evidence.recording import Channel, Envelope, KeyMark, Quantity, Recording
from backprobe.formats.recording_block import Block, Faults
from backprobe.formats.recording_buckets import Buckets
from backprobe.formats.recording_channel import Tally, stretch_of
from backprobe.formats.recording_layout import HEAD_LINES, Layout, layout_of
from backprobe.formats.recording_pace import UNKNOWN_S, Pace
from backprobe.formats.recording_rows import Rows, Start, rows_from
from backprobe.formats.recording_window import Span, Windows

MOST_STARTS = 8192
MOST_MARKS = 10_000
KEYS = frozenset(Key)
KEY_WORDS = ", ".join(Key)


def read_recording(open_lines: Callable[[], Iterable[str]], *, file: str, thresholds_V: Sequence[float]) -> Recording:
    """The recording that `open_lines()` holds; it is opened anew for the head, for the pass and for each window.

    `file` is the name shown in messages; for each of `thresholds_V` every voltage channel gets the seconds spent
    below it. Rows that are torn, or whose time is none or falls back, are left out, and values that no vehicle shows
    become gaps; both are counted, the first 20 with their place. Channels without a single value are left out.
    Raises UnreadableError where there is no header, no time, no voltage, or not one row that can be read.

    >>> recording = read_recording(lambda: ["time_s,red", "0,12.6", "1,9.4", "2,12.4"], file="f", thresholds_V=[10.0])
    >>> red = recording.channels[0]
    >>> red.lowest, red.lowest_s, red.seconds_below
    (9.4, 1.0, {10.0: 1.0})
    """
    layout = layout_of(list(islice(open_lines(), HEAD_LINES)), file=file)
    reading = _Pass(layout, thresholds_V)
    for note in layout.notes:
        reading.faults.add(note.place, note.expected)
    for rows in rows_from(Start(layout.skip), iter(open_lines()), layout=layout, faults=reading.faults):
        reading.take(rows)
    return reading.recording(open_lines)


@dataclass(slots=True)
class _Marks:
    """The turns of the key: row, time and position of each."""

    file: str
    word: str = ""
    turns: list[tuple[int, float, Key]] = field(default_factory=list)

    def take(self, block: Block, *, row: int, faults: Faults) -> None:
        """Take in a block's key words; unknown ones are counted and change nothing."""
        words = block.keys
        if words is None or {word.strip() for word in set(words)} == {self.word}:
            return
        for index, word in enumerate(words):
            word = word.strip()
            plain = word.lower()
            if word == self.word or not word:
                continue
            if plain not in KEYS:
                faults.add(Place(self.file, block.lines[index], word), f"a key position: {KEY_WORDS}")
                continue
            self.word = word
            if not self.turns or self.turns[-1][2] != plain:
                self.turns.append((row + index, block.times[index], Key(plain)))
        if len(self.turns) > MOST_MARKS:
            place = Place(self.file, block.lines[-1])
            raise UnreadableError(place, f"a key that is turned at most {MOST_MARKS:,} times in one recording")


class _Pass:
    """The one pass over all rows."""

    def __init__(self, layout: Layout, thresholds_V: Sequence[float]) -> None:
        self.layout = layout
        self.faults = Faults()
        self.pace = Pace()
        self.buckets = Buckets(len(layout.columns))
        self.marks = _Marks(layout.file)
        self.starts: list[Start] = []
        self.every = 1  # every which block is kept as a start
        self.blocks = self.rows = 0
        self.first_s = 0.0
        self.set_back: tuple[float, int] | None = None
        self.tallies = [
            Tally(column, thresholds_V if column.quantity is Quantity.VOLTAGE else ()) for column in layout.columns
        ]

    def take(self, rows: Rows) -> None:
        """Take in the next block."""
        block = rows.block
        if not self.rows:
            self.first_s = block.times[0]
        self._keep(rows.start)
        self.pace.add(block.times, rows.steps)
        extremes = []
        for place, tally in enumerate(self.tallies):
            stretch = stretch_of(rows, place, layout=self.layout, size=self.buckets.size, faults=self.faults)
            tally.add(stretch, rows.steps)
            extremes.append((stretch.lows, stretch.highs))
        self.buckets.add(block.times, row=rows.start.row, extremes=extremes)
        self.marks.take(block, row=rows.start.row, faults=self.faults)
        self.rows = rows.after.row
        clock = rows.after.clock
        self.set_back = (clock.set_back_s, clock.set_back_line) if clock.set_back_line else None

    def _keep(self, start: Start) -> None:
        if self.blocks % self.every == 0:
            self.starts.append(start)
        self.blocks += 1
        if len(self.starts) > MOST_STARTS:
            self.starts = self.starts[::2]
            self.every *= 2

    def recording(self, open_lines: Callable[[], Iterable[str]]) -> Recording:
        """What was read; raises UnreadableError where that is nothing."""
        self._refuse_nothing()
        interval_s = self.pace.interval_s
        known = not (self.layout.run_time or self.pace.stands)
        row_s = None if known else interval_s or UNKNOWN_S
        start_s = self.buckets.start_s if row_s is None else array("d", [row * row_s for row in self.buckets.row])
        channels = self._channels(row_s)
        names = frozenset(channel.name for channel in channels)
        span = Span(start_s, self.buckets.row, self.rows)
        return Recording(
            name=self.layout.file,
            rows=self.rows,
            start_s=self.first_s if row_s is None else 0.0,
            end_s=self.pace.last_s if row_s is None else (self.rows - 1) * row_s,
            interval_s=interval_s if row_s is None else row_s,
            widest_gap_s=round(self.pace.widest_s, 9) if row_s is None else row_s,
            time_known=known,
            time_note=self._note(row_s),
            bucket_start_s=start_s,
            channels=channels,
            keys=tuple(KeyMark(time_s if row_s is None else row * row_s, key) for row, time_s, key in self.marks.turns),
            skipped=tuple(self.faults.places),
            skipped_count=self.faults.count,
            fine=Windows(
                open_lines=open_lines,
                layout=self.layout,
                starts=tuple(self.starts),
                names=names,
                span=span,
                row_s=row_s,
            ),
        )

    def _channels(self, row_s: float | None) -> tuple[Channel, ...]:
        return tuple(
            tally.channel(Envelope(lows, highs), row_s=row_s)
            for tally, lows, highs in zip(self.tallies, self.buckets.lows, self.buckets.highs, strict=True)
            if tally.held
        )

    def _refuse_nothing(self) -> None:
        if not self.rows:
            first = self.faults.places[0]
            raise UnreadableError(first.place, f"{first.expected} (not one row can be read)")
        held = [tally.column.quantity for tally in self.tallies if tally.held]
        if Quantity.VOLTAGE not in held:
            names = ", ".join(t.column.name for t in self.tallies if t.column.quantity is Quantity.VOLTAGE)
            raise UnreadableError(Place(self.layout.file), f"a voltage in at least one row of {names}")
        for tally in self.tallies:
            if not tally.held:
                place = Place(self.layout.file, self.layout.skip, tally.column.name)
                self.faults.add(place, "a value in at least one row of this column")

    def _note(self, row_s: float | None) -> str | None:
        """What has to be said of the times."""
        said = []
        if row_s is not None:
            said.append(f"{self._standing()}; times are row numbers times about {row_s:.3g} s")
        if self.set_back is not None:
            back_s, line = self.set_back
            said.append(f"the clock was set back by {back_s:.0f} s at line {line}; what follows was joined on")
        return "; ".join(said) or None

    def _standing(self) -> str:
        if self.layout.run_time:
            return "the only clock counts whole seconds of running and stands at 0 while the engine is cranked"
        if not self.pace.runs:
            return "the clock never goes on, so how fast the rows follow is a guess"
        if self.pace.usual_run > 1:
            return f"the clock shows the same time on about {self.pace.usual_run} rows running"
        return f"the clock stands still at {self.pace.longest_at_s:g} s over {self.pace.longest} rows"
