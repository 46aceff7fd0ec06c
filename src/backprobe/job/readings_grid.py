"""All readings of a job as a grid: one row a wire, one column a key position, each figure as it was written."""

from __future__ import annotations

from dataclasses import dataclass

from backprobe.evidence.keys import Capture, Key
from backprobe.evidence.reading import Reading
from backprobe.job.judge import JobJudgement

HEADS = {Key.AFTER: "after 10 min", Key.ISOLATED: "battery switch open", Key.CHARGING: "on the charger"}
HELD = {Capture.MIN: "MIN", Capture.MAX: "MAX", Capture.LOGGED: "logged"}
RECORDED = "recorded"  # read out of a recording: nobody typed it
USUAL_AFTER_MIN = 10.0
SET_ASIDE = "set aside"
UNREADABLE = "not readable"


@dataclass(frozen=True, slots=True)
class GridRow:
    """A wire and, for each column, its figures: '12.29 V at 1.5 A'."""

    wire: str
    cells: tuple[tuple[str, ...], ...]


@dataclass(frozen=True, slots=True)
class ReadingsGrid:
    """The key positions at which anything was read, in the order of the key, and the wires."""

    keys: tuple[str, ...]
    rows: tuple[GridRow, ...]


def readings_grid(judged: JobJudgement) -> ReadingsGrid | None:
    """The grid of a judged job, those read out of recordings among them; None where nothing was read.

    Figures stand as they were typed, with how the meter held them, the load and the minutes since key-off. A figure
    that could not be read says so; one that fits nothing else is shown and marked as set aside.
    """
    table = judged.evidence.table
    typed = set(table.readings)
    cells: dict[tuple[str, Key], list[str]] = {}
    for wire in judged.probe.result.wires:
        for reading in wire.belief.readings:
            shown = said(reading, recorded=reading not in typed, doubtful=reading in wire.belief.doubtful)
            cells.setdefault((wire.name, reading.key), []).append(shown)
    for name, key in table.unread:
        cells.setdefault((name, key), []).append(UNREADABLE)
    keys = tuple(key for key in Key if any(key is at for _, at in cells))
    names = dict.fromkeys([*table.wires, *(name for name, _ in cells)])
    rows = [GridRow(name, tuple(tuple(cells.get((name, key), ())) for key in keys)) for name in names]
    return ReadingsGrid(tuple(HEADS.get(key, str(key)) for key in keys), tuple(rows)) if keys else None


def said(reading: Reading, *, recorded: bool = False, doubtful: bool = False) -> str:
    """A figure as it was typed, with its unit and what belongs to it.

    >>> said(Reading(wire="Red", key=Key.ON, volts=12.29, typed="12.29", count_V=0.01, load_A=1.5))
    '12.29 V at 1.5 A'
    """
    held = RECORDED if recorded else HELD.get(reading.capture)
    after = reading.after_min
    parts = (
        reading.typed if reading.typed[-1:].isalpha() else f"{reading.typed} V",
        held,
        f"at {reading.load_A:g} A" if reading.load_A else None,
        None if after is None or after == USUAL_AFTER_MIN else f"after {after:g} min",
        f"({SET_ASIDE})" if doubtful else None,
    )
    return " ".join(part for part in parts if part)
