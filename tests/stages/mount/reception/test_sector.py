"""The search for a blocked sector: finds what is blocked, and calls an open sky open."""

import pytest
from tests.samples.receiver_world import World, log_lines

from backprobe.evidence.reception import SkyBin
from backprobe.stages.mount.reception.listen import reception_of
from backprobe.stages.mount.reception.sector import (
    NAMED_FROM,
    SUREST,
    Sector,
    blocked_sectors,
    pieces_of,
    satellites_round,
)


def bins(levels: dict[int, float], *, system: str = "G", el_bin: int = 4) -> list[SkyBin]:
    """A satellite for each azimuth [°] with its C/N0; 0 is not heard."""
    return [
        SkyBin(
            f"{system}{n:02d}",
            az // 15,
            el_bin,
            0 if cn0 == 0 else 60,
            60 if cn0 == 0 else 0,
            0,
            round(cn0 * 600),
            az * 60,
            (el_bin * 10 + 5) * 60,
        )
        for n, (az, cn0) in enumerate(levels.items(), start=1)
    ]


OPEN = {az: 42.0 + (az * 7 % 5) - 2 for az in range(5, 360, 24)}  # 15 satellites at 40 to 44 dB-Hz


def blocked(start: int, end: int, *, by: float) -> dict[int, float]:
    """The open sky with what lies between two azimuths weaker."""
    return {az: cn0 - by if start <= az < end else cn0 for az, cn0 in OPEN.items()}


def covers(sector: Sector, az: int) -> bool:
    """Whether a sector holds an azimuth."""
    return (az - sector.from_deg) % 360 < (sector.to_deg - sector.from_deg) % 360


def test_an_even_sky_is_open() -> None:
    """No sector, and enough satellites to say so."""
    assert blocked_sectors(bins(OPEN)) == ()
    assert satellites_round(bins(OPEN)) == 15


def test_a_quarter_that_loses_15_dB_is_found() -> None:
    """The four satellites from 90° to 180°, all of them and none else."""
    (found,) = blocked_sectors(bins(blocked(90, 180, by=15)))
    assert found.strength >= 0.99
    assert [az for az in OPEN if covers(found, az)] == [az for az in OPEN if 90 <= az < 180]
    assert (found.satellites, found.unheard) == (4, 0)
    assert found.loss_dB == pytest.approx(15, abs=3)


def test_a_sector_across_north() -> None:
    """From 300° to 60° through north."""
    levels = {az: cn0 - (15 if az >= 300 or az < 60 else 0) for az, cn0 in OPEN.items()}
    (found,) = blocked_sectors(bins(levels))
    assert covers(found, 355)
    assert covers(found, 20)
    assert not covers(found, 180)


def test_satellites_that_are_not_heard_count() -> None:
    """Known of, with a position, and silent in one quarter."""
    levels = {az: 0.0 if 90 <= az < 180 else cn0 for az, cn0 in OPEN.items()}
    (found,) = blocked_sectors(bins(levels))
    assert found.unheard == found.satellites == 4


def test_one_or_two_weak_satellites_are_no_sector() -> None:
    """Out of service, or behind a tree."""
    for az in (5, 101, 197):
        assert blocked_sectors(bins({**OPEN, az: 0.0})) == ()
        assert blocked_sectors(bins({**OPEN, az: 25.0, az + 24: 30.0})) == ()


def test_a_wall_up_to_a_height() -> None:
    """Low satellites are blocked on one side while high ones above them are heard: the height shows."""
    low = bins(blocked(90, 220, by=16), el_bin=1)
    high = [
        SkyBin(f"G{20 + n}", b.az_bin, 6, b.heard, 0, 0, 60 * 440, b.az_sum, 65 * 60) for n, b in enumerate(bins(OPEN))
    ]
    (found,) = blocked_sectors([*low, *high])
    assert found.below_deg in (30, 50)
    assert covers(found, 149)


def test_a_weaker_system_is_no_sector() -> None:
    """GLONASS heard 10 dB worse than GPS, its satellites all on one side by chance of the hour."""
    glonass = bins(dict.fromkeys((100, 120, 140, 160, 175), 33.0), system="R")
    assert blocked_sectors([*bins(OPEN), *glonass]) == ()


def test_a_weak_receiver_is_no_sector() -> None:
    """Everything 15 dB down in all directions: that is for the signals' own finding."""
    assert blocked_sectors(bins({az: cn0 - 15 for az, cn0 in OPEN.items()})) == ()


def test_a_system_that_is_never_heard_says_nothing() -> None:
    """A receiver that lists Galileo and cannot receive it; and SBAS, which is often not sought."""
    galileo = bins(dict.fromkeys((100, 120, 140, 160, 175), 0.0), system="E")
    sbas = bins(dict.fromkeys((150, 160, 170, 180, 190), 0.0), system="S")
    assert blocked_sectors([*bins(OPEN), *galileo, *sbas]) == ()
    assert {piece.satellite[0] for piece in pieces_of([*bins(OPEN), *galileo, *sbas])} == {"G"}


def test_two_sectors_are_two() -> None:
    """Pillars on both sides."""
    dense = {az: 42.0 + (az * 7 % 5) - 2 for az in range(5, 360, 12)}  # 30 satellites, five or six behind each
    levels = {az: cn0 - (18 if 60 <= az < 125 or 230 <= az < 300 else 0) for az, cn0 in dense.items()}
    found = blocked_sectors(bins(levels))
    assert len(found) == 2
    assert {covers(each, 101) for each in found} == {True, False}
    assert {covers(each, 269) for each in found} == {True, False}


def test_strength_is_a_share_below_one() -> None:
    """However plain the case, the strength stays below 1, and what is named is strong."""
    for sector in blocked_sectors(bins(blocked(0, 180, by=20))):
        assert NAMED_FROM <= sector.strength <= SUREST < 1


def test_few_satellites_cannot_tell() -> None:
    """Three satellites say nothing; those in half the compass neither."""
    assert satellites_round(bins({10: 40.0, 100: 40.0, 200: 40.0})) == 0
    assert satellites_round(bins(dict.fromkeys(range(0, 180, 15), 40.0))) == 0


def test_open_skies_are_rarely_called_blocked() -> None:
    """Of 60 invented skies at most 3 (5 %): half with GPS alone, half with GLONASS."""
    worlds = [World(seed=500 + n, satellites=14) for n in range(30)]
    worlds += [World(seed=800 + n, satellites=24, systems=("GP", "GL")) for n in range(30)]
    wrong = [w for w in worlds if blocked_sectors(reception_of(log_lines(w), file="w").bins)]
    assert len(wrong) <= 3


def test_blocked_skies_are_mostly_found() -> None:
    """Of 20 skies with a third of the compass 20 dB down, 24 satellites, at least 16 on the right side."""
    hits = 0
    for n in range(20):
        start = 17.0 * n
        world = World(seed=n, satellites=24, systems=("GP", "GL"), blocked=(start, start + 120, 90, 20))
        found = blocked_sectors(reception_of(log_lines(world), file="w").bins)
        hits += any(covers(each, round(start + 60) % 360) for each in found)
    assert hits >= 16
