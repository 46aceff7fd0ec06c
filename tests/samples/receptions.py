"""Receiver's logs in figures, for tests: a good one, with what a test changes."""

from __future__ import annotations

from typing import Any

from backprobe.evidence.reception import Reception, Rest, SkyBin

OPEN_SKY = {az: 42 + (az * 7 % 5) - 2 for az in range(5, 360, 24)}  # 15 satellites at 40 to 44 dB-Hz


def sky_bins(levels: dict[int, int], *, times: int = 60) -> tuple[SkyBin, ...]:
    """A satellite at 45° for each azimuth [°] with its C/N0; 0 is not heard."""
    return tuple(
        SkyBin(
            satellite=f"G{number:02d}",
            az_bin=az // 15,
            el_bin=4,
            heard=times if cn0 else 0,
            missing=0 if cn0 else times,
            used=times if cn0 else 0,
            cn0_tenths=cn0 * 10 * times,
            az_sum=az * times,
            el_sum=45 * times,
        )
        for number, (az, cn0) in enumerate(levels.items(), start=1)
    )


def reception(**changes: Any) -> Reception:
    """Twenty minutes at rest in the open, once a second."""
    parts: dict[str, Any] = {
        "file": "reception.nmea",
        "sentences": 6000,
        "skipped": {},
        "odd": {},
        "places": (),
        "epochs": 1200,
        "fixes": 1190,
        "since_first": 1190,
        "first_fix_ms": 10_000,
        "duration_ms": 1_199_000,
        "told": 1200,
        "moving": 0,
        "used": {9: 1190},
        "hdop_hundredths": {90: 1190},
        "top4_tenths": {435: 1200},
        "rest": Rest(1190, 1190, 120, 1000, 2100),
        "bins": sky_bins(OPEN_SKY),
    }
    return Reception(**{**parts, **changes})
