"""Which place sees the sky: the places and the best of them, findings, and where satellites stand at a moment."""

from __future__ import annotations

from dataclasses import dataclass

from backprobe.evidence.mount_sheet import MountSheet
from backprobe.evidence.orbits import Orbits
from backprobe.findings import Finding, Verdict
from backprobe.physics.geodesy import az_el_deg
from backprobe.physics.orbit import Observer, nearest_set
from backprobe.stages.mount.findings import findings_of, loss_notes
from backprobe.stages.mount.nominal import KIND, nominal_orbits
from backprobe.stages.mount.orbit_age import age_finding, age_notes, refuse_too_old
from backprobe.stages.mount.predict import PlacePrediction, Site, predict, ranked, sky_of
from backprobe.stages.mount.question import Question
from backprobe.stages.mount.satellites import Satellites, left_out_notes, satellites_of

ANGLE_DIGITS = 4
FULL_TURN_DEG = 360.0


@dataclass(frozen=True, slots=True)
class Standing:
    """Where a satellite stands: azimuth from north over east, and elevation [degrees]."""

    id: str
    az_deg: float
    el_deg: float

    def as_json(self) -> dict[str, object]:
        """The satellite as plain JSON values."""
        return {"id": self.id, "az_deg": self.az_deg, "el_deg": self.el_deg}


@dataclass(frozen=True, slots=True, kw_only=True)
class SkyAnswer:
    """What was found: the places as the sheet names them; `satellites` is None where no moment was asked for."""

    sheet: MountSheet
    asked: Question
    orbits: Orbits
    places: tuple[PlacePrediction, ...]
    findings: tuple[Finding, ...]
    notes: tuple[str, ...]
    satellites: tuple[Standing, ...] | None = None

    @property
    def best(self) -> PlacePrediction:
        """The best of the places."""
        return ranked(self.places)[0]

    @property
    def verdict(self) -> Verdict:
        """That of the best place."""
        return self.best.verdict

    def as_json(self) -> dict[str, object]:
        """The whole answer as plain JSON values."""
        said: dict[str, object] = {
            "ok": True,
            "places": [each.as_json() for each in self.places],
            "best": self.best.place.name,
            "verdict": str(self.verdict),
            "orbits": self.orbits.kind,
            "findings": [each.as_json() for each in self.findings],
            "notes": list(self.notes),
        }
        if self.satellites is not None:
            said["satellites"] = [each.as_json() for each in self.satellites]
        return said


def sky_answer(sheet: MountSheet, asked: Question, *, orbits: Orbits | None = None) -> SkyAnswer:
    """The answer; `orbits` None for the nominal constellation. Raises OptionError where they are far too old."""
    used = nominal_orbits(asked.site.start_s) if orbits is None else orbits
    refuse_too_old(used, asked.site.start_s)
    satellites = satellites_of(used)
    places = predict(sheet, sky_of(satellites, asked.site))
    aged = age_finding(used, asked.site.start_s)
    return SkyAnswer(
        sheet=sheet,
        asked=asked,
        orbits=used,
        places=places,
        findings=(*findings_of(places, sheet), *(() if aged is None else (aged,))),
        notes=(
            *_notes(sheet, used),
            *age_notes(used, asked.site.start_s),
            *left_out_notes(satellites),
            *loss_notes(sheet),
        ),
        satellites=None if asked.moment_s is None else standing(satellites, asked.site, moment_s=asked.moment_s),
    )


def _notes(sheet: MountSheet, orbits: Orbits) -> list[str]:
    notes = []
    if orbits.kind == KIND:
        notes.append(
            f"The sky is that of the nominal constellation, 24 satellites ({orbits.file}): it tells how a day "
            "goes on the whole. Usually some 31 are up. For a given day or moment give a navigation file (--nav)."
        )
    closed = [place.name for place in sheet.places if place.elsewhere == "metal" and place.parts]
    if closed:
        names = ", ".join(f"'{name}'" for name in closed)
        notes.append(f"What is not described around {names} is taken as metal (elsewhere).")
    return notes


def standing(satellites: Satellites, site: Site, *, moment_s: float) -> tuple[Standing, ...]:
    """The satellites above the horizon at a moment, sorted by name."""
    observer = Observer(site.lat_deg, site.lon_deg)
    found = []
    for name, sets in satellites.sets.items():
        az, el = az_el_deg(observer.direction(nearest_set(sets, moment_s), moment_s))
        if el >= 0:
            found.append(Standing(name, round(az, ANGLE_DIGITS) % FULL_TURN_DEG, round(el, ANGLE_DIGITS)))
    return tuple(found)
