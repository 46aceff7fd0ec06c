"""Which gates a fuse has."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from backprobe.errors import OptionError
from backprobe.limits.fuse_lookup import gates_of, ratings_of, usual_type


def test_the_type_goes_by_the_rating_where_nobody_says():
    """40 A is the largest of type C."""
    assert (usual_type(3), usual_type(40), usual_type(50)) == ("C", "C", "E")


def test_a_gate_from_memory_gives_way_to_one_that_was_read():
    """160 % of 10 A was read, of 15 A it is remembered; both are never there twice."""
    assert [gate.percent for gate in gates_of("C", 10).verified] == [110, 135, 160, 200, 350]
    assert [gate.percent for gate in gates_of("C", 10).unverified] == [600]
    assert [gate.percent for gate in gates_of("C", 15).unverified] == [160, 600]


def test_a_smaller_fuse_than_was_read_has_the_smallest_ones_gates():
    """1 A of type C is judged at the amperes of 3 A."""
    assert gates_of("C", 1).as_A == 3
    assert not gates_of("C", 1).only_faster_read


def test_between_two_groups_the_larger_ones_gates():
    """32 A is no rating; it is judged as 35 A."""
    assert gates_of("C", 32).as_A == 35


def test_a_larger_fuse_than_was_read_is_told_apart():
    """100 A of type E has nothing but memory; 80 A opens no later than it."""
    gates = gates_of("E", 100)
    assert (gates.as_A, gates.only_faster_read) == (80, True)
    assert [gate.percent for gate in gates.unverified] == [135, 200, 350, 600]


@pytest.mark.parametrize(
    ("fuse_type", "rating_A", "said"),
    [
        ("C", 41, "type C are made for 1 to 40 A"),
        ("F", 40, "type F are made for 2 to 30 A"),
        ("E", 10, "type E are made for 20 to 100 A"),
        ("E", 200, "20 to 100 A"),
        ("C", 0, "1 to 40 A"),
        ("C", -5, "1 to 40 A"),
        ("C", float("nan"), "1 to 40 A"),
        ("D", 10, "no blade fuse is of type 'D'"),
    ],
)
def test_what_is_no_blade_fuse_is_refused(fuse_type, rating_A, said):
    """In words that name what there is."""
    with pytest.raises(OptionError, match=said):
        gates_of(fuse_type, rating_A)


@given(st.sampled_from("CEF"), st.data())
def test_every_fuse_has_gates_in_order(fuse_type, data):
    """Percents rise; somewhere the fuse is sure to open."""
    ratings = ratings_of(fuse_type)
    gates = gates_of(fuse_type, data.draw(st.floats(ratings[0], ratings[-1]))).verified
    percents = [gate.percent for gate in gates]
    assert percents == sorted(set(percents))
    assert any(gate.most_s is not None for gate in gates)
