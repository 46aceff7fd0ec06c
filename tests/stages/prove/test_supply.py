"""The unit's own supply voltage."""

import pytest
from tests.samples.prove_cases import reports, row

from backprobe.evidence.supply_pair import SupplyPair
from backprobe.evidence.unit_sheet import Supply as SheetSupply
from backprobe.evidence.unit_sheet import UnitSheet
from backprobe.findings import Verdict
from backprobe.limits.lookup import limit
from backprobe.stages.prove.supply import supply_of

LIMIT = limit("supply_loaded_drop", system_V=12)  # 0.3 V
# from 65 mA to 180 mA: 115 mA more
SHEET = UnitSheet(name="L", maker=None, supply=SheetSupply(least_V=8, most_V=32, idle_mA=65, transmit_mA=180), leads=())


@pytest.mark.parametrize(
    ("transmit", "count", "verdict", "ohm"),
    [
        (12.40, 0.001, Verdict.HOLDS, 0.09),  # 10 mV / 115 mA
        (12.38, 0.01, Verdict.THIN, 0.26),  # 30 mV ± 2 × 8 mV: up to 0.40 Ω, 0.40 V at 1 A
        (12.30, 0.01, Verdict.FAILS, 0.96),  # 110 mV
    ],
)
def test_the_change_is_joint_and_lead(transmit, count, verdict, ohm):
    """Resistance times 1 A against 0.3 V, with twice the uncertainty of two readings."""
    found = supply_of([], pair=SupplyPair(12.41, transmit, count), sheet=SHEET, limit=LIMIT)
    assert found.verdict is verdict
    assert found.as_json()["loop_ohm"] == ohm


def test_two_readings_of_one_count_each():
    """0.01 V / √3, twice: √(2 / 3) × 0.01 V."""
    assert supply_of([], pair=SupplyPair(12.41, 12.40, 0.01), sheet=SHEET, limit=LIMIT).as_json()["u_V"] == 0.008


def test_the_level_alone_says_nothing():
    """It is shown; open without the pair, and without the sheet's currents."""
    kept = [(report.time_s, report) for report in reports([row(0), row(60)])]
    level = supply_of(kept, pair=None, sheet=SHEET, limit=LIMIT)
    assert (level.verdict, level.level_V, level.change_V) == (Verdict.OPEN, 12.4, None)
    bare = supply_of(kept, pair=SupplyPair(12.41, 12.3, 0.01), sheet=None, limit=LIMIT)
    assert (bare.verdict, bare.loop_ohm) == (Verdict.OPEN, None)
    assert bare.as_json()["change_V"] == 0.11
