"""A wire of some size: how much copper it has, and what a metre of it resists."""

from __future__ import annotations

from dataclasses import dataclass

from backprobe.errors import OptionError
from backprobe.limits.sourced import Basis
from backprobe.limits.wires import (
    AWG_MOST,
    AWG_MOST_BASIS,
    AWG_STRANDINGS,
    AWG_STRANDINGS_BASIS,
    IEC_60228,
    IEC_60228_BASIS,
    STRAND_LAY_BASIS,
)
from backprobe.physics.interpolation import log_log
from backprobe.physics.span import Span
from backprobe.physics.wire import awg_area_mm2, copper_mm2, copper_ohm_per_m
from backprobe.stages.given import within

GAUGE_THICKEST, GAUGE_THINNEST = -3, 40
MM2_LEAST, MM2_MOST = 0.05, 120.0
STRAND_LAY = 1.02
VEHICLE_WIRE_COPPER = 0.93  # of its gauge: the least of AWG_STRANDINGS, for gauges that are not listed there


@dataclass(frozen=True, slots=True, kw_only=True)
class Conductor:
    """A wire: `gauge` or `mm2` is how its size was given, `area_mm2` its copper by that name.

    `least_area_mm2` is how little copper a wire sold under that name may have. `ohm_per_m` is at 20 °C: from pure
    copper of the full area to the most that a stranded, tinned wire may have; its likely figure is what to reckon with.
    """

    name: str
    gauge: int | None
    mm2: float | None
    solid: bool
    area_mm2: float
    least_area_mm2: float
    ohm_per_m: Span
    bases: tuple[Basis, ...]


def conductor_of(*, awg: int | None = None, mm2: float | None = None, solid: bool = False) -> Conductor:
    """The wire of a gauge or of a size in mm²; one of the two. Raises OptionError for a size that is none.

    >>> conductor_of(awg=18, solid=True).ohm_per_m.likely == copper_ohm_per_m(awg_area_mm2(18))
    True
    >>> round(conductor_of(mm2=0.75).ohm_per_m.likely, 9)
    0.026
    """
    if awg is not None and mm2 is None:
        return _of_gauge(awg, solid=solid)
    if mm2 is not None and awg is None:
        return _of_area(within(float(mm2), what="a wire", unit="mm²", least=MM2_LEAST, most=MM2_MOST), solid=solid)
    raise OptionError("a wire's size is its gauge (AWG) or its square millimetres, one of the two")


def gauge_name(gauge: int) -> str:
    """A gauge as it is written: 18 AWG, 2/0 AWG.

    >>> gauge_name(18), gauge_name(-1)
    ('18 AWG', '2/0 AWG')
    """
    return f"{gauge} AWG" if gauge > 0 else f"{1 - gauge}/0 AWG"


def _of_gauge(gauge: int, *, solid: bool) -> Conductor:
    if not GAUGE_THICKEST <= gauge <= GAUGE_THINNEST:
        raise OptionError(f"no wire has gauge {gauge}: 4/0 to {GAUGE_THINNEST} AWG is expected")
    area_mm2 = awg_area_mm2(gauge)
    copper = copper_ohm_per_m(area_mm2)
    if solid:
        bare = Span(copper, copper, _solid_most(gauge, copper))
        return _named(gauge, area_mm2, solid=True, least_area_mm2=area_mm2, ohm_per_m=bare)
    stranded_mm2 = _stranded_mm2(gauge, area_mm2)
    fullest = copper_ohm_per_m(max(area_mm2, stranded_mm2))
    most = max(_stranded_most(gauge, copper), copper_ohm_per_m(stranded_mm2) * STRAND_LAY)
    ohm_per_m = Span(fullest, copper * STRAND_LAY, most)
    return _named(gauge, area_mm2, solid=False, least_area_mm2=min(area_mm2, stranded_mm2), ohm_per_m=ohm_per_m)


def _named(gauge: int, area_mm2: float, *, solid: bool, least_area_mm2: float, ohm_per_m: Span) -> Conductor:
    bases = (AWG_MOST_BASIS,) if solid else (STRAND_LAY_BASIS, AWG_MOST_BASIS, AWG_STRANDINGS_BASIS)
    return Conductor(
        name=gauge_name(gauge),
        gauge=gauge,
        mm2=None,
        solid=solid,
        area_mm2=area_mm2,
        least_area_mm2=least_area_mm2,
        ohm_per_m=ohm_per_m,
        bases=bases,
    )


def _stranded_mm2(gauge: int, area_mm2: float) -> float:
    """The copper of vehicle wire of that gauge."""
    made_of = AWG_STRANDINGS.get(gauge)
    return area_mm2 * VEHICLE_WIRE_COPPER if made_of is None else made_of[0] * awg_area_mm2(made_of[1])


def _solid_most(gauge: int, copper: float) -> float:
    listed = AWG_MOST.get(gauge)
    return copper * _widest(0) if listed is None else max(copper, listed[0] / 1000.0)


def _stranded_most(gauge: int, copper: float) -> float:
    listed = AWG_MOST.get(gauge)
    return copper * _widest(2) if listed is None else listed[2] / 1000.0


def _widest(column: int) -> float:
    """How far the listed figures of a column go above pure copper at most: for gauges that are not listed."""
    return max(row[column] / 1000.0 / copper_ohm_per_m(awg_area_mm2(gauge)) for gauge, row in AWG_MOST.items())


def _of_area(mm2: float, *, solid: bool) -> Conductor:
    copper = copper_ohm_per_m(mm2)
    likely = _iec_most(mm2, column=0 if solid else 1)
    most = likely if solid else max(likely, _iec_most(mm2, column=2))
    return Conductor(
        name=f"{mm2:g} mm²",
        gauge=None,
        mm2=mm2,
        solid=solid,
        area_mm2=mm2,
        least_area_mm2=min(mm2, copper_mm2(likely)),
        ohm_per_m=Span(copper, max(copper, likely), max(copper, most)),
        bases=(IEC_60228_BASIS,),
    )


def _iec_most(mm2: float, *, column: int) -> float:
    """The largest resistance of a size [Ω/m]; what is not listed has as much above pure copper as its neighbours."""
    above = [(size, most / 1000.0 * size) for size, row in IEC_60228.items() if (most := row[column]) is not None]
    return log_log(mm2, above) / mm2
