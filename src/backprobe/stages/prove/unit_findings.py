"""What the reports say of the unit beside the key: patterns, position, first fix, lights, supply, the parked night."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from backprobe.findings import Finding, Limit, Side, Stage, Standing, Verdict
from backprobe.stages.prove.lights import LightOutcome
from backprobe.stages.prove.parked import NIGHT_H, hours_text
from backprobe.stages.prove.patterns import INCOMPLETE, WORDS, Pattern, PatternId, look_at
from backprobe.stages.prove.position import DOUBTFUL, Position
from backprobe.stages.prove.proof import Proof
from backprobe.stages.prove.supply import OHM_DIGITS, Supply

NIGHT = Limit(
    "prove_parked_night", NIGHT_H, "h", Side.AT_LEAST, "one parked night covered by reports", Standing.COMMON_PRACTICE
)
SUPPLY_CHANGE = "prove_supply"
PLACE = "write where the vehicle stands into the job sheet: [place] lat, lon and accuracy_m"
OVERNIGHT = "leave the vehicle parked overnight, then fetch the reports again"


def patterns(proof: Proof) -> tuple[Finding, ...]:
    """Each pattern that is named, or one finding that says that none is."""
    if proof.patterns:
        return tuple(_pattern(each) for each in proof.patterns)
    heard = any(outcome.edge for outcome in proof.turns)
    said = f"none of the {len(PatternId)} patterns that a fault leaves in reports is there"
    return (
        Finding(
            id="prove_patterns",
            stage=Stage.PROVE,
            what="Patterns of a fault",
            verdict=Verdict.HOLDS if heard else Verdict.OPEN,
            because=said if heard else "no turn of the key was reported: there is nothing to look for them in",
            next=None if heard else "see first that the unit reports the key",
        ),
    )


def _pattern(pattern: Pattern) -> Finding:
    words = WORDS[pattern.id]
    other = "" if pattern.other_unit is None else f" The unit that fits: {pattern.other_unit}."
    return Finding(
        id=f"prove_{pattern.id}",
        stage=Stage.PROVE,
        what=f"Pattern: {str(pattern.id).replace('_', ' ')}",
        verdict=Verdict.OPEN if pattern.id in INCOMPLETE else Verdict.FAILS,
        because=f"{words.means}{other}",
        next=look_at(words.look_at),
    )


def position(proof: Proof) -> Finding:
    """How far the unit takes itself to be from the vehicle, by what both accuracies allow."""
    found = proof.position
    lost, where = not found.fixes, _where(found)
    finding = Finding(
        id="prove_position" if lost or found.distance_m is not None else "prove_place",
        stage=Stage.PROVE,
        what="Where the unit takes itself to be",
        verdict=found.verdict,
        because="no report since power-up has a position" if lost else f"where the vehicle stands is not known{where}",
        next="wait until the unit reports a position, under open sky" if lost else PLACE,
        unit="m",
        digits=1,
    )
    if found.distance_m is None or found.u_m is None:
        return finding
    by = f"from where the vehicle stands, by {found.fixes} fixes; joint accuracy of both {found.u_m:.1f} m"
    basis = f"{DOUBTFUL:g} times the joint accuracy of {found.u_m:.1f} m: beyond it lie 3 of 100,000 fixes"
    return replace(
        finding,
        because=by + where,
        next=None if found.verdict is Verdict.HOLDS else "look at the antenna and its view of the sky; fetch again",
        value=found.distance_m,
        low=max(0.0, found.distance_m - found.u_m),
        high=found.distance_m + found.u_m,
        limit=Limit("prove_position", DOUBTFUL * found.u_m, "m", Side.AT_MOST, basis, Standing.MODEL),
    )


def _where(found: Position) -> str:
    """Where the unit reports itself, in words, with what is owed to the map; nothing without an index of corners."""
    if found.where is None:
        return ""
    whose = "" if found.where.near is None else f" ({found.where.attribution})"
    return f"; reported from: {found.where.text}{whose}"


def first_fix(proof: Proof) -> tuple[Finding, ...]:
    """How long the unit took to find where it is; nothing where power-up or fix was not seen."""
    if proof.first_fix_s is None:
        return ()
    return (
        Finding(
            id="prove_first_fix",
            stage=Stage.PROVE,
            what="Time to the first position",
            verdict=Verdict.HOLDS,
            because="from power-up to the first report with a position",
            value=proof.first_fix_s,
            low=proof.first_fix_s,
            high=proof.first_fix_s,
            unit="s",
            digits=1,
        ),
    )


def lights(outcomes: Sequence[LightOutcome]) -> tuple[Finding, ...]:
    """What the lights showed against what the unit's sheet says; nothing where nobody wrote it down."""
    if not any(light.seen for light in outcomes):
        return ()
    odd = [light for light in outcomes if light.seen is None or light.as_stated is False]
    then = f"look at {' and '.join(light.light for light in odd)} again, and at what the unit's sheet says of it"
    return (
        Finding(
            id="prove_lights",
            stage=Stage.PROVE,
            what="The unit's lights",
            verdict=Verdict.OPEN if odd else Verdict.HOLDS,
            because="; ".join(light_text(light) for light in outcomes),
            next=then if odd else None,
        ),
    )


