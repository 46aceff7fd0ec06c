"""Another unit of the same yard."""

import pytest
from tests.samples.prove_cases import healthy, named, proven, row

from backprobe.errors import OptionError, UnreadableError

IDLE = [row(t, "heartbeat", 0) for t in range(-60, 1500, 60)]


def test_another_unit_tells_the_script():
    """Only that is named, with the unit; nothing is said of delays."""
    answer = proven([*IDLE, *healthy(unit="L9"), *(row(t, unit="L5") for t in range(0, 1500, 60))])
    assert named(answer) == ["swapped_serial"]
    found = answer.as_json()
    assert (found["unit_id"], found["other_unit"], found["patterns"][0]["other_unit"]) == ("L1", "L9", "L9")
    assert (found["on_delay_s"], found["off_delay_s"], found["clock_offset_s"]) == (None, None, None)
    assert found["verdict"] == "fails"


def test_a_unit_that_is_not_in_the_file():
    """Bad input with the names that there are, unless another fits."""
    with pytest.raises(UnreadableError) as caught:
        proven([row(t, unit="L9") for t in range(0, 900, 60)])
    assert "L9" in str(caught.value)
    answer = proven(healthy(unit="L9"))
    assert named(answer) == ["swapped_serial"]
    assert answer.proof.alignment is None
    assert {str(outcome.state) for outcome in answer.proof.turns} == {"matched", "open"}


def test_a_unit_elsewhere_is_not_swapped():
    """The right turns by chance, 50 km away."""
    assert named(proven([*IDLE, *healthy(unit="L9", place="-33.5,151.2,4")])) == []


def test_a_unit_that_fits_is_not_given_up():
    """Two trucks whose keys were turned at once: the job's own is the job's own."""
    assert named(proven([*healthy(), *healthy(unit="L9")])) == []


def test_a_faulty_unit_is_not_swapped_for_a_stranger():
    """An inverted input explains its reports; a neighbour who turns the key as he likes does not."""
    own = [row(-60, "boot"), row(302, "ignition_off", 0), row(820, "ignition_on", 1), row(1200, "heartbeat", 1)]
    strange = [row(150, "ignition_on", unit="L9"), row(700, "ignition_off", unit="L9"), row(900, unit="L9")]
    assert named(proven([*own, *strange])) == ["inverted"]


def test_whose_reports_these_are():
    """By the serial where nothing else is said; of several units one must be named."""
    rows = [*healthy(), *healthy(unit="L9")]
    assert proven(rows, unit_id=None, unit_serial="l1").proof.unit_id == "L1"
    assert proven(healthy(unit="L9"), unit_id=None, unit_serial="L1").proof.unit_id == "L9"
    with pytest.raises(OptionError) as caught:
        proven(rows, unit_id=None)
    assert "--unit-id" in caught.value.message
