"""The unit sheet."""

from backprobe.evidence.unit_sheet import Lead, Purpose, Supply, UnitInput, UnitSheet

LEADS = (
    Lead(name="power", purpose=Purpose.SUPPLY),
    Lead(name="ground", purpose=Purpose.GROUND),
    Lead(name="key", purpose=Purpose.IGNITION),
    Lead(name="door", purpose=Purpose.INPUT),
    Lead(name="alarm", purpose=Purpose.INPUT),
)
KEY = UnitInput(name="key", low_most_V=3.0, high_least_V=7.0)
DOOR = UnitInput(name="door", low_most_V=1.0, high_least_V=4.0)


def unit(*inputs):
    """A unit with these inputs."""
    return UnitSheet(name="Ember 1", maker=None, supply=Supply(least_V=9.0, most_V=32.0), leads=LEADS, inputs=inputs)


def test_leads_are_found_by_purpose_in_their_order():
    """Two inputs, one ignition, no data lead."""
    assert [lead.name for lead in unit().leads_for(Purpose.INPUT)] == ["door", "alarm"]
    assert unit().leads_for(Purpose.DATA) == ()


def test_the_ignition_thresholds_are_those_of_the_ignition_lead():
    """The input named as the ignition lead, wherever it stands in the list."""
    assert unit(DOOR, KEY).ignition == KEY


def test_without_stated_thresholds_there_are_none():
    """The door's thresholds are not the ignition's."""
    assert unit(DOOR).ignition is None
