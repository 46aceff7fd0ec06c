"""Which parts a ray from the unit meets, and what they take."""

from __future__ import annotations

import math

import numpy as np
import pytest
from hypothesis import assume, given
from hypothesis import strategies as st
from tests.samples.mount import BOX, DASH, METAL_ROOF, ROOF, WINDSCREEN

from backprobe.evidence.mount_sheet import MountPlace, Part, Side
from backprobe.stages.mount.mask import COLUMNS, ROWS, is_hit, mask_of, materials_met


def ray(turn_deg: float, up_deg: float) -> tuple[float, float, float]:
    """A ray by its angle from the front (clockwise) and its elevation."""
    turn, up = math.radians(turn_deg), math.radians(up_deg)
    return math.cos(up) * math.cos(turn), -math.cos(up) * math.sin(turn), math.sin(up)


def test_a_leaning_windscreen() -> None:
    """250 mm ahead at a rake of 60°, 750 mm high: its top edge is 250 - 750/tan 60° = -183 mm, over the unit's back.

    So it covers straight up (at 250 × tan 60° = 433 mm), and backwards to atan(750/183) = 76° above the horizon.
    """
    assert is_hit(WINDSCREEN, ray(0, 1))
    assert is_hit(WINDSCREEN, (0.0, 0.0, 1.0))
    assert is_hit(WINDSCREEN, ray(180, 77))
    assert not is_hit(WINDSCREEN, ray(180, 75))


def test_an_upright_pane_ends_where_it_was_measured() -> None:
    """A pane 1000 mm to the right, 500 mm high, from 200 mm behind the unit to 300 mm ahead of it."""
    pane = Part(material="glass", side=Side.RIGHT, away_mm=1000, to_mm=500, ahead_mm=300, behind_mm=200)
    top = math.degrees(math.atan2(500, 1000))
    assert is_hit(pane, ray(90, top - 0.1))
    assert not is_hit(pane, ray(90, top + 0.1))
    front = math.degrees(math.atan2(1000, 300))
    assert is_hit(pane, ray(front + 0.1, 10))
    assert not is_hit(pane, ray(front - 0.1, 10))
    assert not is_hit(pane, ray(270, 10))
    assert not is_hit(pane, ray(90 + math.degrees(math.atan2(201, 1000)), 10))


def test_a_part_above_that_begins_behind_the_unit() -> None:
    """A roof 600 mm up that begins 300 mm behind: straight up is free, 300/600 further back it is met."""
    roof = Part(material="metal", side=Side.ABOVE, away_mm=600, ahead_mm=-300)
    assert not is_hit(roof, (0.0, 0.0, 1.0))
    edge = math.degrees(math.atan2(600, 300))
    assert is_hit(roof, ray(180, edge - 0.5))
    assert not is_hit(roof, ray(180, edge + 0.5))


def corners(part: Part) -> tuple[np.ndarray, np.ndarray, np.ndarray, tuple[float, ...]]:
    """A part as a rectangle in space: a point of its plane, two directions in it, and its edges along these."""
    big = 1e9
    reach = {
        name: big if value is None else value
        for name, value in (
            *(("a", part.ahead_mm), ("b", part.behind_mm), ("l", part.left_mm), ("r", part.right_mm)),
            *(("f", 0.0 if part.from_mm is None else part.from_mm), ("t", part.to_mm)),
        )
    }
    ahead, left, up = np.eye(3)
    if part.side is Side.ABOVE:
        return part.away_mm * up, ahead, left, (-reach["b"], reach["a"], -reach["r"], reach["l"])
    out = {Side.AHEAD: ahead, Side.BEHIND: -ahead, Side.LEFT: left, Side.RIGHT: -left}[part.side]
    rake = math.radians(part.rake_deg)
    slope = (math.sin(rake) * up - math.cos(rake) * out) / math.sin(rake)  # one unit of height along the pane
    if part.side in (Side.AHEAD, Side.BEHIND):
        return part.away_mm * out, left, slope, (-reach["r"], reach["l"], reach["f"], reach["t"])
    return part.away_mm * out, ahead, slope, (-reach["b"], reach["a"], reach["f"], reach["t"])


REACH = st.one_of(st.none(), st.floats(50, 3000))


@given(
    st.builds(
        Part,
        material=st.just("glass"),
        side=st.sampled_from(Side),
        away_mm=st.floats(50, 2000),
        rake_deg=st.floats(20, 160),
        ahead_mm=REACH,
        behind_mm=REACH,
        left_mm=REACH,
        right_mm=REACH,
        from_mm=st.one_of(st.none(), st.floats(-500, 400)),
        to_mm=st.one_of(st.none(), st.floats(450, 2000)),
    ),
    st.floats(0, 360),
    st.floats(1, 89),
)
def test_rays_meet_parts_as_planes_in_space_do(part: Part, turn_deg: float, up_deg: float) -> None:
    """The same by linear algebra: the point of the ray in the part's plane lies within its edges."""
    to = np.array(ray(turn_deg, up_deg))
    point, one, other, (low, high, bottom, top) = corners(part)
    matrix = np.column_stack([one, other, -to])
    assume(abs(np.linalg.det(matrix)) > 1e-6)
    along, across, far = np.linalg.solve(matrix, -point)
    near_edge = min(abs(along - low), abs(along - high), abs(across - bottom), abs(across - top)) < 1e-3
    assume(not near_edge)
    assert is_hit(part, tuple(to)) == (far > 0 and low <= along <= high and bottom <= across <= top)


def test_losses_add_up() -> None:
    """Cover, pane and roof one after the other; nothing at all on the roof but its own cover; all else is elsewhere."""
    both = MountPlace(name="x", parts=(WINDSCREEN, METAL_ROOF), cover=("plastic",))
    assert materials_met(both, (0.0, 0.0, 1.0)) == ("plastic", "glass", "metal")
    assert materials_met(ROOF, ray(120, 20)) == ("plastic",)
    assert materials_met(BOX, ray(120, 20)) == ("plastic", "metal")
    top = mask_of(both).cells[ROWS - 1][0]
    assert top.value_dB == pytest.approx(0 + 2.5 + 40)
    assert top.least_dB == pytest.approx(0 + 1 + 30)


@given(st.integers(0, COLUMNS - 1))
def test_a_mask_turns(columns: int) -> None:
    """Turned by some columns and on by the rest of the circle it is itself again."""
    mask = mask_of(DASH)
    assert mask.turned(columns).turned(COLUMNS - columns) == mask
    assert mask.turned(columns).cells[5][columns] == mask.cells[5][0]
