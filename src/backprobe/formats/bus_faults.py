"""What was passed over in a bus log: how much of it, why, and where the first few stand."""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass, field

from backprobe.errors import SHOWN_TEXT_MAX, Place, Skipped

TORN_LINE = "torn_line"
CLOCK_SET_BACK = "clock_set_back"
CLOCK_LEAPT = "clock_leapt"
READER_FAULT = "reader_fault"

MOST_PLACES = 20
MOST_TIME_S = 1e11  # no logger's clock shows more, whether it counts from its start or from 1970


@dataclass(slots=True)
class BusFaults:
    """Counts by reason, and the first places; `file` is the name shown."""

    file: str
    counts: Counter[str] = field(default_factory=Counter)
    places: list[Skipped] = field(default_factory=list)

    def line(self, number: int, text: str, *, expected: str) -> None:
        """Count a line that holds no frame although it should."""
        self.add(TORN_LINE, Place(self.file, number, text[:SHOWN_TEXT_MAX]), expected=expected)

    def add(self, reason: str, place: Place, *, expected: str) -> None:
        """Count one more; its place is kept while there are few."""
        self.counts[reason] += 1
        if len(self.places) < MOST_PLACES:
            self.places.append(Skipped(place, expected))
