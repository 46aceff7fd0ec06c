"""The sky as the antenna has it: where satellites stand and how they are heard, what is blocked, what was predicted.

The centre is straight up, the rim is the horizon. Strength shows in how full a mark is, everything else in shapes and
words, so that a grey print says the same. Where the vehicle's heading is known its front is up: the hatched sector then
lies on the side of the cab on which it lies.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from backprobe.drawings.figures import figure_text
from backprobe.drawings.lettering import letters, text_width, wrapped
from backprobe.drawings.palette import ACCENT, INK, PAPER, RULE, SOFT_INK
from backprobe.drawings.sky import Dome, SkyMaskCell, SkyPlot, SkySatellite, SkySector, piece, width_deg
from backprobe.drawings.sky_labels import Box, hidden, placed
from backprobe.drawings.sky_marks import GLASS, hatched_outline, predicted_mark, satellite_mark, shade, shaded
from backprobe.drawings.svg import Attributes, picture, tag

WIDTH, NARROWEST = 480.0, 320.0
WIDE, DISC = 640.0, 400.0  # from this width on the words stand beside a disc (with its rim) of that size
_MARGIN = 38.0  # round the disc, for the words at its rim
_SIZE, _LINE = 11.0, 14.5
_LABEL = 10.0
_GAP = 16.0
_INSIDE = -9.0  # the compass stands inside the rim where the sides of the cab stand round it
_RINGS_DEG = (0.0, 30.0, 60.0)
_COMPASS = ((0.0, "N"), (90.0, "E"), (180.0, "S"), (270.0, "W"))
_SIDES = ((0.0, "front"), (90.0, "right"), (180.0, "rear"), (270.0, "left"))
_LEGEND = "Centre: straight up; rim: horizon. The fuller a mark, the stronger the signal (15 to 50 dB-Hz)."


def sky_plot(content: SkyPlot, *, width: float = WIDTH) -> str:
    """The picture of `content` as one SVG string, `width` units wide (at least 320), as high as it needs.

    From 640 on the words stand beside the sky, else beneath it.
    """
    width = max(width, NARROWEST)
    disc = DISC if width >= WIDE else width
    radius = disc / 2 - _MARGIN
    dome = Dome(disc / 2, disc / 2, radius, content.heading_deg or 0.0)
    rim, taken = _rim_words(content, dome)
    beside = (DISC + _GAP, _MARGIN + _LINE) if width >= WIDE else (0.0, disc)
    legend, bottom = _legend(content, beside, room=width - beside[0])
    height = max(bottom, disc)
    return picture(
        (width, height),
        (content.title, described_sky(content)),
        tag("rect", {"width": width, "height": height, "fill": PAPER}),
        "".join(_mask_piece(cell, dome) for cell in content.mask),
        _rings(dome),
        "".join(_blocked(sector, dome) for sector in content.sectors),
        rim,
        _marks(content, dome, taken=taken),
        legend,
    )


def _rings(dome: Dome) -> str:
    rings = "".join(
        tag("circle", {"cx": dome.x, "cy": dome.y, "r": dome.radius * (90 - el) / 90, "fill": "none", "stroke": RULE})
        for el in _RINGS_DEG
    )
    spokes = ""
    for az, _ in _COMPASS:
        (x1, y1), (x2, y2) = dome.at(az, 90.0), dome.off(az, dome.radius + 5)
        line: Attributes = {"x1": x1, "y1": y1, "x2": x2, "y2": y2, "stroke": RULE, "stroke-width": 0.6}
        spokes += tag("line", line)
    return rings + spokes


def _mask_piece(cell: SkyMaskCell, dome: Dome) -> str:
    azimuths, elevations = (cell.az_from_deg, cell.az_to_deg), (cell.el_from_deg, cell.el_to_deg)
    return shaded(piece(dome, azimuths, elevations=elevations), cell.attenuation_dB)


def _blocked(sector: SkySector, dome: Dome) -> str:
    return hatched_outline(piece(dome, (sector.from_deg, sector.to_deg), elevations=(0.0, 90.0)))


def _rim_words(content: SkyPlot, dome: Dome) -> tuple[str, list[Box]]:
    """Compass, sides of the cab where they are known, elevations, names of sectors; and the boxes of all of it."""
    heading = content.heading_deg
    words = [(az, name, False) for az, name in _COMPASS]
    if heading is not None:
        words += [(heading + turn, side, True) for turn, side in _SIDES]
    parts, taken = [], []
    for az, text, bold in words:
        beyond = 20.0 if bold else 14.0
        x, y = dome.off(az, dome.radius + (beyond if bold or heading is None else _INSIDE))
        wide = text_width(text, _SIZE, bold=bold)
        x = min(max(x, wide / 2), 2 * dome.x - wide / 2)
        parts.append(tag("rect", {"x": x - wide / 2 - 2, "y": y - 7, "width": wide + 4, "height": 14, "fill": PAPER}))
        parts.append(letters((x, y + _SIZE * 0.35), text, size=_SIZE, fill=INK, anchor="middle", bold=bold))
        taken.append(Box(x, y, wide, _SIZE))
    for el in _RINGS_DEG[1:]:
        x, y = dome.off(dome.up_deg, dome.radius * (90 - el) / 90)
        parts.append(letters((x + 2, y - 2), f"{el:.0f}°", size=_LABEL, fill=SOFT_INK))
        taken.append(Box(x + 10, y - 6, 18, _LABEL))
    stars = [dome.at(each.az_deg, each.el_deg) for each in (*content.satellites, *content.predicted)]
    for sector in content.sectors:
        part, box = _sector_name(sector, dome, taken=[*taken, *(Box(x, y, 2 * GLASS, 2 * GLASS) for x, y in stars)])
        parts.append(part)
        taken.append(box)
    return "".join(parts), taken


def _sector_name(sector: SkySector, dome: Dome, *, taken: list[Box]) -> tuple[str, Box]:
    """The sector's name inside it, on a ground of paper, where it hides least."""
    wide = text_width(sector.label, _SIZE, bold=True) + 8
    spread_deg = width_deg(sector.from_deg, sector.to_deg)
    places = [(sector.from_deg + spread_deg * part, out) for out in (0.8, 0.6, 0.95, 0.4) for part in (0.5, 0.3, 0.7)]
    spots = [dome.off(az, dome.radius * out) for az, out in places]
    boxes = [Box(min(max(x, wide / 2), 2 * dome.x - wide / 2), y, wide, 16) for x, y in spots]
    best = min(boxes, key=lambda box: hidden(box, taken))
    frame: Attributes = {"x": best.x - wide / 2, "y": best.y - 8, "width": wide, "height": 16}
    place = (best.x, best.y + _SIZE * 0.35)
    words = letters(place, sector.label, size=_SIZE, fill=INK, anchor="middle", bold=True)
    return tag("rect", {**frame, "fill": PAPER, "stroke": INK}) + words, best


