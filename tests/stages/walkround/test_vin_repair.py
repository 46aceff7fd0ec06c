"""Proposals for a misread VIN."""

from hypothesis import given
from hypothesis import strategies as st

from backprobe.limits.vin import MISREAD, MODEL_YEARS, VALUES
from backprobe.stages.walkround.vin_number import check_digit, has_right_check_digit
from backprobe.stages.walkround.vin_repair import repairs

RIGHT = "1M8GDM9AXKP042788"


@st.composite
def north_american(draw):
    """A well-formed VIN of North America with a right check digit and a possible model year."""
    first = draw(st.sampled_from("12345"))
    middle = draw(st.text(alphabet=sorted(VALUES), min_size=8, max_size=8))
    year = draw(st.sampled_from(sorted(MODEL_YEARS)))
    rest = draw(st.text(alphabet=sorted(VALUES), min_size=3, max_size=3))
    vin = first + middle + year + rest + draw(st.text(alphabet="0123456789", min_size=4, max_size=4))
    return vin[:8] + check_digit(vin) + vin[9:]


def test_a_right_vin_gets_no_proposals():
    """There is nothing to repair."""
    assert repairs(RIGHT) == ()


@given(st.text(alphabet=[*sorted(VALUES), *"IOQ?"], min_size=17, max_size=17))
def test_every_proposal_checks_out(vin):
    """Whatever was typed, no proposal has a wrong check digit, and each differs from what was typed."""
    for repair in repairs("1" + vin[1:]):
        assert has_right_check_digit(repair.vin)
        assert repair.vin != vin


@given(north_american(), st.data())
def test_the_true_vin_is_among_the_proposals_for_one_misread_character(vin, data):
    """A character that is written as one it is often mistaken for: the VIN on the plate is proposed."""
    at = data.draw(st.sampled_from([at for at, c in enumerate(vin) if c in MISREAD]))
    typed = vin[:at] + data.draw(st.sampled_from(sorted(MISREAD[vin[at]]))) + vin[at + 1 :]
    assert has_right_check_digit(typed) or vin in [repair.vin for repair in repairs(typed)]


@given(north_american(), st.integers(0, 15))
def test_the_true_vin_is_among_the_proposals_for_two_swapped_neighbours(vin, at):
    """Two neighbours swapped while typing, not across the check digit: the VIN on the plate is proposed."""
    typed = vin[:at] + vin[at + 1] + vin[at] + vin[at + 2 :]
    if 8 not in (at, at + 1) and not has_right_check_digit(typed):
        assert vin in [repair.vin for repair in repairs(typed)]


def test_the_likeliest_misreading_comes_first():
    """8 typed as B in position 3 is proposed before anything less likely."""
    found = repairs("1MBGDM9AXKP042788")
    assert (found[0].vin, found[0].words) == (RIGHT, "position 3 is 8, not B")
    assert [repair.rank for repair in found] == sorted(repair.rank for repair in found)


def test_letters_that_never_stand_in_a_vin_become_digits():
    """I for 1 in position 1 and O for 0 in position 12."""
    found = repairs("IM8GDM9AXKPO42788")
    assert found[0].vin == RIGHT
    assert found[0].words == "positions 1 and 12 are 10, not IO"


def test_an_unreadable_character_is_worked_out():
    """One question mark in the serial number leaves only digits that fit: 8."""
    assert [repair.vin for repair in repairs("1M8GDM9AXKP04278?")] == [RIGHT]


def test_swapped_neighbours_are_named_together():
    """04 typed as 40 in positions 12 and 13."""
    assert "positions 12 and 13 are 04, not 40" in [repair.words for repair in repairs("1M8GDM9AXKP402788")]


def test_no_letters_are_proposed_in_the_serial_number():
    """2 for Z in position 14 would check out by arithmetic, but a serial number has digits only."""
    assert all(repair.vin[13:].isdigit() for repair in repairs("1M8GDM9AXKP042787"))


def test_too_many_unreadable_characters_get_no_proposal():
    """Four unreadable characters could be anything."""
    assert repairs("IM8GDM9AXKPOQO788") == ()


def test_a_vin_of_the_wrong_length_gets_no_proposal():
    """Which character is missing cannot be told."""
    assert repairs(RIGHT[:-1]) == ()


def test_a_vin_from_elsewhere_gets_no_proposal():
    """Outside North America the check digit need not hold, so nothing can be worked out from it."""
    assert repairs("WM8GDM9A0KP042788") == ()
