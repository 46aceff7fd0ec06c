"""Which vehicles are of one type, by their VINs."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from backprobe.errors import InputError
from backprobe.limits.vin import VALUES
from backprobe.stages.walkround.same_type import same_type
from backprobe.stages.walkround.vin_number import is_well_formed

DEMO_07, DEMO_12 = "5ZLDR7HV5KR200417", "5ZLDR7HVXKR200588"


def test_the_demo_s_two_trucks_are_of_one_type():
    """Check digits 5 and X and the serial numbers differ, nothing else."""
    assert same_type(DEMO_07) == same_type(DEMO_12) == "5ZLDR7HV-KR"


@pytest.mark.parametrize(
    "other",
    [
        "5ZMDR7HV5KR200417",  # another maker (position 3)
        "5ZLDR7HW5KR200417",  # another description (8)
        "5ZLDR7HV5LR200417",  # another model year (10)
        "5ZLDR7HV5KS200417",  # another plant (11)
    ],
)
def test_another_maker_description_year_or_plant_is_another_type(other: str):
    """Each of these alone."""
    assert same_type(other) != same_type(DEMO_07)


def test_makers_of_few_vehicles_are_told_apart_by_positions_12_to_14():
    """9 in position 3: the maker's own number goes on there (49 CFR 565.15(a))."""
    assert same_type("5Z9DR7HV5KR200417") == "5Z9DR7HV-KR-200"
    assert same_type("5Z9DR7HV5KR201417") != same_type("5Z9DR7HV5KR200417")


@pytest.mark.parametrize("vin", ["", "5ZLDR7HV5KR20041", "5ZLDR7HV5KR2004177", "5ZLDR7HV5KR20O417"])
def test_what_is_no_vin_has_no_type(vin: str):
    """Too short, too long, with a letter O."""
    with pytest.raises(InputError, match="no well-formed VIN"):
        same_type(vin)


VINS = st.text(alphabet=sorted(VALUES), min_size=17, max_size=17)


@given(vin=VINS, check=st.sampled_from(sorted(VALUES)), serial=st.text(alphabet="0123456789", min_size=3, max_size=3))
def test_check_digit_and_last_three_never_matter(vin: str, check: str, serial: str):
    """Whatever stands in positions 9 and 15 to 17, the type is the same; a wrong check digit is judged elsewhere."""
    assert is_well_formed(vin)
    assert same_type(vin[:8] + check + vin[9:14] + serial) == same_type(vin)
