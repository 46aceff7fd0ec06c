"""A starting profile of ISO 16750-2 as samples, for a job without a recording of its crank."""

from __future__ import annotations

from backprobe.errors import OptionError
from backprobe.findings import Standing
from backprobe.limits.iso_16750_2 import STARTING_PROFILES
from backprobe.physics.starting_profile import StartingProfile, voltage_at
from backprobe.stages.join.wiring_case import Waveform

STEP_S = 0.001
BEFORE_S = 0.01
SAYS = "{basis} ({standing}): what a unit must survive, not how healthy a battery is"


def level_waveform(level: str, *, system_V: int) -> Waveform:
    """The profile of a level, a sample each millisecond. Raises OptionError for a level that the system has not.

    >>> min(level_waveform("I", system_V=12).volts)
    8.0
    """
    rows = STARTING_PROFILES[system_V]
    if level not in rows:
        raise OptionError(f"ISO 16750-2 has no level {level} at {system_V} V: {', '.join(rows)}")
    row = rows[level]
    profile = StartingProfile(**row.figures)
    count = round((BEFORE_S * 2 + profile.crank_s + profile.rise_s) / STEP_S)
    time_s = tuple(round(index * STEP_S - BEFORE_S, 4) for index in range(count + 1))
    return Waveform(
        time_s=time_s,
        volts=tuple(round(voltage_at(profile, at_s), 6) for at_s in time_s),
        half_width_V=0.0,
        source=f"level {level}: {SAYS.format(basis=row.basis, standing=row.standing)}",
        verified=row.standing is not Standing.FROM_MEMORY,
    )