def _marks(content: SkyPlot, dome: Dome, *, taken: list[Box]) -> str:
    """Satellites predicted and measured, each with its name; one that is both is named once."""
    seen = {satellite.id for satellite in content.satellites}
    every = [(each, False) for each in content.predicted] + [(each, True) for each in content.satellites]
    points = [dome.at(each.az_deg, each.el_deg) for each, _ in every]
    words = [_label(each) if measured or each.id not in seen else "" for each, measured in every]
    sizes = [(text_width(text, _LABEL), _LABEL) for text in words]
    boxes = placed(points, sizes, mark=GLASS, taken=taken)
    parts = [
        satellite_mark(each, at) if measured else predicted_mark(at)
        for (each, measured), at in zip(every, points, strict=True)
    ]
    for (each, _), text, box in zip(every, words, boxes, strict=True):
        if text:
            parts.append(_named(text, box, heard=each.cn0_dBHz is not None))
    return "".join(parts)


def _named(text: str, box: Box, *, heard: bool) -> str:
    ground: Attributes = {"x": box.x - box.width / 2 - 1, "y": box.y - box.height / 2, "width": box.width + 2}
    ground |= {"height": box.height + 1, "fill": PAPER, "fill-opacity": 0.8}
    fill = ACCENT if heard else INK
    return tag("rect", ground) + letters((box.x, box.y + _LABEL * 0.36), text, size=_LABEL, fill=fill, anchor="middle")


def _label(satellite: SkySatellite) -> str:
    return satellite.id if satellite.cn0_dBHz is None else f"{satellite.id} {figure_text(satellite.cn0_dBHz, 0)}"


