"""A receiver's log, moment by moment, into the figures that are kept of it; memory does not grow with the log."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable

from backprobe.evidence.epoch import Epoch, EpochFix
from backprobe.evidence.reception import AZ_BIN_DEG, EL_BIN_DEG, Reception, SkyBin
from backprobe.formats.nmea_0183 import NmeaReader, NmeaTally
from backprobe.physics.great_circle import distance_m
from backprobe.stages.mount.reception.rest import RestFinder

MOVING_MPS = 1.5  # faster than a walk
SETTLING_S = (
    120.0  # after a first position: until then satellites that are in view are still being found (our own model)
)
MOST_BINS = 800  # that many fit into an entry of a journal; a day of four systems has some more
_PACE_S = 10.0  # over which positions tell a speed where the receiver does not
_STRONGEST = 4
_TOP_EL_BIN = 90 // EL_BIN_DEG - 1


def reception_of(lines: Iterable[str], *, file: str) -> Reception:
    """What a log comes to. Raises UnreadableError where it holds not one good sentence."""
    reader, listener = NmeaReader(file), _Listener()
    for moment in reader.moments(lines):
        listener.add(moment)
    return listener.result(reader.tally)


class _Listener:
    """Counts what moments say."""

    def __init__(self) -> None:
        self._epochs = self._fixes = self._since_first = self._told = self._moving = 0
        self._first: tuple[float, int] | None = None
        self._settled_s = 0.0
        self._last = Epoch(0.0, 0.0, 0, None)
        self._used: Counter[int] = Counter()
        self._hdop: Counter[int] = Counter()
        self._top4: Counter[int] = Counter()
        self._rest, self._pace = RestFinder(), _Pace()
        self._bins: dict[tuple[str, int, int], list[int]] = {}

    def add(self, moment: Epoch) -> None:
        """Take in the next moment."""
        self._epochs += 1
        self._last = moment
        if moment.fix is not None:
            self._fixed(moment, moment.fix)
        self._since_first += self._first is not None
        if moment.satellites:
            self._hear(moment)

    def _fixed(self, moment: Epoch, fix: EpochFix) -> None:
        self._fixes += 1
        if self._first is None:
            self._first = (moment.clocked_s, moment.unclocked)
            self._settled_s = moment.time_s + (SETTLING_S if self._epochs > 1 else 0.0)
        if fix.used is not None:
            self._used[fix.used] += 1
        if fix.hdop is not None:
            self._hdop[_hundredths(fix.hdop)] += 1
        self._rest.add(moment.time_s, fix)
        self._moving += self._pace.speed_mps(moment.time_s, fix) > MOVING_MPS

    def _hear(self, moment: Epoch) -> None:
        self._told += 1
        strengths = sorted((each.cn0_dBHz for each in moment.satellites if each.cn0_dBHz is not None), reverse=True)
        if len(strengths) >= _STRONGEST:
            together: int = sum(round(each * 10) for each in strengths[:_STRONGEST])
            self._top4[int(together / _STRONGEST + 0.5)] += 1
        sought = moment.fix is not None and moment.time_s >= self._settled_s
        for each in moment.satellites:
            missing = each.cn0_dBHz is None
            if each.az_deg is None or each.el_deg is None or each.el_deg < 0 or (missing and not sought):
                continue
            key = (each.id, each.az_deg // AZ_BIN_DEG, min(each.el_deg // EL_BIN_DEG, _TOP_EL_BIN))
            sums = self._bins.setdefault(key, [0, 0, 0, 0, 0, 0])
            sums[0] += not missing
            sums[1] += missing
            sums[2] += each.id in moment.used
            sums[3] += 0 if each.cn0_dBHz is None else round(each.cn0_dBHz * 10)
            sums[4] += each.az_deg
            sums[5] += each.el_deg

    def _fullest(self) -> list[tuple[tuple[str, int, int], list[int]]]:
        """The pieces of the sky in a fixed order; of too many those that were told of most."""
        fullest = sorted(self._bins.items(), key=lambda each: (-each[1][0] - each[1][1], each[0]))
        return sorted(fullest[:MOST_BINS])

    def result(self, tally: NmeaTally) -> Reception:
        """The figures of the whole log."""
        first = self._first
        return Reception(
            file=tally.file,
            sentences=tally.sentences,
            skipped=tally.skipped,
            odd=tally.odd,
            places=tally.places,
            epochs=self._epochs,
            fixes=self._fixes,
            since_first=self._since_first,
            first_fix_ms=None if first is None else round(1000 * (first[0] + first[1] * tally.usual_step_s)),
            duration_ms=round(1000 * (self._last.clocked_s + self._last.unclocked * tally.usual_step_s)),
            told=self._told,
            moving=self._moving,
            used=dict(sorted(self._used.items())),
            hdop_hundredths=dict(sorted(self._hdop.items())),
            top4_tenths=dict(sorted(self._top4.items())),
            rest=self._rest.result(),
            bins=tuple(_sky_bin(key, sums) for key, sums in self._fullest()),
        )


def _hundredths(hdop: float) -> int:
    """An HDOP in hundredths; large ones in whole tenths and units, as their last digits say nothing."""
    coarse = 1 if hdop < 5 else 10 if hdop < 10 else 100
    return round(hdop * 100 / coarse) * coarse


def _sky_bin(key: tuple[str, int, int], sums: list[int]) -> SkyBin:
    heard, missing, used, cn0_tenths, az_sum, el_sum = sums
    return SkyBin(*key, heard, missing, used, cn0_tenths, az_sum, el_sum)


class _Pace:
    """The speed as told, or by positions ten seconds apart where it is not."""

    def __init__(self) -> None:
        self._from: tuple[float, EpochFix] | None = None
        self._mps = 0.0

    def speed_mps(self, time_s: float, fix: EpochFix) -> float:
        """The speed at a position."""
        if fix.speed_mps is not None:
            return fix.speed_mps
        start = self._from = self._from or (time_s, fix)
        if time_s - start[0] >= _PACE_S:
            far_m = distance_m((start[1].lat_deg, start[1].lon_deg), (fix.lat_deg, fix.lon_deg))
            self._mps, self._from = far_m / (time_s - start[0]), (time_s, fix)
        return self._mps
