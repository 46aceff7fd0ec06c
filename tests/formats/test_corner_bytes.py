"""Corners packed and unpacked."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from backprobe.evidence.corner import Corner, CornerKind, sorted_corners
from backprobe.formats.corner_bytes import TornError, packed, unpacked

names = st.text(min_size=1, max_size=6).filter(str.isprintable)
corners = st.builds(
    Corner,
    st.integers(-9_000_000, 9_000_000).map(lambda n: round(n / 100_000, 5)),
    st.integers(-18_000_000, 18_000_000).map(lambda n: round(n / 100_000, 5)),
    st.lists(names, min_size=2, max_size=4, unique=True).map(tuple),
    st.sampled_from(CornerKind),
)


@given(st.lists(corners, max_size=20))
def test_what_is_packed_is_unpacked(found):
    """Every place, name and kind, from south to north."""
    kinds = list(CornerKind)
    wanted = sorted(found, key=lambda c: (c.lat_deg, c.lon_deg, c.streets, kinds.index(c.kind)))
    assert unpacked(packed(found)) == tuple(wanted)
    assert [c.lat_deg for c in unpacked(packed(found))] == [c.lat_deg for c in sorted_corners(found)]


def test_places_are_kept_to_the_fifth_decimal():
    """0.000014° become 0.00001°, 0.000016° become 0.00002°."""
    assert unpacked(packed([Corner(0.000014, 0.000016, ("A", "B"))])) == (Corner(0.00001, 0.00002, ("A", "B")),)


def test_a_frequent_name_takes_one_byte():
    """A corner 0.00001° from the last one takes five bytes: two steps, the count, two names."""
    few, more = ([Corner(n / 100_000, 0.0, ("A", "B")) for n in range(count)] for count in (10, 11))
    assert len(packed(more)) - len(packed(few)) == 5


@given(st.binary(max_size=60))
def test_rubbish_is_told(content):
    """Any bytes are corners or torn, and nothing else."""
    try:
        found = unpacked(content)
    except (TornError, UnicodeDecodeError):
        return
    assert all(len(corner.streets) > 1 and abs(corner.lat_deg) <= 90 for corner in found)


@pytest.mark.parametrize(
    "content",
    [
        b"A\nB",  # no end of the names
        b"A\nB\0\x02\x06",  # a corner that ends early
        b"A\nB\0\x02\x06\x08\x00\x02",  # a third name of two
        b"A\nB\0\x02\x06\x04\x00",  # one street
        b"A\nB\0\x02\x06\x0b\x00\x01",  # a kind that there is not
        b"A\nB\0\xff\xff\xff\xff\xff\xff",  # a number without end
        b"A\n\x1b[2J\0\x02\x06\x08\x00\x01",  # a name that would clear a terminal
        b"A\n\0\x02\x06\x08\x00\x01",  # an empty name
        b"A\nB\0\xff\xff\xff\x7f\x06\x08\x00\x01",  # north of the pole
    ],
)
def test_torn_bytes_are_told(content):
    """Each of these raises TornError."""
    with pytest.raises(TornError):
        unpacked(content)