def _legend(content: SkyPlot, at: tuple[float, float], *, room: float) -> tuple[str, float]:
    """What the marks mean, only of those that are there, from `at` on; and where it ends."""
    parts: list[str] = []
    left, top = at
    x, y = left, top
    for swatch, words in _swatches(content):
        wide = 2 * GLASS + 14 + text_width(words, _SIZE)
        if x > left and x + wide > left + room:
            x, y = left, y + _LINE + 8
        parts.append(swatch.drawn((x + GLASS + 4, y)))
        parts.append(letters((x + 2 * GLASS + 12, y + _SIZE * 0.35), words, size=_SIZE, fill=SOFT_INK))
        x += wide + 12
    below = y + (_LINE if parts else 0.0)
    lines = wrapped(" ".join(part for part in (_legend_text(content), content.note) if part), size=_SIZE, room=room)
    for row, line in enumerate(lines):
        parts.append(letters((left, below + (row + 0.7) * _LINE), line, size=_SIZE, fill=SOFT_INK))
    return "".join(parts), below + len(lines) * _LINE + 6


def _legend_text(content: SkyPlot) -> str:
    if not (content.satellites or content.predicted or content.mask):
        return "No satellite's place in the sky is known."
    return _LEGEND if any(each.cn0_dBHz is not None for each in content.satellites) else _LEGEND.split(". ")[0] + "."


def _swatches(content: SkyPlot) -> Iterator[tuple[_Swatch, str]]:
    heard = [each for each in content.satellites if each.cn0_dBHz is not None]
    if any(each.used for each in heard):
        yield _Swatch(SkySatellite("", 0, 0, 40.0, used=True)), "used for the position"
    if any(not each.used for each in heard):
        yield _Swatch(SkySatellite("", 0, 0, 30.0)), "heard, not used"
    if len(heard) < len(content.satellites):
        yield _Swatch(SkySatellite("", 0, 0)), "not heard"
    if content.predicted:
        yield _Swatch(), "predicted"
    for label, losses in _materials(content.mask).items():
        low, high = min(losses), max(losses)
        span = figure_text(low, 0) if low == high else f"{figure_text(low, 0)} to {figure_text(high, 0)}"
        yield _Swatch(loss_dB=high), f"{label}, {span} dB"


def _materials(mask: Sequence[SkyMaskCell]) -> dict[str, list[float]]:
    """The losses of each thing in the way, in the order in which it comes."""
    found: dict[str, list[float]] = {}
    for cell in mask:
        found.setdefault(cell.label, []).append(cell.attenuation_dB)
    return found


@dataclass(frozen=True, slots=True)
class _Swatch:
    """One mark of the legend: a satellite's, a loss's, or that of a prediction."""

    satellite: SkySatellite | None = None
    loss_dB: float | None = None

    def drawn(self, at: tuple[float, float]) -> str:
        """The mark with its middle `at` (x, y)."""
        if self.satellite is not None:
            return satellite_mark(self.satellite, at)
        if self.loss_dB is None:
            return predicted_mark(at)
        box: Attributes = {"x": at[0] - GLASS, "y": at[1] - GLASS, "width": 2 * GLASS, "height": 2 * GLASS}
        return tag("rect", {**box, "fill": SOFT_INK, "fill-opacity": shade(self.loss_dB), "stroke": RULE})


def described_sky(content: SkyPlot) -> str:
    """The picture in words: what is blocked, how each satellite was heard, what was predicted."""
    parts = [f"{each.label}: azimuth {each.from_deg:.0f}° to {each.to_deg:.0f}°" for each in content.sectors]
    if content.heading_deg is not None:
        parts.append(f"the vehicle's front points to {content.heading_deg:.0f}°")
    parts += [_described(each) for each in content.satellites]
    if content.predicted:
        parts.append("predicted: " + ", ".join(f"{e.id} at {_where(e)}" for e in content.predicted))
    if content.mask:
        parts.append("in the way: " + ", ".join(_materials(content.mask)))
    return ". ".join([*parts, content.note] if content.note else parts or ["No satellite's place is known"]) + "."


def _described(satellite: SkySatellite) -> str:
    if satellite.cn0_dBHz is None:
        return f"{satellite.id} at {_where(satellite)}, not heard"
    use = "used" if satellite.used else "not used"
    return f"{satellite.id} at {_where(satellite)}, {figure_text(satellite.cn0_dBHz, 0)} dB-Hz, {use}"


def _where(satellite: SkySatellite) -> str:
    return f"azimuth {satellite.az_deg:.0f}°, elevation {satellite.el_deg:.0f}°"
