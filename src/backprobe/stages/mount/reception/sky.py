"""A receiver's log as a sky plot: each satellite where it stood most of the time, and what is blocked."""

from __future__ import annotations

from collections.abc import Sequence

from backprobe.drawings.sky import SkyMask, SkyPlot, SkySatellite, SkySector
from backprobe.evidence.reception import Reception, SkyBin
from backprobe.stages.mount.reception import figures
from backprobe.stages.mount.reception.sector import STANDING_STILL, blocked_sectors
from backprobe.stages.mount.reception.words import direction

_LONG_MS = 1_800_000


def sky_of(
    log: Reception,
    *,
    heading_deg: float | None = None,
    predicted: Sequence[SkySatellite] = (),
    mask: SkyMask = (),
) -> SkyPlot:
    """What to draw of a log; `predicted` satellites and a predicted `mask` go beside and beneath."""
    sectors = () if figures.moved(log) else blocked_sectors(log.bins)
    long = log.duration_ms > _LONG_MS
    return SkyPlot(
        title=f"The sky as the receiver heard it, {log.file}",
        satellites=satellites_of(log.bins),
        predicted=predicted,
        sectors=[SkySector(s.from_deg, s.to_deg, f"blocked: {direction(s, heading_deg)}") for s in sectors],
        mask=mask,
        heading_deg=heading_deg,
        note="Figures: dB-Hz." + (" Each satellite stands where it was longest." if long else ""),
    )


def satellites_of(bins: Sequence[SkyBin]) -> tuple[SkySatellite, ...]:
    """Each satellite in the piece of the sky where the receiver spoke of it most; SBAS only where it was heard."""
    longest: dict[str, SkyBin] = {}
    for each in bins:
        if each.satellite not in longest or each.times > longest[each.satellite].times:
            longest[each.satellite] = each
    drawn = (each for each in longest.values() if each.heard or each.satellite[0] != STANDING_STILL)
    return tuple(_satellite(each) for each in drawn)


def _satellite(each: SkyBin) -> SkySatellite:
    heard = each.heard >= each.missing
    return SkySatellite(
        id=each.satellite,
        az_deg=round(each.az_deg, 1),
        el_deg=round(each.el_deg, 1),
        cn0_dBHz=round(each.cn0_dBHz, 1) if heard and each.cn0_dBHz is not None else None,
        used=heard and 2 * each.used > each.times,
    )
