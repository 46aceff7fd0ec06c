"""Losses with what bends round edges."""

from __future__ import annotations

from hypothesis import given, settings
from hypothesis import strategies as st

from backprobe.physics.knife_edge import knife_edge_dB
from backprobe.stages.mount.bent import REACH_DEG, bent
from backprobe.stages.mount.mask import CELL_DEG, COLUMNS, ROWS


def half(loss_dB: float) -> list[list[float]]:
    """A sky of which the half to the right is blocked."""
    return [[loss_dB if column < COLUMNS // 2 else 0.0 for column in range(COLUMNS)] for _ in range(ROWS)]


def test_behind_an_edge_the_loss_grows_with_each_degree() -> None:
    """Next to the edge a little more than the 6 dB of the edge itself, then more; beyond 15° the metal's own."""
    row = bent(half(40.0))[2]
    behind = row[COLUMNS // 2 - 1 : COLUMNS // 2 - 1 - 6 : -1]
    assert knife_edge_dB(0.0) < behind[0] < 9
    assert behind == sorted(behind)
    assert row[COLUMNS // 4] == 40.0
    assert row[COLUMNS // 2 + 3] == 0.0
    assert behind[int(REACH_DEG / CELL_DEG)] == 40.0


def test_a_small_loss_stays_what_it_is() -> None:
    """What a pane takes is less than any way round it."""
    assert bent(half(2.5)) == half(2.5)


@settings(max_examples=15, deadline=None)
@given(st.lists(st.tuples(st.integers(0, ROWS - 1), st.integers(0, COLUMNS - 1)), max_size=200), st.integers(0, 119))
def test_more_in_the_way_never_takes_less(blocked: list[tuple[int, int]], turn: int) -> None:
    """With more cells blocked no cell loses less; turned with the sky the losses turn alike."""
    fewer = half(40.0)
    more = [list(row) for row in fewer]
    for row, column in blocked:
        more[row][column] = 40.0
    before, after = bent(fewer), bent(more)
    assert all(b >= a for one, other in zip(before, after, strict=True) for a, b in zip(one, other, strict=True))
    turned = bent([row[-turn:] + row[:-turn] for row in more])
    assert turned == [row[-turn:] + row[:-turn] for row in after]
