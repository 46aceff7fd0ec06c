"""A log comes to figures: moments, positions, satellites by their place in the sky."""

import tracemalloc

from tests.samples.nmea import gga, gsv, rmc

from backprobe.evidence.reception import SkyBin
from backprobe.stages.mount.reception.listen import reception_of

SKY = [(5, 41, 100, 40), (7, 60, 200, 44), (9, 20, 300, 36), (12, 30, 10, 34), (14, 50, 95, None)]


def second(at: int, *, fixed: bool = True, sky: list[tuple[int, int, int, int | None]] | None = None) -> list[str]:
    """What a receiver says at a second after noon."""
    stamp = f"12{at // 60:02d}{at % 60:02d}.00"
    quality = 1 if fixed else 0
    return [gga(stamp, quality=quality), *gsv(SKY if sky is None else sky), rmc(stamp, valid=fixed)]


def lines(count: int, *, fixed: bool = True) -> list[str]:
    """Several seconds of it."""
    return [line for at in range(count) for line in second(at, fixed=fixed)]


def test_figures_of_a_good_log() -> None:
    """Ten seconds: ten positions, eight satellites used, HDOP 0.90, and (40 + 44 + 36 + 34) / 4 = 38.5 dB-Hz."""
    log = reception_of(lines(10), file="a.nmea")
    assert (log.epochs, log.fixes, log.since_first, log.first_fix_ms, log.duration_ms) == (10, 10, 10, 0, 9000)
    assert (log.used, log.hdop_hundredths, log.top4_tenths, log.told) == ({8: 10}, {90: 10}, {385: 10}, 10)


def test_bins_are_pieces_of_the_sky() -> None:
    """Azimuth 100° is piece 6 of 15°, elevation 41° piece 4 of 10°; the unheard one is missing while there is a fix."""
    log = reception_of(lines(10), file="a.nmea")
    assert SkyBin("G05", 6, 4, 10, 0, 0, 4000, 1000, 410) in log.bins
    assert SkyBin("G14", 6, 5, 0, 10, 0, 0, 950, 500) in log.bins


def test_nobody_is_missed_while_the_search_is_on() -> None:
    """Before the first position, and for two minutes after one that was waited for, silence is no evidence."""
    searching = [line for at in range(60) for line in second(at, fixed=at >= 20)]
    assert all(each.missing == 0 for each in reception_of(searching, file="a.nmea").bins)
    longer = [line for at in range(200) for line in second(at, fixed=at >= 20)]
    missing = {each.satellite: each.missing for each in reception_of(longer, file="a.nmea").bins}
    assert missing["G14"] == 60  # from 20 + 120 s to 200 s


def test_time_to_the_first_position() -> None:
    """Twelve seconds without, then with."""
    log = reception_of([line for at in range(30) for line in second(at, fixed=at >= 12)], file="a.nmea")
    assert (log.first_fix_ms, log.epochs, log.fixes, log.since_first) == (12_000, 30, 18, 18)


def test_time_without_a_clock_counts_by_steps() -> None:
    """A receiver that knows no time speaks ten times a second, as it shows later: 20 moments are 2 s, not 20 s."""
    void = ["$GPGGA,,,,,,0,,,,M,,M,,*66", "$GPRMC,,V,,,,,,,,,,N*53"] * 20
    fixed = [line for at in range(40) for line in (gga(f"1200{at / 10:04.1f}"), rmc(f"1200{at / 10:04.1f}"))]
    assert reception_of([*void, *fixed], file="a.nmea").first_fix_ms == 2000


def test_never_a_position() -> None:
    """A metal box: no first position, no rest, signals all the same."""
    log = reception_of(lines(5, fixed=False), file="a.nmea")
    assert (log.fixes, log.since_first, log.first_fix_ms, log.rest) == (0, 0, None, None)
    assert log.told == 5


def test_movement_shows_without_a_speed() -> None:
    """GGA alone: 0.001 minutes of latitude a second are 1.85 m/s, faster than a walk; standing still is not."""
    moving = [
        gga(f"12{at // 60:02d}{at % 60:02d}.00", place=f"48{7 + at / 1000:07.4f},N,01131.0000,E") for at in range(120)
    ]
    still = [gga(f"12{at // 60:02d}{at % 60:02d}.00") for at in range(120)]
    assert reception_of(moving, file="a.nmea").moving >= 100
    assert reception_of(still, file="a.nmea").moving == 0


def test_memory_does_not_grow_with_the_log() -> None:
    """Ten times as long needs less than 100 kB more."""

    def most(count: int) -> int:
        tracemalloc.start()
        reception_of((line for at in range(count) for line in second(at % 3600)), file="a.nmea")
        peak = tracemalloc.get_traced_memory()[1]
        tracemalloc.stop()
        return peak

    most(50)
    assert most(3000) - most(300) < 100_000
