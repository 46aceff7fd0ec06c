"""Findings on the places for a unit: does the place chosen see the sky."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from backprobe.evidence.mount_sheet import MountPlace, MountSheet
from backprobe.findings import Finding, Stage, Verdict
from backprobe.limits.materials import MATERIALS
from backprobe.stages.mount.predict import DayFigures, PlacePrediction, ranked
from backprobe.stages.mount.wanted import quality_words, share_limit

FINDING = "mount_sky"
PERCENT_DIGITS = 1
COATED = "coated_glass"
GPS_ALONE = "GPS alone is reckoned with; a unit that hears other systems too does better."


def place_finding(found: PlacePrediction, sheet: MountSheet, *, best: PlacePrediction | None = None) -> Finding:
    """Whether a place sees enough of the sky; `best` is the best of all places, where there are several."""
    return Finding(
        id=FINDING,
        stage=Stage.MOUNT,
        what=f"The sky from '{found.place.name}'",
        verdict=found.verdict,
        because=_because(found, sheet),
        next=_next(found, best),
        value=_percent(found.usual),
        low=_percent(found.hard),
        high=_percent(found.kind),
        unit="% of the day",
        digits=PERCENT_DIGITS,
        limit=share_limit(sheet),
    )


def findings_of(found: Sequence[PlacePrediction], sheet: MountSheet) -> tuple[Finding, ...]:
    """A finding for each place, the best place first."""
    order = ranked(found)
    best = order[0] if len(order) > 1 else None
    return tuple(place_finding(each, sheet, best=best) for each in order)


def not_chosen(sheet: MountSheet, best: PlacePrediction) -> Finding:
    """What a job says while nobody has said which of several places was taken."""
    return Finding(
        id=FINDING,
        stage=Stage.MOUNT,
        what="The sky from the unit's place",
        verdict=Verdict.OPEN,
        because=f"{sheet.file} names {len(sheet.places)} places and not which was taken; '{best.place.name}' sees most",
        next=f'write into {sheet.file} which place was taken: chosen = "{best.place.name}"',
    )


def _percent(found: DayFigures) -> float:
    return round(100 * found.share, PERCENT_DIGITS)


def _because(found: PlacePrediction, sheet: MountSheet) -> str:
    usual = found.usual
    heading = f"heading {found.heading_deg:g}°" if sheet.heading_deg is not None else _worst(found)
    half = "no fix for half the day" if usual.hdop_median is None else f"HDOP {usual.hdop_median:g} for half the day"
    least = f"{usual.least} satellite{'' if usual.least == 1 else 's'} at least"
    return (
        f"{heading}: {quality_words(sheet)} for {_percent(usual):g} % of 24 hours, {half}, "
        f"{least} and {usual.median} for half the day; in the way: {in_the_way(found)}{_supposed(found.place)}"
    )


def _supposed(place: MountPlace) -> str:
    """That a place was described and not measured."""
    return "" if place.supposed is None else f"; distances by choice, not measured: {place.supposed.basis}"


def _worst(found: PlacePrediction) -> str:
    return f"at the worst heading, {found.worst_heading_deg:g}°"


def in_the_way(found: PlacePrediction) -> str:
    """What the place's parts are made of, with the loss that is reckoned with for each."""
    names = materials_of(found.place)
    return ", ".join(f"{MATERIALS[name].id} {MATERIALS[name].value_dB:g} dB" for name in names) or "nothing"


def materials_of(place: MountPlace) -> tuple[str, ...]:
    """The materials around a place, each once."""
    names = [*place.cover, *(part.material for part in place.parts), place.elsewhere]
    return tuple(dict.fromkeys(name for name in names if name != "open"))


def loss_notes(sheet: MountSheet) -> tuple[str, ...]:
    """What each material of the sheet takes, with what that rests on; and that other systems than GPS come on top.

    Of a place that was described, also the figures that its choices stand for.
    """
    every = dict.fromkeys(name for place in sheet.places for name in materials_of(place))
    rows = (MATERIALS[name] for name in every)
    told = (f"{r.id}: {r.value_dB:g} dB, {r.least_dB:g} to {r.most_dB:g} dB; {r.basis.warrant}." for r in rows)
    return (*told, *_figures(sheet), GPS_ALONE)


def _figures(sheet: MountSheet) -> Iterator[str]:
    for place in sheet.places:
        if place.supposed is not None:
            yield f"'{place.name}': {'; '.join(place.supposed.figures)}. {place.supposed.basis}."


def _next(found: PlacePrediction, best: PlacePrediction | None) -> str | None:
    if found.verdict is Verdict.HOLDS:
        return None
    if best is not None and best.place.name != found.place.name and best.verdict is not Verdict.FAILS:
        return f"take '{best.place.name}' instead: {_percent(best.usual):g} % of the day"
    if found.verdict is Verdict.THIN:
        return "before anything is fixed, let the unit lie there powered for ten minutes and judge what it hears"
    if any(part.material == COATED for part in found.place.parts):
        return "look for a place behind glass without coating: many coated windscreens leave a patch free at the mirror"
    return "look for a place with glass or plastic above it instead of metal"
