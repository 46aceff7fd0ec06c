"""Published VINs with their check digits, and model-year codes (49 CFR 565.15)."""

import pytest

from backprobe.findings import Verdict
from backprobe.limits.vin import MODEL_YEARS, VALUES, WEIGHTS
from backprobe.stages.walkround.vin import check_vin
from backprobe.stages.walkround.vin_number import check_digit, has_right_check_digit

# Each with the sum of weighted values. Sources: the first is the worked example of the regulation itself (Table V:
# 411 / 11 = 37, remainder 4), read in a copy (law.lawstack.com/cfr/49/565.15, automobilesoftware.com); the second
# stands on four pages about VINs; the third is a classic, calculated by hand (sum of the weights: 89); the fourth
# is printed at scientificgems.wordpress.com.
PUBLISHED = [
    ("1G4AH59H45G118341", 411, "4"),
    ("1M8GDM9AXKP042788", 351, "X"),
    ("11111111111111111", 89, "1"),
    ("LJCPCBLCX11000237", 186, "X"),
]


@pytest.mark.parametrize(("vin", "total", "digit"), PUBLISHED)
def test_published_check_digits(vin, total, digit):
    """Sum of value × weight, modulo 11, ten written X."""
    assert sum(VALUES[c] * weight for c, weight in zip(vin, WEIGHTS, strict=True)) == total
    assert "0123456789X"[total % 11] == digit
    assert check_digit(vin) == digit
    assert has_right_check_digit(vin)


def test_a_printed_example_that_is_wrong():
    """1GNEK13T5NJ123456 is printed as an example at vinutils.com and fails: 289 mod 11 = 3, it has 5."""
    assert check_digit("1GNEK13T5NJ123456") == "3"
    found = {finding.id: finding.verdict for finding in check_vin("1GNEK13T5NJ123456").findings}
    assert found["vin_check_digit"] is Verdict.FAILS


def test_k_counts_two():
    """One stored copy of the second example gives K the value 1; the regulation's table says 2, and 351 needs it."""
    assert VALUES["K"] == 2


@pytest.mark.parametrize(
    ("code", "year"), [("A", 1980), ("J", 1988), ("T", 1996), ("Y", 2000), ("1", 2001), ("9", 2009)]
)
def test_published_model_years(code, year):
    """Source: vinutils.com/learn/model-year-codes, vinexplained.com; read."""
    assert MODEL_YEARS[code] == year


def test_codes_that_are_not_used():
    """I, O and Q never; U, Z and 0 not in position 10 (same source). 30 codes make a cycle of 30 years."""
    assert not set("IOQ") & set(VALUES)
    assert not set("IOQUZ0") & set(MODEL_YEARS)
    assert sorted(MODEL_YEARS.values()) == list(range(1980, 2010))


def test_a_real_trucks_vin_checks_out(shared_data):
    """The VIN that a real 12 V diesel truck sent in PGN 65260 (recording of CyberTruckResources) is right.

    The engine controller's three data packets are put together from the candump text, never copied here.
    """
    vin = vin_on_the_bus((shared_data / "can" / "truck-key-cycle.candump.txt").read_text(encoding="utf-8"))
    assert has_right_check_digit(vin)


def vin_on_the_bus(text):
    """The VIN of the first complete transport session for PGN 65260 (FEEC) in aligned candump text."""
    length, packets = 0, {}
    for line in text.splitlines():
        identifier, _, data = line.partition("]")
        numbers = [int(byte, 16) for byte in data.split()] if len(data.split()) == 8 else []
        if "ECFF" in identifier and numbers[:1] == [0x20] and numbers[5:8] == [0xEC, 0xFE, 0x00]:
            length, packets = numbers[1], {}
        elif "EBFF" in identifier and length and numbers:
            packets[numbers[0]] = bytes(numbers[1:])
            whole = b"".join(packets[number] for number in sorted(packets))
            if len(whole) >= length:
                return whole[:length].split(b"*")[0].decode("ascii")
    raise AssertionError("the recording holds no VIN")
