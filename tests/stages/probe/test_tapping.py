"""What stands against tapping a wire of the right role."""

from dataclasses import replace

import pytest
from tests.samples.probe_tables import ELECTRIC, LOGGING, SETUP, SHOWN, readings_of, rows, table_of

from backprobe.stages.probe.belief import believe
from backprobe.stages.probe.setup import Setup
from backprobe.stages.probe.slots import SlotName, fitness
from backprobe.stages.probe.tapping import Obstacle, obstacle

CONSTANT = SHOWN["constant"]


def against(shown: str, *, slot: SlotName = SlotName.SUPPLY, setup: Setup = SETUP, others: str = "") -> Obstacle | None:
    """What stands against a wire that showed this."""
    beside = table_of(rows("other", others), system_V=setup.system_V).readings if others else ()
    belief = believe("w", readings_of(shown, system_V=setup.system_V), others=beside, setup=setup)
    return obstacle(belief, fitness(belief, slot, setup=setup, rest_V=12.5), setup=setup)


def test_nothing_stands_against_good_wires():
    """A constant and an ignition with every figure in place."""
    assert against(CONSTANT) is None
    assert against(SHOWN["ignition"], slot=SlotName.IGNITION) is None


@pytest.mark.parametrize(
    ("shown", "setup", "expected"),
    [
        (CONSTANT.replace("crank/min 10.93", "crank/min 8.20"), SETUP, Obstacle.UNFIT),
        (CONSTANT.replace(" after 12.55", ""), SETUP, Obstacle.NOT_MEASURED),
        (CONSTANT.replace("on 12.31", "on 12.31 on 1.23"), SETUP, Obstacle.CONTRADICTED),
        (CONSTANT.replace("crank/min 10.93", "crank/min 9.60"), SETUP, Obstacle.TOO_THIN),
        (CONSTANT.replace("crank/min 10.93", "crank/min 10.20"), LOGGING, Obstacle.TOO_THIN),
    ],
)
def test_each_obstacle_is_named(shown: str, setup: Setup, expected: Obstacle):
    """A crank below 9 V, no after, a slip, a range that ends at 7.6 V, a recorder not yet used."""
    assert against(shown, setup=setup) is expected


def test_a_level_that_might_be_a_pulled_up_line_is_compared_first():
    """13.1 V while running: a low alternator or a line under the battery? Beside a wire at 13.2 V it is a feed."""
    low = CONSTANT.replace("running 14.12", "running 13.10")
    assert against(low) is Obstacle.NOT_COMPARED
    assert against(low, others="running 13.20 on 12.4") is None
    assert against(low.replace("running 13.10", "running%1.5 13.00")) is None


def test_a_line_under_the_battery_is_no_supply():
    """0.8 V under the others at every position: not sure enough, whatever the limits say."""
    shown = "off 11.70 accessory 11.62 on 11.58 crank/min 10.20 running 13.30 after 11.72"
    assert against(shown, others="off 12.5 accessory 12.4 on 12.4 running 14.1 after 12.5") is Obstacle.UNSURE


def test_an_electric_vehicle_needs_less_sureness():
    """It has no crank to tell lamps by; everything else must be measured."""
    shown = "off 0.02 accessory 0.03 on 12.6 running 14.1 after 0.02 charging 0.05"
    assert against(shown, slot=SlotName.IGNITION, setup=ELECTRIC) is None
    without = shown.replace(" charging 0.05", "")
    assert against(without, slot=SlotName.IGNITION, setup=ELECTRIC) is Obstacle.NOT_MEASURED
    assert against(shown, slot=SlotName.IGNITION, setup=replace(ELECTRIC, has_crank=True)) is Obstacle.NOT_MEASURED
