"""Least pull on a crimp against TE 114-2157 revision G, figure 7 (manualshelf.com, p. 8), newton and pound-force."""

import pytest

from backprobe.limits.crimps import PULL_N

N_PER_LBF = 4.4482
# gauge, UL 486A level N and lbf, MIL-T-7928 level N and lbf
PRINTED = [
    (26, 13.4, 3, 31.1, 7),
    (24, 22.3, 5, 44.5, 10),
    (22, 35.6, 8, 66.7, 15),
    (20, 57.9, 13, 84.5, 19),
    (18, 89.0, 20, 169.0, 38),
    (16, 133.5, 30, 222.5, 50),
    (14, 222.5, 50, 311.5, 70),
    (12, 311.5, 70, 489.3, 110),
    (10, 356.0, 80, 667.2, 150),
]


@pytest.mark.parametrize(("gauge", "commercial_N", "commercial_lbf", "military_N", "military_lbf"), PRINTED)
def test_both_columns_in_both_units(gauge, commercial_N, commercial_lbf, military_N, military_lbf):
    """The table holds the printed newtons, and they are the printed pounds to 1 %."""
    assert PULL_N[gauge] == (commercial_N, military_N)
    assert commercial_N == pytest.approx(commercial_lbf * N_PER_LBF, rel=0.01)
    assert military_N == pytest.approx(military_lbf * N_PER_LBF, rel=0.01)


def test_thicker_wire_must_stand_more():
    """Both columns rise with the wire."""
    for column in (0, 1):
        pulls = [row[column] for _, row in sorted(PULL_N.items(), reverse=True) if row[column] is not None]
        assert pulls == sorted(pulls)


@pytest.mark.parametrize(("gauge", "nasa_N"), [(24, 36), (22, 57)])
def test_space_flight_asks_more_than_the_trade(gauge, nasa_N):
    """NASA-STD-8739.4 table 13-1: 36 N for 24 AWG, 57 N for 22 AWG: between the two columns."""
    commercial_N, military_N = PULL_N[gauge]
    assert commercial_N < nasa_N < military_N
