"""Letters for the colours of wires."""

from itertools import permutations

from backprobe.limits.colours import COLOURS


def test_two_joined_codes_can_be_told_apart():
    """All codes have two letters, so RDBU is red and blue and nothing else."""
    assert {len(code) for code in COLOURS} == {2}
    assert len({one + other for one, other in permutations(COLOURS, 2)}) == len(COLOURS) * (len(COLOURS) - 1)


def test_the_codes_of_the_standard():
    """IEC 60757 in its order, as read in GOST 28763-90 (see authorities/iec-60757)."""
    assert " ".join(COLOURS) == "BK BN RD OG YE GN BU VT GY WH PK GD TQ SR"
    assert (COLOURS["OG"], COLOURS["VT"], COLOURS["BU"]) == ("orange", "violet", "blue")
