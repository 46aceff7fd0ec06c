"""Which satellites are strong enough."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st
from tests.samples.mount import BOX, DASH, ROOF

from backprobe.evidence.mount_sheet import MountPlace, Part, Side
from backprobe.stages.mount.heard import Case, losses_dB, open_sky_dBHz, usable
from backprobe.stages.mount.mask import mask_of


def test_the_open_sky() -> None:
    """35.5 dB-Hz up to 5°, halfway to 60° halfway to 43.5, and no more above."""
    assert [open_sky_dBHz(el) for el in (0.0, 5.0, 32.5, 60.0, 90.0)] == [35.5, 35.5, 39.5, 43.5, 43.5]


def test_on_the_roof_everything_in_a_box_nothing() -> None:
    """On the roof all is usable even with every doubt against it; in a metal box nothing with every doubt for it."""
    assert all(all(row) for row in usable(mask_of(ROOF), Case.HARD))
    assert not any(any(row) for row in usable(mask_of(BOX), Case.KIND))


def test_a_coated_windscreen() -> None:
    """43.5 - 22.5 = 21 dB-Hz is not enough; with the least loss, 43.5 - 15 = 28.5, the highest satellites just are."""
    pane = Part(material="coated_glass", side=Side.ABOVE, away_mm=300)
    mask = mask_of(MountPlace(name="behind it", parts=(pane,)))
    assert not any(any(row) for row in usable(mask, Case.USUAL))
    kind = usable(mask, Case.KIND)
    assert all(kind[-1])
    assert not any(kind[0])


@given(st.sampled_from([DASH, ROOF, BOX]))
def test_the_cases_are_in_order(place: MountPlace) -> None:
    """What can be used with doubts against it can be used as reckoned, and that with doubts in its favour."""
    hard, usual, kind = (usable(mask_of(place), case) for case in (Case.HARD, Case.USUAL, Case.KIND))
    for one, other in ((hard, usual), (usual, kind)):
        assert all(b or not a for x, y in zip(one, other, strict=True) for a, b in zip(x, y, strict=True))


def test_losses_of_a_place_are_those_of_its_mask_where_nothing_bends() -> None:
    """Against the place nothing bends round edges."""
    mask = mask_of(DASH)
    assert losses_dB(mask, Case.HARD) == [[loss.most_dB for loss in row] for row in mask.cells]
