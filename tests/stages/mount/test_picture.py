"""The picture of a place's sky."""

from __future__ import annotations

from xml.etree import ElementTree

import pytest
from tests.samples.mount import DASH, ROOF, sheet

from backprobe.stages.mount.answer import sky_answer
from backprobe.stages.mount.mask import CELL_DEG, COLUMNS, ROWS, mask_of
from backprobe.stages.mount.picture import mask_cells, sky_picture
from backprobe.stages.mount.question import question


def test_the_picture_names_place_heading_and_losses() -> None:
    """The title, the satellites of the moment, the materials in the legend, the front up."""
    answer = sky_answer(sheet(DASH), question((60.2, 24.9), "2021-04-29", time="12:00"))
    drawn = sky_picture(answer, answer.best)
    ElementTree.fromstring(drawn)
    for words in ("on the dash", "front", "plastic and glass", "plastic and metal", "worst", answer.satellites[0].id):
        assert words in drawn


@pytest.mark.parametrize("heading", [0.0, 45.0])
def test_the_pieces_cover_what_is_in_the_way(heading: float) -> None:
    """On the dash every direction has a loss: the pieces make up the whole dome, row by row."""
    pieces = list(mask_cells(mask_of(DASH), heading))
    wide = [(each.az_to_deg - each.az_from_deg) % 360 or 360 for each in pieces]
    assert sum(int(w) for w in wide) == ROWS * COLUMNS * CELL_DEG
    assert {each.el_to_deg - each.el_from_deg for each in pieces} == {CELL_DEG}
    turned = list(mask_cells(mask_of(DASH), 0.0))
    assert [(each.az_from_deg - heading) % 360 for each in pieces] == [each.az_from_deg for each in turned]


def test_nothing_in_the_way_is_not_drawn() -> None:
    """On the roof, under plastic that takes nothing, there are no pieces."""
    assert list(mask_cells(mask_of(ROOF), 0.0)) == []
