"""What a unit says at the moment: the newest of its reports, and from when its position, supply and ignition are."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from backprobe.evidence.report import Report, ReportsTable
from backprobe.stages.prove.setup import ProveSetup

DIGITS_V = 2


@dataclass(frozen=True, slots=True, kw_only=True)
class Heard:
    """How many reports of the unit there are, and how many of others; the rest of the unit's own alone.

    `last_s`, `fix_s` and `ignition_s` are the unit's stamps of its newest report, of the newest with a position and of
    the newest that says anything of the ignition, in seconds since 1970; `received_s` is the server's of the newest.
    """

    count: int
    others: int
    last_s: float | None = None
    received_s: float | None = None
    fix_s: float | None = None
    supply_V: float | None = None
    ignition: bool | None = None
    ignition_s: float | None = None

    def as_json(self) -> dict[str, object]:
        """The same as plain JSON values, moments to the second."""
        return {
            "count": self.count,
            "others": self.others,
            "last_s": _whole(self.last_s),
            "received_s": _whole(self.received_s),
            "fix_s": _whole(self.fix_s),
            "supply_V": None if self.supply_V is None else round(self.supply_V, DIGITS_V),
            "ignition": self.ignition,
            "ignition_s": _whole(self.ignition_s),
        }


def _whole(moment_s: float | None) -> int | None:
    return None if moment_s is None else round(moment_s)


def heard_of(table: ReportsTable, *, setup: ProveSetup) -> Heard:
    """What the job's unit says by these reports, whatever their order; by its id, else its serial, else the only unit.

    The unit's own stamps order them: what it buffered and sent late is not what it says now.
    """
    own = _own(table, setup)
    others = len(table.reports) - len(own)
    if not own:
        return Heard(count=0, others=others)
    ordered = sorted(own, key=lambda report: report.time_s)
    last = ordered[-1]
    fix = next((report for report in reversed(ordered) if report.fix is not None), None)
    supply = next((report for report in reversed(ordered) if report.supply_V is not None), None)
    told = next((report for report in reversed(ordered) if _ignition(report) is not None), None)
    return Heard(
        count=len(own),
        others=others,
        last_s=last.time_s,
        received_s=last.received_s,
        fix_s=None if fix is None else fix.time_s,
        supply_V=None if supply is None else supply.supply_V,
        ignition=None if told is None else _ignition(told),
        ignition_s=None if told is None else told.time_s,
    )


def _ignition(report: Report) -> bool | None:
    """What a report says of the ignition: its column, or the event that it was sent for."""
    return report.ignition_event if report.ignition is None else report.ignition


def _own(table: ReportsTable, setup: ProveSetup) -> Sequence[Report]:
    if "unit_id" not in table.columns:
        return table.reports
    for name in (setup.unit_id, setup.unit_serial):
        if name is not None and (found := table.of_unit(name)):
            return found
    is_only = len(table.units) == 1 and setup.unit_id is None
    return table.reports if is_only else ()
