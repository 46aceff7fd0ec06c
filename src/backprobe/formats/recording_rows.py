"""The rows of a recording, block by block, each from a start that can be taken up again."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from itertools import islice

from backprobe.errors import Place
from backprobe.formats.cells import cells_of
from backprobe.formats.figures import read_figure
from backprobe.formats.recording_block import Block, Faults, read_block
from backprobe.formats.recording_clock import Clock, in_order
from backprobe.formats.recording_layout import Layout

BLOCK_LINES = 4096
TAIL_LINES = 20  # the last line is compared with so many before it


@dataclass(frozen=True, slots=True)
class Start:
    """A place to begin reading: how many `lines` and rows stand before it, and the clock there."""

    lines: int
    row: int = 0
    clock: Clock = field(default_factory=Clock)


@dataclass(frozen=True, slots=True)
class Rows:
    """A block whose times go on from the one before, with the step before each row [s], and the starts around it.

    The step before the very first row is 0.
    """

    block: Block
    steps: list[float]
    start: Start
    after: Start


def rows_from(start: Start, lines: Iterator[str], *, layout: Layout, faults: Faults) -> Iterator[Rows]:
    """The blocks of rows that hold any, from `start` on; `lines` are those of the whole file from its first line."""
    next(islice(lines, start.lines, start.lines), None)
    chunk, more = list(islice(lines, BLOCK_LINES)), True
    before: Sequence[str] = ()
    while chunk:
        following = list(islice(lines, BLOCK_LINES))
        more = bool(following)
        whole = chunk if more else _without_torn_end(before, chunk, start=start, layout=layout, faults=faults)
        block = read_block(whole, first=start.lines + 1, layout=layout, faults=faults)
        ordered = in_order(block.times, start.clock, lines=block.lines, midnight=layout.stamps.midnight, more=more)
        if ordered.kept is not None:
            left_out = set(block.lines) - {block.lines[i] for i in ordered.kept}
            _count_left_out(whole, left_out, start=start, file=layout.file, faults=faults)
        after = Start(start.lines + len(chunk), start.row + len(ordered.times), ordered.clock)
        if ordered.times:
            block = block if ordered.kept is None else block.only(ordered.kept)
            block.times = ordered.times
            yield Rows(block, ordered.steps, start, after)
        before, start, chunk = chunk[-TAIL_LINES:], after, following


def _count_left_out(lines: Sequence[str], numbers: set[int], *, start: Start, file: str, faults: Faults) -> None:
    """Count the rows on the lines of these numbers, whose time does not go on."""
    for number in sorted(numbers):
        place = Place(file, number, lines[number - start.lines - 1].rstrip("\r\n"))
        faults.add(place, "a time that goes on from the row before")


def _without_torn_end(
    before: Sequence[str], lines: Sequence[str], *, start: Start, layout: Layout, faults: Faults
) -> Sequence[str]:
    """The last lines of a file, without the very last where it looks as if its end were missing."""
    tail = [*before, *lines][-TAIL_LINES - 1 :]
    if not _ends_torn(tail, layout):
        return lines
    place = Place(layout.file, start.lines + len(lines), lines[-1].rstrip("\r\n"))
    faults.add(place, "as many decimals as in the lines above; the end of the last line is missing")
    return lines[:-1]


def _ends_torn(tail: Sequence[str], layout: Layout) -> bool:
    """Whether the last figure of the last line has fewer decimals than that column has in all lines above."""
    rows = [cells_of(line.rstrip("\r\n"), layout.delimiter) for line in tail]
    last = [cell for cell in rows[-1] if cell]
    place = len(rows[-1]) - 1
    if len(rows) < 4 or not last or not rows[-1][place]:
        return False
    figures = [read_figure(row[place]) if len(row) == len(rows[-1]) else None for row in rows]
    decimals = {figure.decimals for figure in figures[:-1] if figure is not None}
    end = figures[-1]
    return end is not None and None not in figures and len(decimals) == 1 and end.decimals < decimals.pop()