def light_text(light: LightOutcome) -> str:
    """What one light showed, after how long, and what that means."""
    if light.seen is None:
        return f"{light.light}: not looked at"
    after = "" if light.seen.after_s is None else f" after {light.seen.after_s:g} s"
    shown = f"{light.light}: {light.seen.pattern}{after}"
    if light.as_stated is False:
        return f"{shown}; the sheet knows {light.pattern}"
    return f"{shown} ({light.means})" if light.means and light.as_stated else shown


def supply_change(proof: Proof) -> tuple[Finding, ...]:
    """What the change from idle to transmitting says of joint and lead; nothing where it was not measured."""
    supply = proof.supply
    if supply.change_V is None or supply.u_V is None:
        return ()
    level = "" if supply.level_V is None else f"; the level of {supply.level_V:.2f} V is mostly the unit's own"
    finding = Finding(
        id=SUPPLY_CHANGE,
        stage=Stage.PROVE,
        what="The supply when the unit transmits",
        verdict=supply.verdict,
        because=f"it falls by {supply.change_V:.3f} V ± {2 * supply.u_V:.3f} V: joint, fuse, lead and ground{level}",
    )
    if supply.loop_ohm is None or supply.limit is None:
        return (replace(finding, next="write the unit's currents, idle_mA and transmit_mA, into its sheet"),)
    return (_loop(finding, supply, limit=supply.limit, ohm=supply.loop_ohm),)


def _loop(finding: Finding, supply: Supply, *, limit: Limit, ohm: float) -> Finding:
    """The finding with the resistance that the change comes to, against the drop that is allowed at 1 A."""
    then = "look at the supply's tap, fuse, joints and ground: the voltage falls too far when the unit transmits"
    return replace(
        finding,
        next=None if finding.verdict is Verdict.HOLDS else then,
        value=ohm,
        low=max(0.0, ohm - supply.spread_ohm),
        high=ohm + supply.spread_ohm,
        unit="Ω",
        digits=OHM_DIGITS,
        limit=replace(limit, unit="Ω", basis=f"{limit.basis}, taken at 1 A"),
    )


def parked_night(proof: Proof) -> Finding:
    """For how long 'constant' and 'ignition off' are proven; fully once reports cover one parked night."""
    parked = proof.parked
    hours = min(parked.constant_h, parked.ignition_off_h)
    lost = f"; the supply was lost {hours_text(parked.ignition_off_h)} after the final off" if parked.lost else ""
    for_h = f"'constant' is proven for {hours_text(parked.constant_h)}"
    verdict = Verdict.FAILS if parked.lost else Verdict.HOLDS if parked.night else Verdict.OPEN
    look = "find out what takes the supply away while the vehicle is parked: a switch, a timer, a loose joint"
    return Finding(
        id="prove_parked",
        stage=Stage.PROVE,
        what="Reports over a parked night",
        verdict=verdict,
        because=f"{for_h}, 'ignition off' for {hours_text(parked.ignition_off_h)}{lost}",
        next=None if verdict is Verdict.HOLDS else look if parked.lost else OVERNIGHT,
        value=hours,
        low=hours,
        high=hours,
        unit="h",
        digits=1,
        limit=NIGHT,
    )
