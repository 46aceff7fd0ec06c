"""What the sentences of one moment come to, put together as they arrive."""

from __future__ import annotations

from backprobe.evidence.epoch import Epoch, EpochFix, SatelliteSample
from backprobe.formats.nmea_clock import LogClock
from backprobe.formats.nmea_fields import Said, in_view, speed_of, used_in
from backprobe.formats.nmea_sentence import Sentence

CAPPED_AT = 12  # GGA counts no further, as the standard says; GSA then names more
WORST_HDOP = 50.0  # from here on the figure says 'none', mostly 99.99
DAY_HALF_S = 43_200.0


class Moment:
    """The sentences of one moment of a log."""

    __slots__ = ("_satellites", "_used", "day", "hdop", "kinds", "line", "place", "speed_mps", "tod_s", "used", "valid")

    def __init__(self) -> None:
        self.kinds: set[str] = set()
        self.line = 0
        self.tod_s: float | None = None
        self.day: int | None = None
        self.valid: bool | None = None
        self.place: tuple[float, float] | None = None
        self.used: int | None = None
        self.hdop: float | None = None
        self.speed_mps: float | None = None
        self._satellites: dict[str, SatelliteSample] = {}
        self._used: frozenset[str] = frozenset()

    def has_other_time(self, said: Said, sentence: Sentence) -> bool:
        """Whether a sentence belongs to a later moment: another time, or the same kind again."""
        if said.tod_s is not None and self.tod_s is not None and said.tod_s != self.tod_s:
            return True
        return sentence.talker + sentence.kind in self.kinds

    def add(self, said: Said, sentence: Sentence) -> None:
        """Take in what a sentence with a time says; a fix holds only where no sentence denies it."""
        self.kinds.add(sentence.talker + sentence.kind)
        self.tod_s = said.tod_s if self.tod_s is None else self.tod_s
        self.day = said.day if self.day is None else self.day
        if said.valid is not None:
            self.valid = said.valid if self.valid is None else self.valid and said.valid
        self.place = said.place if self.place is None else self.place
        self.used = said.used if self.used is None else self.used
        self.hdop = said.hdop if self.hdop is None else self.hdop
        self.speed_mps = said.speed_mps if self.speed_mps is None else self.speed_mps

    def add_date(self, said: Said) -> None:
        """Take the date of a ZDA sentence, whose time may be a little beside that of the others."""
        near = said.tod_s is None or self.tod_s is None or abs(said.tod_s - self.tod_s) < DAY_HALF_S
        if self.day is None and near:
            self.day = said.day

    def add_satellites(self, sentence: Sentence) -> None:
        """Take in a GSV, GSA or VTG sentence. Raises FieldError."""
        if sentence.kind == "VTG":
            self.speed_mps = speed_of(sentence) if self.speed_mps is None else self.speed_mps
        elif sentence.kind == "GSA":
            used, hdop = used_in(sentence)
            self._used |= used
            self.hdop = hdop if self.hdop is None else self.hdop
        else:
            for sample, main in in_view(sentence):
                self._satellites[sample.id] = _joined(self._satellites.get(sample.id), sample, main=main)

    def epoch(self, clock: LogClock) -> Epoch:
        """The whole moment, at the time that `clock` shows."""
        fix = None
        if self.fixed and self.place is not None:
            hdop = self.hdop if self.hdop is not None and 0 < self.hdop < WORST_HDOP else None
            fix = EpochFix(self.place[0], self.place[1], self._count(), hdop, self.speed_mps)
        seen = tuple(self._satellites.values())
        return Epoch(clock.time_s, clock.clocked_s, clock.unclocked, fix, seen, self._used)

    @property
    def fixed(self) -> bool:
        """Whether there is a position that no sentence denies."""
        return bool(self.valid) and self.place is not None

    def _count(self) -> int | None:
        """How many satellites were used: as counted, or as named where the count may have reached its cap."""
        named = len(self._used)
        if not self.used:  # some receivers write 00 beside a good position
            return named or None
        return max(self.used, named) if self.used == CAPPED_AT else self.used


def _joined(known: SatelliteSample | None, new: SatelliteSample, *, main: bool) -> SatelliteSample:
    """A satellite told of twice: its place from where it is given, its strength from the main signal if that is heard.

    Another signal's strength stands only while the main one is not heard of at all.
    """
    if known is None:
        return new
    placed = known if known.az_deg is not None else new
    cn0 = new.cn0_dBHz if (main and new.cn0_dBHz is not None) or known.cn0_dBHz is None else known.cn0_dBHz
    return SatelliteSample(known.id, placed.az_deg, placed.el_deg, cn0)
