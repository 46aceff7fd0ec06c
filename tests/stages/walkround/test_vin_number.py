"""The arithmetic of the VIN."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from backprobe.limits.vin import VALUES, WEIGHTS
from backprobe.stages.walkround.vin_number import (
    CHECK_AT,
    check_digit,
    has_right_check_digit,
    is_north_american,
    is_well_formed,
    model_years,
    tidied,
)

LEGAL = sorted(VALUES)
vins = st.text(alphabet=LEGAL, min_size=17, max_size=17).map(lambda vin: vin[:8] + check_digit(vin) + vin[9:])


@given(vins, st.integers(0, 16), st.sampled_from(LEGAL))
def test_a_single_wrong_character_never_passes(vin, at, other):
    """11 is prime and weights are below 11: any change of a character's value changes the remainder."""
    if at != CHECK_AT and VALUES[other] != VALUES[vin[at]]:
        assert not has_right_check_digit(vin[:at] + other + vin[at + 1 :])


@given(vins, st.sampled_from(LEGAL))
def test_a_wrong_check_digit_never_passes(vin, other):
    """Position 9 itself has weight 0 and is compared as a character: J is not 1."""
    changed = vin[:8] + other + vin[9:]
    assert has_right_check_digit(changed) == (changed == vin)


@given(vins, st.integers(0, 15))
def test_swapped_neighbours_of_different_value_never_pass(vin, at):
    """Neighbouring weights differ by less than 11, so the remainder moves (position 9 left alone)."""
    if CHECK_AT not in (at, at + 1) and VALUES[vin[at]] != VALUES[vin[at + 1]]:
        assert not has_right_check_digit(vin[:at] + vin[at + 1] + vin[at] + vin[at + 2 :])


def test_the_weight_of_the_check_digit_is_zero():
    """The check digit does not count itself; all others count."""
    assert [at + 1 for at, weight in enumerate(WEIGHTS) if weight == 0] == [9]
    assert len(WEIGHTS) == 17


def test_plate_marks_and_small_letters_are_tidied_and_said():
    """Stars around, a hyphen and spaces inside, small letters: read, but not silently."""
    vin, said = tidied(" *1m8gdm9a-xkp 042788* ")
    assert vin == "1M8GDM9AXKP042788"
    assert len(said) == 2


def test_a_clean_vin_is_left_alone():
    """Nothing to tidy, nothing to say."""
    assert tidied("1M8GDM9AXKP042788") == ("1M8GDM9AXKP042788", ())


def test_letters_of_other_alphabets_are_not_made_to_fit():
    """A Greek small letter has a Latin-looking capital; it must stay what it is and be refused."""
    vin, said = tidied("1M8GDM9AXKP04278µ")
    assert vin.endswith("µ")
    assert said == ()
    assert not is_well_formed(vin)


@pytest.mark.parametrize("first", "12345")
def test_one_to_five_are_taken_as_north_america(first):
    """Region codes from memory, unverified."""
    assert is_north_american(first + "M8GDM9AXKP042788")


@pytest.mark.parametrize("first", "6789JKLSVWXYZ0")
def test_all_others_are_not(first):
    """Neither Europe, Asia, Oceania nor South America, nor 7, which is doubtful."""
    assert not is_north_american(first + "M8GDM9AXKP042788")


def test_heavy_vehicles_keep_both_cycles():
    """K is 1989 or 2019, and position 7 says nothing above 4536 kg."""
    assert model_years("1M8GDM9AXKP042788", heavy=True) == (1989, 2019)


def test_unknown_weight_keeps_both_cycles():
    """Where the weight is not known the rule of position 7 must not be used."""
    assert model_years("1M8GDM9AXKP042788") == (1989, 2019)


def test_a_digit_in_position_7_of_a_light_vehicle_means_before_2010():
    """Position 7 is 9: the cycle 1980 to 2009."""
    assert model_years("1M8GDM9AXKP042788", heavy=False) == (1989,)


def test_a_letter_in_position_7_of_a_light_vehicle_means_2010_or_later():
    """Position 7 is B: the cycle 2010 to 2039."""
    assert model_years("1M8GDMBAXKP042788", heavy=False) == (2019,)


def test_a_year_after_the_work_is_left_out():
    """5 is 2005 or 2035; work of 2026 cannot be on a vehicle of 2035, but can on one of 2027."""
    assert model_years("1G4AH59H45G118341", job_year=2026) == (2005,)
    assert model_years("1M8GDM9AXVP042788", job_year=2026) == (1997, 2027)


@pytest.mark.parametrize("code", "UZ0")
def test_codes_that_are_no_year(code):
    """U, Z and 0 never stand in position 10."""
    assert model_years("1M8GDM9AX" + code + "P042788") == ()
