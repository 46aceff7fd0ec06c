"""The VIN tables hang together."""

from backprobe.limits.vin import MISREAD, NORTH_AMERICA, VALUES, WEIGHTS


def test_thirty_three_characters_have_values_from_nought_to_nine():
    """26 letters less I, O and Q, and ten digits; a digit's value is itself."""
    assert len(VALUES) == 26 - 3 + 10
    assert all(VALUES[digit] == int(digit) for digit in "0123456789")
    assert set(VALUES.values()) == set(range(10))


def test_no_weight_reaches_the_modulus():
    """With weights of 0 to 10 and the prime 11 every wrong value is seen."""
    assert all(0 <= weight <= 10 for weight in WEIGHTS)


def test_misreadings_go_both_ways():
    """If 5 may be an S, S may be a 5, with the same rank."""
    assert all(MISREAD[meant][read] == rank for read, found in MISREAD.items() for meant, rank in found.items())


def test_the_pairs_that_plates_are_known_for_are_there():
    """Common practice, no source: 0/O/Q/D, 1/I/L/T, 2/Z, 5/S, 6/G, 8/B, 4/A, 7/1, U/V, X/K, M/N."""
    pairs = ["0O", "0Q", "0D", "1I", "1L", "1T", "2Z", "5S", "6G", "8B", "4A", "71", "UV", "XK", "MN"]
    assert all(other in MISREAD[one] for one, other in pairs)


def test_north_america_is_one_to_five():
    """From memory, unverified."""
    assert "".join(NORTH_AMERICA) == "12345"
