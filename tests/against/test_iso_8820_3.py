"""Blade fuses against data sheets that name ISO 8820-3, and against measured resistances.

The standard itself was not read; each figure names what was read. Times in s.
"""

import pytest

from backprobe.findings import Standing
from backprobe.limits.fuses import BREAKING_A, COLD_MOHM, GATES
from backprobe.stages.join.fuse_opening import fuse_of

# 35 and 40 A type C, and 40 A type E: data sheets digested in public source text ("40 A blade fuse and holder")
TYPE_C_40A = [(1.35, 0.75, 600), (2.0, 0.15, 5), (3.5, 0.08, 0.5)]
TYPE_E_40A = [(1.35, 60, 1800), (2.0, 2, 50), (3.5, 0.2, 7), (6.0, 0.04, 1)]
# 10 A type C: data sheet digested in public source text ("F1 … 10 A")
TYPE_C_10A = [(1.6, 0.25, 50), (2.0, 0.15, 5)]
# 20 A type C: catalogue page of 2010 for 3 to 40 A, digested in public source text
TYPE_C_20A = [(1.35, 0.75, 600), (2.0, 0.15, 5), (3.5, 0.08, 0.5)]
# 7.5 A type F: data sheet p. 3, digested in public source text ("0.15-5 seconds at 200% rating … 0.03-0.1 … at 600%")
TYPE_F_7_5A = [(2.0, 0.15, 5), (6.0, 0.03, 0.1)]


@pytest.mark.parametrize(
    ("rating_A", "fuse_type", "gates"),
    [
        (40, "C", TYPE_C_40A),
        (35, "C", TYPE_C_40A),
        (40, "E", TYPE_E_40A),
        (10, "C", TYPE_C_10A),
        (20, "C", TYPE_C_20A),
        (7.5, "F", TYPE_F_7_5A),
    ],
)
def test_gates_that_were_read(rating_A, fuse_type, gates):
    """At each printed multiple the fuse opens between the printed times."""
    for multiple, least_s, most_s in gates:
        opening = fuse_of(rating_A, fuse_type).opening(multiple * rating_A)
        assert (opening.least_s, opening.most_s) == pytest.approx((least_s, most_s))


def test_six_times_a_40_ampere_fuse():
    """The same digest: at 600 % a type C of 40 A opens within 0.15 s."""
    assert fuse_of(40, "C").opening(240.0).most_s == pytest.approx(0.15)


@pytest.mark.parametrize(
    ("rating_A", "fuse_type", "holds"), [(40, "C", 1.0), (40, "E", 1.0), (20, "C", 1.1), (25, "F", 1.1)]
)
def test_what_a_fuse_holds_for_a_hundred_hours(rating_A, fuse_type, holds):
    """At 100 or 110 % of its rating no sooner than 360 000 s, and never surely."""
    opening = fuse_of(rating_A, fuse_type).opening(holds * rating_A)
    assert opening.least_s == pytest.approx(360_000)
    assert opening.most_s is None


def test_preview_of_the_edition_of_2015():
    """standards.iteh.ai preview: types C, E and F, up to 100 A, breaking capacity 1000 A."""
    assert {gate.type for gate in GATES} == {"C", "E", "F"}
    assert max(gate.to_A for gate in GATES) == 100
    assert BREAKING_A == 1000


def test_remembered_gates_are_marked_and_have_no_say():
    """160 % (but for 10 A) and 600 % of a type C up to 30 A are from memory: shown, never judged by."""
    remembered = {(gate.type, gate.percent) for gate in GATES if not gate.verified and gate.type == "C"}
    assert remembered == {("C", 160.0), ("C", 600.0)}
    fuse = fuse_of(15)
    assert fuse.opening_with_memory(90.0).most_s == pytest.approx(0.1)
    assert fuse.opening(90.0).most_s == pytest.approx(0.5 * (3.5 / 6) ** 2)


def test_resistance_from_a_drop():
    """1 mV is 130 mA on a 10 A type C (mvwautotechniek.nl) and 218 mA on a 15 A type F (MACS service reports, 2017)."""
    assert COLD_MOHM[("C", 10.0)] == (pytest.approx(1000 / 130, abs=0.01), Standing.PUBLISHED)
    assert COLD_MOHM[("F", 15.0)] == (pytest.approx(1000 / 218, abs=0.01), Standing.PUBLISHED)
