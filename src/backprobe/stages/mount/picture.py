"""The sky over a place as a picture: what stands in the way, and where satellites stand, seen from the cab."""

from __future__ import annotations

from collections.abc import Iterator

from backprobe.drawings.sky import SkyMaskCell, SkyPlot, SkySatellite
from backprobe.drawings.sky_plot import sky_plot
from backprobe.stages.mount.answer import SkyAnswer
from backprobe.stages.mount.heard import Case, losses_dB
from backprobe.stages.mount.mask import CELL_DEG, COLUMNS, Mask
from backprobe.stages.mount.predict import PlacePrediction

SHOWN_FROM_DB = 0.5
OPEN = "open"


def sky_picture(answer: SkyAnswer, found: PlacePrediction) -> str:
    """The picture of one place under its heading; satellites where a moment was asked for."""
    heading = found.heading_deg
    return sky_plot(
        SkyPlot(
            title=f"The sky from '{found.place.name}', heading {heading:g}°",
            predicted=predicted(answer),
            mask=tuple(mask_cells(found.mask, heading)),
            heading_deg=heading,
            note=_note(answer, found),
        )
    )


def predicted(answer: SkyAnswer) -> tuple[SkySatellite, ...]:
    """The satellites at the moment that was asked for; none where none was."""
    return tuple(SkySatellite(each.id, each.az_deg, each.el_deg) for each in answer.satellites or ())


def _note(answer: SkyAnswer, found: PlacePrediction) -> str:
    usual = found.usual
    told = f"{found.verdict}: a good fix for {100 * usual.share:.1f} % of 24 hours."
    headed = "" if answer.sheet.heading_deg is not None else " The heading is the worst one."
    return f"{told}{headed} Losses with what bends round edges."


def mask_cells(mask: Mask, heading_deg: float) -> Iterator[SkyMaskCell]:
    """The pieces of the mask as they lie under a heading, cells alike joined along a row."""
    losses = losses_dB(mask, Case.USUAL)
    for row, cells in enumerate(mask.cells):
        start = 0
        for column in range(1, COLUMNS + 1):
            same = column < COLUMNS and (losses[row][column], cells[column]) == (losses[row][start], cells[start])
            if same:
                continue
            if losses[row][start] >= SHOWN_FROM_DB:
                yield SkyMaskCell(
                    (heading_deg + start * CELL_DEG) % 360.0,
                    (heading_deg + column * CELL_DEG) % 360.0,
                    row * CELL_DEG,
                    (row + 1) * CELL_DEG,
                    losses[row][start],
                    " and ".join(dict.fromkeys(cells[start].materials)) or OPEN,
                )
            start = column
