"""How full a lead-acid battery is, from its volts at rest, and how sure that is."""

from __future__ import annotations

from backprobe.errors import OptionError
from backprobe.limits.batteries import REST, REST_TABLE_C, REST_V_PER_K
from backprobe.physics.battery import as_at_reference_V, charge_at_V, surface_charge_V
from backprobe.physics.span import Span

KINDS = ("flooded", "agm", "unknown")
LEAST_REST_V = 10.8  # per 12 V battery; below lies five cells' rest, or a load
MOST_REST_V = 13.2  # per 12 V battery: the highest that is printed for one at rest, AGM
CHARGE_DIGITS = 3


def state_of_charge(rest_V: Span, *, hours: float, kind: str = "unknown", temperature_C: float | None = None) -> Span:
    """State of charge, 0 to 1, of a 12 V battery that reads `rest_V`, `hours` after it was last charged.

    The reading's own bounds, the surface charge that may still be on it, how published tables differ and, at another
    temperature than that of the tables, the correction that is printed beside them are all put in at their ends. The
    likely figure is that of the first table of the kind with half the surface charge taken off. For an unknown kind
    flooded is likely and AGM is allowed for.

    >>> state_of_charge(Span(12.24, 12.24, 12.24), hours=24, kind="flooded").rounded(2)
    {'low': 0.5, 'likely': 0.5, 'high': 0.55}
    """
    tables = [table for name in _kinds(kind) for table in REST[name]]
    surface_V = surface_charge_V(hours)
    seen = Span(rest_V.low - surface_V, rest_V.likely - surface_V / 2.0, rest_V.high)
    low_V, high_V = _at_temperature(seen, temperature_C)
    likely = charge_at_V(seen.likely, tables[0])
    low = min(charge_at_V(low_V, table) for table in tables)
    high = max(charge_at_V(high_V, table) for table in tables)
    return Span(low, likely, high)


def not_at_rest(volts: float, *, hours: float) -> str | None:
    """Why a 12 V battery that reads `volts` is not at rest or not whole; None where it can be."""
    if volts < LEAST_REST_V:
        return (
            f"{volts:.2f} V is no battery at rest: a cell is gone (five rest at 9.9 to 10.6 V), or a load is on"
            "\ntake the load off, wait, and measure at the battery's posts again; if it stays, have the battery tested"
        )
    if volts > MOST_REST_V + surface_charge_V(hours):
        return (
            f"{volts:.2f} V is no battery at rest {hours:g} h after its charge: a charger or the alternator is on"
            "\ntake it off, wait, and measure again"
        )
    return None


def _kinds(kind: str) -> tuple[str, ...]:
    if kind not in KINDS:
        raise OptionError(f"no kind of battery is called '{kind}': {', '.join(KINDS)}")
    return ("flooded", "agm") if kind == "unknown" else (kind,)


def _at_temperature(seen: Span, temperature_C: float | None) -> tuple[float, float]:
    """The low and the high end in the tables' terms, with and without the correction [V]."""
    if temperature_C is None:
        return seen.low, seen.high
    ends = {
        volts: as_at_reference_V(volts, temperature_C=temperature_C, reference_C=REST_TABLE_C, V_per_K=REST_V_PER_K)
        for volts in (seen.low, seen.high)
    }
    return min(seen.low, ends[seen.low]), max(seen.high, ends[seen.high])
