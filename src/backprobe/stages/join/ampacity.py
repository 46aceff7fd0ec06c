"""What a wire carries for good in hot surroundings."""

from __future__ import annotations

from backprobe.errors import OptionError
from backprobe.limits.sourced import Basis, Insulation
from backprobe.limits.wires import AMPACITY, AMPACITY_BASIS, INSULATIONS, THIN_STEPS, THIN_STEPS_BASIS
from backprobe.physics.ampacity import ampacity_at_A
from backprobe.physics.interpolation import Points, log_log
from backprobe.physics.span import Span
from backprobe.physics.wire import awg_area_mm2
from backprobe.stages.join.conductor import Conductor

USUAL_INSULATION = "pvc-105"
STEPS_FROM_GAUGE = 18


def insulation_of(name: str) -> Insulation:
    """The insulation of that name. Raises OptionError for another.

    >>> insulation_of("pvc-70").k
    115.0
    """
    if name not in INSULATIONS:
        raise OptionError(f"no insulation is called '{name}': {', '.join(INSULATIONS)}")
    return INSULATIONS[name]


def ampacity_A(conductor: Conductor, insulation: Insulation, *, ambient_C: float) -> Span:
    """The continuous current [A] of one wire or a small bundle in the open at `ambient_C`.

    Its low end is that of a wire with as little copper as may be sold under the name. Between gauges the current is
    read by area; wires thinner than 18 AWG follow the steps of another published table (our own model), those thinner
    than 24 AWG lose as much current as copper.
    """
    table = _by_area(insulation.ampacity_column)
    least_A, named_A = (_table_A(area, table) for area in (conductor.least_area_mm2, conductor.area_mm2))
    at_30C = Span(least_A, named_A, named_A)
    factor = ampacity_at_A(1.0, insulation_C=insulation.conductor_C, ambient_C=ambient_C)
    return at_30C.times(factor)


def ampacity_bases(conductor: Conductor) -> tuple[Basis, ...]:
    """What the continuous current of a wire rests on."""
    thin = conductor.area_mm2 < awg_area_mm2(STEPS_FROM_GAUGE)
    return (AMPACITY_BASIS, THIN_STEPS_BASIS) if thin else (AMPACITY_BASIS,)


def _by_area(column: int) -> Points:
    """The table of a rating by area, ascending, with the thin gauges that it lacks."""
    listed = AMPACITY[column]
    step = listed[STEPS_FROM_GAUGE] / THIN_STEPS[STEPS_FROM_GAUGE]
    thin = {gauge: current_A * step for gauge, current_A in THIN_STEPS.items() if gauge > STEPS_FROM_GAUGE}
    return [(awg_area_mm2(gauge), current_A) for gauge, current_A in sorted({**listed, **thin}.items(), reverse=True)]


def _table_A(area_mm2: float, table: Points) -> float:
    thinnest_mm2, thinnest_A = table[0]
    if area_mm2 < thinnest_mm2:
        return thinnest_A * area_mm2 / thinnest_mm2
    return log_log(area_mm2, table)
