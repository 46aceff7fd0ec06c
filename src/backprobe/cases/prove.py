"""Prove one unit: a key script and a table of reports, with what a job sheet and a unit sheet say of them."""

from __future__ import annotations

from dataclasses import dataclass, replace
from pathlib import Path

from backprobe.errors import OptionError
from backprobe.evidence.job_sheet import JobSheet
from backprobe.evidence.report import ReportNames
from backprobe.evidence.supply_pair import SupplyPair
from backprobe.evidence.unit_sheet import UnitSheet
from backprobe.evidence.vehicle_place import VehiclePlace
from backprobe.files.corner_file import corners_in
from backprobe.files.open import small_text, text_lines
from backprobe.formats.figures import VOLT_UNITS, read_figure
from backprobe.formats.job_toml import read_job
from backprobe.formats.key_script_csv import read_key_script
from backprobe.formats.lights_csv import read_lights
from backprobe.formats.report_columns import names_from_option, names_from_toml
from backprobe.formats.reports_csv import read_reports
from backprobe.formats.unit_sheet import read_unit_sheet
from backprobe.limits.lookup import limit
from backprobe.stages.prove.prove import Answer, Seen, prove
from backprobe.stages.prove.setup import ProveSetup, setup_from

SUPPLY_LIMIT = "supply_loaded_drop"


@dataclass(frozen=True, slots=True, kw_only=True)
class Sheets:
    """The paths of the sheets, and what was said in their place."""

    job: Path | None = None
    unit: Path | None = None
    unit_id: str | None = None
    place: VehiclePlace | None = None
    has_crank: bool = True
    has_accessory: bool = True
    corners: Path | None = None


def setup_of(sheets: Sheets) -> tuple[ProveSetup, tuple[str, ...]]:
    """The setup by the sheets, and what should be known of them; what was said goes before what is written.

    A unit sheet that the job sheet names and that is not there is noted: the usual figures stand in for it.
    """
    job = None if sheets.job is None else read_job(small_text(sheets.job), sheets.job.name)
    unit, notes = _unit_sheet(sheets, job)
    setup = setup_from(job, unit, unit_id=sheets.unit_id, place=sheets.place)
    has_crank, has_accessory = setup.has_crank and sheets.has_crank, setup.has_accessory and sheets.has_accessory
    corners = None if sheets.corners is None else corners_in(sheets.corners)
    return replace(setup, has_crank=has_crank, has_accessory=has_accessory, corners=corners), notes


def _unit_sheet(sheets: Sheets, job: JobSheet | None) -> tuple[UnitSheet | None, tuple[str, ...]]:
    if sheets.unit is not None:
        return read_unit_sheet(small_text(sheets.unit), sheets.unit.name), ()
    if sheets.job is None or job is None:
        return None, ()
    path = sheets.job.parent / job.unit_sheet
    if path.is_file():
        return read_unit_sheet(small_text(path), path.name), ()
    return None, (f"{sheets.job.name} names {job.unit_sheet!r} as the unit's sheet; there is no such file.",)


def prove_files(script: Path, reports: Path, *, sheets: Sheets, names: str | None = None, seen: Seen) -> Answer:
    """The answer to two files. Raises InputError in the technician's words."""
    setup, notes = setup_of(sheets)
    rows = read_key_script(text_lines(script)(), file=script.name)
    table = read_reports(text_lines(reports)(), file=reports.name, names=names_of(names))
    answer = prove(rows, table, setup=setup, seen=seen)
    return replace(answer, notes=(*notes, *answer.notes))


def names_of(text: str | None) -> ReportNames:
    """A column map: none, as typed, or in a file that ends in .toml."""
    if text is None:
        return ReportNames()
    return names_from_toml(small_text(Path(text)), text) if text.endswith(".toml") else names_from_option(text)


def seen_of(lights: Path | None, *, idle: str | None, transmit: str | None) -> Seen:
    """What the technician saw: a table of lights, and the supply as it was shown, '12.41'. Raises OptionError."""
    rows, skipped = ((), ()) if lights is None else read_lights(text_lines(lights)(), file=lights.name)
    if (idle is None) != (transmit is None):
        raise OptionError("--idle-volts and --transmit-volts go together: the change between them is what tells")
    pair = None if idle is None or transmit is None else _pair(idle, transmit)
    return Seen(lights=rows, skipped=skipped, supply=pair, supply_limit=limit(SUPPLY_LIMIT, system_V=12))


def _pair(idle: str, transmit: str) -> SupplyPair:
    values = []
    for option, text in (("--idle-volts", idle), ("--transmit-volts", transmit)):
        figure = read_figure(text)
        shift = None if figure is None else VOLT_UNITS.get(figure.unit.lower() or "v")
        if figure is None or shift is None or not 0 < figure.value(shift) <= 60:
            raise OptionError(f"{option} {text}: volts are expected, 12.41")
        values.append((figure.value(shift), figure.count(shift)))
    (idle_V, count_V), (transmit_V, other_V) = values
    return SupplyPair(idle_V, transmit_V, max(count_V, other_V))
