"""When a blade fuse opens."""

from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from backprobe.limits.fuse_lookup import ratings_of
from backprobe.stages.join.fuse_opening import Opening, fuse_of, hot_rating_A


def test_at_twice_its_rating():
    """A 10 A type C fuse at 20 A: 0.15 to 5 s, in the middle √0.75 = 0.866 s."""
    opening = fuse_of(10).opening(20.0)
    assert opening == Opening(0.15, 5.0)
    assert opening.middle_s == pytest.approx(0.75**0.5)


def test_below_the_first_gate_it_may_never_open():
    """At 13 A a 10 A fuse is not sure to open; from 13.5 A it is."""
    fuse = fuse_of(10)
    assert fuse.opening(13.0).most_s is None
    assert fuse.opening(13.0).middle_s is None
    assert fuse.clears_from_A == pytest.approx(13.5)


def test_what_is_remembered_is_told_apart():
    """15 A at six times: 0.1 s by memory, 0.5 × (3.5 / 6)² = 0.170 s by what was read."""
    fuse = fuse_of(15)
    assert fuse.opening_with_memory(90.0).most_s == pytest.approx(0.1)
    assert fuse.opening(90.0).most_s == pytest.approx(0.170, abs=0.0005)


def test_a_fuse_beyond_what_was_read():
    """100 A of type E: by what was read it opens no sooner than 80 A would; memory has its own times."""
    fuse = fuse_of(100)
    assert fuse.opening(200.0).most_s == fuse_of(80).opening(200.0).most_s
    assert fuse.opening_with_memory(200.0) == Opening(2.0, 50.0)


def test_in_hot_surroundings():
    """40 A is 34 A at 65 °C and 30 A at 85 °C; half way 32 A."""
    fuse = fuse_of(40, "E")
    assert [hot_rating_A(fuse, ambient_C=t) for t in (20, 65, 75, 85)] == pytest.approx([40, 34, 32, 30])


@given(st.sampled_from("CEF"), st.data(), st.floats(1, 2000), st.floats(1, 5))
def test_more_current_never_opens_later(fuse_type, data, current_A, factor):
    """At every rating that there is."""
    fuse = fuse_of(data.draw(st.sampled_from(ratings_of(fuse_type))), fuse_type)
    slow, fast = fuse.opening(current_A).most_s, fuse.opening(current_A * factor).most_s
    assert slow is None or (fast is not None and fast <= slow * (1 + 1e-9))


@given(st.sampled_from("CEF"), st.floats(1, 2000))
def test_a_larger_fuse_never_opens_sooner(fuse_type, current_A):
    """At the same current, over all ratings of a type; None is the latest."""
    latest = [fuse_of(rating, fuse_type).opening(current_A).most_s for rating in ratings_of(fuse_type)]
    times = [float("inf") if time_s is None else time_s for time_s in latest]
    assert all(small <= large * (1 + 1e-9) for small, large in pairwise(times))
