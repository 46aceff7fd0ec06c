"""Limits and classes of meters by their names."""

from __future__ import annotations

from backprobe.errors import OptionError
from backprobe.evidence.meter import Meter
from backprobe.findings import Limit
from backprobe.limits.meters import METERS
from backprobe.limits.practice import PRACTICE

SYSTEMS_V = (12, 24)


def limit(name: str, *, system_V: int) -> Limit:
    """The limit of that name in a system of `system_V` (12 or 24); its value is in the limit's own unit.

    Raises OptionError for another system voltage and KeyError for a name that is not in the table.

    >>> limit("supply_in_crank", system_V=24).value
    18.0
    >>> limit("dead", system_V=12).warrant
    'the trade says 0 V; a 10 MΩ meter shows stray volts on a dead wire (common practice, no source)'
    """
    if system_V not in SYSTEMS_V:
        raise OptionError(f"a system of {system_V} V is not known: 12 or 24")
    return PRACTICE[name][system_V]


def meter(name: str) -> Meter:
    """The class of meters of that name: basic, service or precise. Raises OptionError for another name.

    >>> meter("basic").percent, meter("basic").counts
    (0.5, 2.0)
    """
    if name not in METERS:
        raise OptionError(f"no class of meters is called '{name}': {', '.join(METERS)}")
    return METERS[name]
