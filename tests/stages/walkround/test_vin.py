"""The findings on a VIN."""

from backprobe.findings import Stage, Verdict
from backprobe.stages.walkround.vin import check_vin

RIGHT = "1M8GDM9AXKP042788"


def verdicts(check):
    """Finding ids with their verdicts."""
    return {finding.id: finding.verdict for finding in check.findings}


def finding(check, name):
    """The finding of that id."""
    return next(found for found in check.findings if found.id == name)


def test_a_right_vin_of_a_light_vehicle_holds_throughout():
    """Form, check digit and one model year."""
    check = check_vin(RIGHT, heavy=False)
    assert set(verdicts(check).values()) == {Verdict.HOLDS}
    assert check.years == (1989,)
    assert check.judged
    assert all(found.stage is Stage.WALKROUND for found in check.findings)


def test_two_possible_years_stay_open_until_one_is_stated():
    """A heavy vehicle's K is 1989 or 2019: the papers must say."""
    found = finding(check_vin(RIGHT, heavy=True), "vin_model_year")
    assert found.verdict is Verdict.OPEN
    assert "1989 or 2019" in found.next
    assert verdicts(check_vin(RIGHT, heavy=True, stated_year=2019))["vin_model_year"] is Verdict.HOLDS


def test_a_stated_year_that_the_vin_rules_out_fails():
    """K can never be 2018."""
    found = finding(check_vin(RIGHT, heavy=True, stated_year=2018), "vin_model_year")
    assert found.verdict is Verdict.FAILS
    assert "2018 was stated" in found.next


def test_a_wrong_check_digit_fails_and_names_where_to_look():
    """8 typed as B in position 3: the finding says what the plate may show."""
    check = check_vin("1MBGDM9AXKP042788")
    found = finding(check, "vin_check_digit")
    assert found.verdict is Verdict.FAILS
    assert "position 3 is 8, not B (1M8GDM9AXKP042788)" in found.next
    assert verdicts(check)["vin_model_year"] is Verdict.OPEN


def test_at_most_three_misreadings_are_shown_and_the_rest_counted():
    """A technician can look at three places; how many more would fit is said."""
    found = finding(check_vin("1M8GDM9A5KP042788"), "vin_check_digit")
    check = check_vin("1M8GDM9A5KP042788")
    assert found.next.count("not ") == 3
    assert f"{len(check.repairs) - 3} less likely" in found.next


def test_illegal_letters_fail_the_form_and_nothing_else_is_judged():
    """O in position 12: the digit 0 is meant, which the check digit confirms."""
    check = check_vin("1M8GDM9AXKPO42788")
    assert verdicts(check) == {"vin_form": Verdict.FAILS}
    assert "O in position 12" in check.findings[0].because
    assert "position 12 is 0, not O" in check.findings[0].next


def test_tidying_is_said():
    """Small letters and spaces are read, and the finding tells."""
    check = check_vin("1m8gdm9axkp 042788", heavy=False)
    assert "small letters read as capitals" in check.findings[0].because
    assert check.typed == "1m8gdm9axkp 042788"
    assert check.vin == RIGHT


def test_sixteen_characters_fail():
    """The count is named, for 16 and 18."""
    assert "16 characters" in check_vin(RIGHT[:-1]).findings[0].because
    assert "18 characters" in check_vin(RIGHT + "8").findings[0].because


def test_no_vin_is_open():
    """Missing evidence is open, not failed."""
    assert verdicts(check_vin("  ")) == {"vin_form": Verdict.OPEN}


def test_a_vin_from_elsewhere_is_not_judged_and_says_so():
    """The same characters behind a W: neither check digit nor model year is judged."""
    check = check_vin("WM8GDM9A0KP042788", stated_year=1999)
    assert verdicts(check) == {"vin_form": Verdict.HOLDS}
    assert "not judged" in check.findings[0].because
    assert not check.judged
    assert check.years == ()


def test_a_code_that_is_no_year_fails():
    """Z in position 10; its value is 9, K's 2: the sum is 351 + 7 × 9 = 414 = 37 × 11 + 7."""
    check = check_vin("1M8GDM9A7ZP042788")
    assert verdicts(check)["vin_check_digit"] is Verdict.HOLDS
    assert verdicts(check)["vin_model_year"] is Verdict.FAILS
