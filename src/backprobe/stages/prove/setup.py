"""What is known of unit and vehicle before script and reports are compared, and how late a healthy unit may be."""

from __future__ import annotations

from dataclasses import dataclass
from statistics import median

from backprobe.evidence.corner import CornerIndex
from backprobe.evidence.job_sheet import JobSheet
from backprobe.evidence.unit_sheet import UnitSheet
from backprobe.evidence.vehicle_place import VehiclePlace

# common practice, no source: what fits most units where no sheet says more
USUAL_ON_S = 2.0
USUAL_OFF_S = 10.0
ON_LIMIT_S = 15.0
OFF_LIMIT_S = 60.0  # a healthy unit reports off 3 to 60 s late
OVER_DEBOUNCE_S = 10.0  # and no later than this after the debounce that its sheet states
USUAL_INTERVAL_S = 60.0
PLACE_ACCURACY_M = 15.0  # a truck's length, and a phone's fix of it


@dataclass(frozen=True, slots=True, kw_only=True)
class ProveSetup:
    """The job's unit as the reports name it (None: the file's only one), its sheet, and the vehicle.

    `unit_serial` is the unit's name where the reports are not known to use another. `corners` names the place that the
    unit reports; None where there is no index.
    """

    unit_id: str | None = None
    unit_serial: str | None = None
    sheet: UnitSheet | None = None
    place: VehiclePlace | None = None
    has_crank: bool = True
    has_accessory: bool = True
    corners: CornerIndex | None = None


def setup_from(
    job: JobSheet | None, sheet: UnitSheet | None, *, unit_id: str | None = None, place: VehiclePlace | None = None
) -> ProveSetup:
    """The setup by a job sheet and the unit's sheet; what was said beside them goes before what is written.

    >>> setup_from(None, None, unit_id="0417").unit_id
    '0417'
    """
    if job is None:
        return ProveSetup(unit_id=unit_id, sheet=sheet, place=place)
    return ProveSetup(
        unit_id=unit_id or job.unit_id,
        unit_serial=job.unit_serial,
        sheet=sheet,
        place=place or job.place,
        has_crank=job.vehicle.has_crank,
        has_accessory=job.vehicle.has_accessory,
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class Timing:
    """How long a unit takes to report a turn of the key [s].

    `usual_…` is its debounce, from the sheet or common practice; beyond `…_limit_s` it is not healthy. `interval_s`
    is the time between its reports. `from_sheet` says whether the sheet states the off debounce.
    """

    usual_on_s: float = USUAL_ON_S
    usual_off_s: float = USUAL_OFF_S
    on_limit_s: float = ON_LIMIT_S
    off_limit_s: float = OFF_LIMIT_S
    interval_s: float = USUAL_INTERVAL_S
    from_sheet: bool = False

    @property
    def hold_s(self) -> float:
        """How long a state must last so that a unit that reports by interval alone shows it twice."""
        return max(self.usual_on_s, self.usual_off_s) + 2 * self.interval_s


def timing_of(sheet: UnitSheet | None, gaps_s: tuple[float, ...] = ()) -> Timing:
    """The timing that a sheet states; what it leaves out is usual, the interval the median of the `gaps_s` seen.

    >>> timing_of(None).off_limit_s
    60.0
    """
    on_s = off_s = interval_s = None
    if sheet is not None:
        on_s, off_s = sheet.reporting.debounce_on_s, sheet.reporting.debounce_off_s
        interval_s = sheet.reporting.interval_s or sheet.reporting.stopped_interval_s
        if on_s is None and sheet.ignition is not None:
            on_s = sheet.ignition.debounce_s
    seen_s = median(gaps_s) if gaps_s else USUAL_INTERVAL_S
    return Timing(
        usual_on_s=USUAL_ON_S if on_s is None else on_s,
        usual_off_s=USUAL_OFF_S if off_s is None else off_s,
        on_limit_s=ON_LIMIT_S if on_s is None else on_s + OVER_DEBOUNCE_S,
        off_limit_s=OFF_LIMIT_S if off_s is None else off_s + OVER_DEBOUNCE_S,
        interval_s=interval_s or seen_s,
        from_sheet=off_s is not None,
    )
