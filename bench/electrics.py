"""How long the electrical half takes to judge: each calculator, and what one join and one parked truck ask together.

Run: python bench/electrics.py. Prints the best of several runs in milliseconds. The last line puts a fuse on each of
a unit's leads, its volts and hold-up through a crank of 10 s sampled every 4 ms, its joints and ground, and the days
parked at the ends of every uncertainty; the aim for join and parked together is 100 ms in CPython.
"""

from __future__ import annotations

import sys
from collections.abc import Callable
from itertools import product
from pathlib import Path
from time import perf_counter

sys.path.insert(0, str(Path(__file__).resolve().parents[1] / "src"))

from backprobe.limits.batteries import CAPACITY, CRANK_DEMAND, CRANK_SUPPLY, SELF_DISCHARGE_PER_MONTH
from backprobe.limits.lookup import meter
from backprobe.physics.capacity import capacity_fraction
from backprobe.physics.crank_need import least_charge_to_crank
from backprobe.physics.drain import days_until
from backprobe.physics.ground_drop import drop_ohm
from backprobe.physics.holdup import dips_below, longest_s
from backprobe.physics.loop import at_unit_V
from backprobe.physics.self_discharge import self_discharge_per_day
from backprobe.physics.span import Span, exactly
from backprobe.physics.starting_profile import StartingProfile, voltage_at
from backprobe.stages.join.ampacity import insulation_of
from backprobe.stages.join.conductor import conductor_of
from backprobe.stages.join.fuse_calc import FuseCase, fuse_answer
from backprobe.stages.join.fuse_opening import fuse_of
from backprobe.stages.join.wire_calc import wire_answer
from backprobe.stages.parked.battery_calc import BatteryCase, battery_answer

RUNS = 20
AIM_MS = 100.0
LEVEL_II = StartingProfile(
    rest_V=12.0, trough_V=4.5, plateau_V=6.5, fall_s=0.005, trough_s=0.015, climb_s=0.05, plateau_s=10.0, rise_s=0.1
)
TIMES_S = [step * 0.004 for step in range(2600)]
CRANK_V = [voltage_at(LEVEL_II, time_s - 0.1) for time_s in TIMES_S]


def wire() -> object:
    """A length of wire."""
    return wire_answer(conductor_of(awg=18), length_m=5.0, temperature_C=60.0, current_A=1.2).as_json()


def fuse() -> object:
    """A fuse on a wire."""
    case = FuseCase(
        fuse=fuse_of(3),
        conductor=conductor_of(mm2=0.75),
        insulation=insulation_of("pvc-105"),
        loop_ohm=0.3,
        system_V=12,
        load_A=1.2,
    )
    return fuse_answer(case).as_json()


def battery() -> object:
    """A battery at rest."""
    case = BatteryCase(rest_V=12.4, count_V=0.01, hours_since_charge=3, meter=meter("basic"), temperature_C=5.0)
    return battery_answer(case).charge


def unit_through_crank() -> object:
    """The unit's volts and the longest time below its least, sample by sample."""
    at_unit = [at_unit_V(volts, current_A=1.2, loop_ohm=0.3) for volts in CRANK_V]
    return longest_s(dips_below(TIMES_S, at_unit, least_V=8.0))


def days_parked() -> list[float]:
    """Days until the truck will not start, at every end of what is unsure."""
    charges, drains, colds = (0.6, 0.75, 0.9), (20.0, 35.0, 50.0), (-18.0, -5.0, 5.0)
    found = []
    for charge, drain_mA, cold_C, loss in product(charges, drains, colds, SELF_DISCHARGE_PER_MONTH):
        whole_Ah = 100.0 * capacity_fraction(cold_C, CAPACITY["slow"])
        needed = least_charge_to_crank(cold_C, full_at_C=-18.0, supply=CRANK_SUPPLY, demand=CRANK_DEMAND)
        per_day = self_discharge_per_day(loss, temperature_C=cold_C)
        found.append(
            days_until(charge * whole_Ah, needed_Ah=needed * whole_Ah, drain_mA=drain_mA, loss_per_day=per_day)
        )
    return found


def everything() -> object:
    """Four fused leads, the crank, a ground and a joint, the battery and the days."""
    leads = [fuse() for _ in range(4)]
    joints = [drop_ohm(Span(95, 100, 105), load_A=exactly(5.0)) for _ in range(4)]
    return leads, unit_through_crank(), joints, battery(), days_parked()


def best_ms(work: Callable[[], object]) -> float:
    """The best of several runs, in milliseconds."""
    best = float("inf")
    for _ in range(RUNS):
        started = perf_counter()
        work()
        best = min(best, perf_counter() - started)
    return best * 1000.0


def main() -> None:
    """Print the table."""
    for work in (wire, fuse, battery, unit_through_crank, days_parked):
        print(f"{work.__name__.replace('_', ' '):<20}{best_ms(work):>8.2f} ms")
    whole = best_ms(everything)
    print(f"{'everything':<20}{whole:>8.2f} ms   {whole / AIM_MS:.2f} of the aim of {AIM_MS:g} ms")


if __name__ == "__main__":
    main()
