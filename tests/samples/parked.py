"""Parked vehicles to judge: an invented unit, a battery and a rest, any figure of which may be given otherwise."""

from backprobe.evidence.parked_sheet import BatterySheet, ParkedSheet, Typed
from backprobe.evidence.unit_sheet import Lead, Purpose, Reporting, Supply, UnitSheet
from backprobe.limits.lookup import meter
from backprobe.stages.parked.parked import ParkedCase

UNIT = UnitSheet(
    name="Lantern 2",
    maker="Pell Signal Works",
    supply=Supply(least_V=8, most_V=32, idle_mA=65, transmit_mA=180, sleep_mA=3.5, peak_A=1.2),
    leads=(Lead(name="power", purpose=Purpose.SUPPLY), Lead(name="ground", purpose=Purpose.GROUND)),
    reporting=Reporting(stopped_interval_s=3600, report_s=30),
)
BATTERY = {
    "kind": "flooded",
    "capacity_Ah": 110.0,
    "age_years": 2.0,
    "rest_V": (Typed(12.6, 0.01),),
    "hours_since_charge": 24.0,
    "temperature_C": 20.0,
}
REST = {"vehicle_drain_mA": Typed(25.0, 1.0), "minutes_after_lock": 60.0, "coldest_C": -5.0, "wanted_days": 30.0}


def parked(system_V=12, unit=UNIT, **figures):
    """A case, with `figures` of the battery or the rest in place of the usual ones."""
    battery = {**BATTERY, **{key: value for key, value in figures.items() if key in BATTERY or key == "count"}}
    rest = {**REST, **{key: value for key, value in figures.items() if key not in battery}}
    sheet = ParkedSheet(battery=BatterySheet(**battery), **rest)
    return ParkedCase(sheet=sheet, unit=unit, meter=meter("basic"), system_V=system_V)


SHEET = """
[battery]
kind = "flooded"
capacity_Ah = 110
age_years = 2
rest_V = "12.60"
hours_since_charge = 24
temperature_C = 20

[parked]
vehicle_drain_mA = "25"
minutes_after_lock = 60
coldest_C = -5
wanted_days = 5
"""
