"""The key's cycle as a finding, in words and with the figures that belong to it."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import UTC, datetime

from backprobe.findings import Finding, Stage, Verdict
from backprobe.stages.bus.caution import minded
from backprobe.stages.bus.heard import Heard
from backprobe.stages.bus.key_cycle import Crank, KeyOff
from backprobe.stages.probe.recording.engine_speed import TURNS_RPM

LOG_A_CYCLE = "begin the log with the key off, then on, crank, ten seconds of running, off, ten seconds more"
LOG_READY = "begin the log with the key off, then on, READY for ten seconds, off, ten seconds more"
TOGETHER_S = 0.1


def key_finding(heard: Heard, *, has_crank: bool = True) -> Finding:
    """What the bus shows of the key: `holds` where a turn was seen, `open` where none was."""
    said = list(_said(heard))
    turned = heard.key.ons_s or heard.key.cranks or heard.key.offs
    return Finding(
        id="bus_key",
        stage=Stage.PROBE,
        what="key cycle seen from inside",
        verdict=Verdict.HOLDS if turned else Verdict.OPEN,
        because="; ".join(said),
        next=None if turned else minded(LOG_A_CYCLE if has_crank else LOG_READY),
    )


def _said(heard: Heard) -> Iterator[str]:
    key, volts = heard.key, heard.volts
    if key.on_at_start:
        yield "the engine ran when the log began" if key.runs_at_start else "the key was on when the log began"
    for on_s in key.ons_s:
        first = volts is not None and volts.first_s >= on_s and on_s == key.ons_s[0]
        yield f"key on at {on_s:.1f} s" + (f" with {volts.first_V:.2f} V" if volts and first else "")
    for crank in key.cranks:
        yield _crank(crank)
    for off in key.offs:
        at = f"at {off.off_s:.1f} s"
        early = off.off_s - off.silent_s > 0.1
        yield (
            f"off {at}, when the engine stood; the first computers fell silent at {off.silent_s:.1f} s"
            if early
            else (f"off {at}, when computers fell silent together")
        )
    if not heard.times_known:
        yield "the file's clock stands still: times are estimates from the row numbers"
    if heard.rpm_max is None:
        yield "no computer reports an engine speed"
    elif not (key.ons_s or key.cranks or key.offs):
        ran = f"engine speed up to {heard.rpm_max:.0f} rpm" if heard.rpm_max >= TURNS_RPM else "the engine stood"
        yield f"no turn of the key in {heard.length_s:.0f} s; {ran}"


def _off(off: KeyOff) -> str:
    if off.off_s - off.silent_s <= TOGETHER_S:
        return f"off at {off.off_s:.1f} s, when computers fell silent together"
    return f"off at {off.off_s:.1f} s, when the engine stood; the first computers fell silent at {off.silent_s:.1f} s"


def _crank(crank: Crank) -> str:
    begun = f"crank at {crank.start_s:.1f} s"
    length_s = crank.end_s - crank.start_s
    if crank.started is None:
        return f"{begun}; the log breaks off in it"
    if crank.started:
        return f"{begun}, running {length_s:.1f} s later"
    return f"{begun} for {length_s:.1f} s; the engine did not start"


def distance_finding(heard: Heard) -> Finding | None:
    """How far the vehicle says it has come; None where it does not say."""
    if heard.distance is None:
        return None
    spn, km = heard.distance
    return Finding(
        id="bus_distance",
        stage=Stage.WALKROUND,
        what="distance that the vehicle has come, as it says",
        verdict=Verdict.HOLDS,
        because=f"SPN {spn} says {km:.1f} km; the dash may show another computer's figure",
        value=km,
        unit="km",
        digits=1,
    )


def clock_finding(heard: Heard) -> Finding | None:
    """The vehicle's own clock, against the logger's where that knew the time; None where it was not sent."""
    if heard.clock is None:
        return None
    said_s, at_s = heard.clock
    said = datetime.fromtimestamp(said_s, tz=UTC).strftime("%Y-%m-%d %H:%M:%S")
    ahead_s = None if heard.stamped_s is None else round(said_s - heard.stamped_s - at_s, 1)
    against = (
        "" if ahead_s is None else f", {abs(ahead_s):.1f} s {'ahead of' if ahead_s >= 0 else 'behind'} the logger's"
    )
    return Finding(
        id="bus_clock",
        stage=Stage.WALKROUND,
        what="the vehicle's clock",
        verdict=Verdict.HOLDS,
        because=f"it said {said} UTC at {at_s:.1f} s{against}; nobody says that either is right",
        value=ahead_s,
        unit="s",
        digits=1,
    )
