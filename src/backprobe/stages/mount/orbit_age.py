"""How old the orbits are on the day that a prediction is about, and what that means for it."""

from __future__ import annotations

from datetime import UTC, datetime

from backprobe.errors import OptionError
from backprobe.evidence.orbits import Orbits
from backprobe.findings import Finding, Stage, Verdict, judge
from backprobe.limits.sky import SKY
from backprobe.physics.gps_time import DAY_S, leap_s, unix_of
from backprobe.stages.mount.nominal import KIND

AGE_DIGITS = 1
LEAST_SATELLITES = 20  # GPS SPS Performance Standard 3.7.2: so many are healthy in 99.999 % of the time (from memory)
_PART = ": only a part of the sky, so that every place seems worse than it is"


def age_days(orbits: Orbits, start_s: float) -> float:
    """How far the farthest moment of the day is from the nearest set, in days; 0 within what a set is good for."""
    moments = {each.toe_s for each in orbits.sets}
    ends = (start_s, start_s + DAY_S)
    off_s = max(min(abs(moment - end) for moment in moments) for end in ends)
    return 0.0 if off_s <= orbits.good_for_s else round(off_s / DAY_S, AGE_DIGITS)


def refuse_too_old(orbits: Orbits, start_s: float) -> None:
    """Raise OptionError where orbits are so far from the day that nothing can be said by them."""
    age, most = age_days(orbits, start_s), SKY["orbits_age_usable"].value
    if orbits.kind == KIND or age <= most:
        return
    raise OptionError(
        f"{orbits.file} is of {_span(orbits)}, {age:,.0f} days from the day asked for ({_day(start_s)}): "
        f"orbits at most {most:g} days off are expected. Take a file of about that day, or leave --nav out"
    )


def age_finding(orbits: Orbits, start_s: float) -> Finding | None:
    """Whether the orbits are fresh and whole enough; None for the nominal constellation, which is both."""
    if orbits.kind == KIND:
        return None
    age, limit = age_days(orbits, start_s), SKY["orbits_age"]
    stale = judge(limit, age, low=age, high=age) is not Verdict.HOLDS
    few = len(orbits.ids) < LEAST_SATELLITES
    return Finding(
        id="mount_sky_orbits",
        stage=Stage.MOUNT,
        what=f"Orbits in {orbits.file}",
        # old orbits still tell how a day goes on the whole, so that they make an answer doubtful, not wrong
        verdict=Verdict.OPEN if few else Verdict.THIN if stale else Verdict.HOLDS,
        because=f"{orbits.kind} of {_span(orbits)}, {_aged(age)}, {len(orbits.ids)} satellites{_PART if few else ''}",
        next="take a whole navigation file or almanac of about that day" if few or stale else None,
        value=age,
        low=age,
        high=age,
        unit="days",
        digits=AGE_DIGITS,
        limit=limit,
    )


def _aged(age: float) -> str:
    return f"{age:g} days from the day asked for" if age else "of the day asked for"


def age_notes(orbits: Orbits, start_s: float) -> tuple[str, ...]:
    """What should be known of the orbits: age, leap seconds that differ, other systems, torn lines."""
    age = age_days(orbits, start_s)
    notes = list(orbits.notes)
    if age and orbits.kind != KIND:
        good = (
            f"{orbits.good_for_s / 3600:g} hours"
            if orbits.good_for_s < DAY_S
            else f"{orbits.good_for_s / DAY_S:g} days"
        )
        notes.append(
            f"The orbits are up to {age:g} days from the day asked for; they are meant for {good}. "
            "Azimuth and elevation may be off, the figures of the day hardly."
        )
    known = leap_s(unix_of(start_s))
    if orbits.leap_s is not None and orbits.leap_s != known:
        notes.append(f"{orbits.file} says {orbits.leap_s} leap seconds; {known} were taken, which hold on that day.")
    if orbits.others:
        told = ", ".join(f"{count} of {name}" for name, count in sorted(orbits.others.items()))
        notes.append(f"Sets of other systems were passed over: {told}. The prediction is for GPS alone.")
    notes += [f"Passed over: {each}" for each in orbits.skipped]
    if orbits.skipped_count > len(orbits.skipped):
        notes.append(f"{orbits.skipped_count} places in {orbits.file} were passed over in all.")
    return tuple(notes)


def _span(orbits: Orbits) -> str:
    first, last = (_day(pick(each.toe_s for each in orbits.sets)) for pick in (min, max))
    return first if first == last else f"{first} to {last}"


def _day(gps_s: float) -> str:
    return datetime.fromtimestamp(unix_of(gps_s), UTC).date().isoformat()
