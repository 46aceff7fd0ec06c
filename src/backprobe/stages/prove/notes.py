"""What must be said beside a proof, in sentences."""

from __future__ import annotations

from collections.abc import Iterator

from backprobe.evidence.key_turn import KeyScript
from backprobe.evidence.report import ReportsTable
from backprobe.stages.prove.clock import GPS_AHEAD_S
from backprobe.stages.prove.parked import NIGHT_H, hours_text
from backprobe.stages.prove.patterns import PatternId
from backprobe.stages.prove.power_up import GAP_S
from backprobe.stages.prove.proof import Proof
from backprobe.stages.prove.setup import PLACE_ACCURACY_M, ProveSetup
from backprobe.stages.prove.supply import SAID

GPS_NEAR_S = 3.0
UNITS_SHOWN = 5


def notes_of(proof: Proof, *, script: KeyScript, table: ReportsTable, setup: ProveSetup) -> tuple[str, ...]:
    """Every note, in the order in which they matter to the reader."""
    return (
        *_input(script, table, unit_id=proof.unit_id),
        *_named(table, proof.unit_id, setup=setup),
        *_clock(proof),
        *_flips(proof),
        *_crank(proof),
        *_limits(proof),
        *_power(proof),
        *_place(proof, setup),
        *_long(proof),
    )


def beside_findings(proof: Proof, *, script: KeyScript, table: ReportsTable, setup: ProveSetup) -> tuple[str, ...]:
    """The notes on what no finding says: what was read how, whose reports they are, what is known of clock, power."""
    power = (note for note in _power(proof) if SAID not in note)
    others = set(_units(table, proof.unit_id))  # that a yard has more than one unit is nothing to be told at each job
    return (
        *(note for note in _input(script, table, unit_id=proof.unit_id) if note not in others),
        *_named(table, proof.unit_id, setup=setup),
        *_clock(proof),
        *_flips(proof),
        *power,
    )


def _input(script: KeyScript, table: ReportsTable, *, unit_id: str) -> Iterator[str]:
    """What was done with the files before anything was compared."""
    if script.zoneless:
        yield "Times of the script without a zone were taken as UTC."
    if table.zoneless:
        yield "Times of the reports without a zone were taken as UTC."
    if script.reordered:
        yield "The script's rows did not stand in the order of time; they were put in order."
    yield from (f"Passed over: {skipped}" for skipped in script.skipped)
    if table.skipped_rows:
        yield f"{table.skipped_rows} rows of reports could not be read, the first: {table.skipped[0]}."
    if table.bad_cells:
        yield f"{table.bad_cells} cells of reports could not be read and were left empty."
    yield from _units(table, unit_id)
    if not table.columns & {"ignition", "event"}:
        yield "The reports have neither an ignition nor an event column: nothing can be said of the key."


def _units(table: ReportsTable, unit_id: str) -> Iterator[str]:
    if len(table.units) > 1:
        names = sorted(name for name in table.units if name.casefold() != unit_id.casefold())
        shown = ", ".join(names[:UNITS_SHOWN]) + (", …" if len(names) > UNITS_SHOWN else "")
        yield f"The file holds {len(table.units)} units; beside {unit_id}: {shown}."


def _named(table: ReportsTable, unit_id: str, *, setup: ProveSetup) -> Iterator[str]:
    """On what ground a unit was taken for the job's."""
    if "unit_id" not in table.columns:
        yield "The reports have no unit_id: all were taken for the job's unit."
    elif setup.unit_id is None and unit_id.casefold() != (setup.unit_serial or "").strip().casefold():
        yield f"Nobody said how the reports name the job's unit: the file's only one, {unit_id}, was taken."


def _clock(proof: Proof) -> Iterator[str]:
    """What the delays mean, by what is known of the clock."""
    if proof.alignment is None:
        return
    shift = proof.alignment.best.shift
    if proof.clock_offset is None and (proof.on_delay or proof.off_delay):
        why = "the reports have no received_at" if not _has_arrivals(proof) else "no report arrived while it was fresh"
        yield f"As {why}, each delay is the sum of the unit's delay and its clock's offset."
        if proof.on_delay and abs(proof.on_delay.value_s - proof.timing.usual_on_s - GPS_AHEAD_S) <= GPS_NEAR_S:
            yield "An on-delay of about 18 s more than usual may be GPS time (gps_time): only received_at can tell."
    if proof.on_delay and proof.clock_offset and proof.on_delay.value_s < -2 * proof.on_delay.u_s:
        yield "The unit seems to report turns before they happen: the script's clock is behind the server's."
    if shift.both:
        yield "The server's own times are off by the same quarter hours as the unit's: the export is in a local zone."
    if proof.alignment.unset and not proof.names(PatternId.DATE_ROLLOVER):
        yield f"{proof.alignment.unset} reports bear a date from before the unit's clock was set."
    if proof.alignment.unplaced:
        yield f"{proof.alignment.unplaced} reports of a clock that was never set cannot be placed in time."


def _has_arrivals(proof: Proof) -> bool:
    return proof.alignment is not None and any(r.received_s is not None for _, r in proof.alignment.best.kept)


def _crank(proof: Proof) -> Iterator[str]:
    """What the absence of not_live_in_crank is worth."""
    cranks = [end - begin for begin, end in proof.script.cranks()]
    if not cranks or proof.alignment is None or proof.names(PatternId.NOT_LIVE_IN_CRANK):
        return
    longest_s = max(cranks)
    said = f"the longest crank was {longest_s:.1f} s"
    if proof.off_delay is None:
        yield f"That not_live_in_crank is not named proves nothing: the off-delay is not known, {said}."
    elif proof.off_delay.value_s + proof.off_delay.u_s >= longest_s:
        yield (
            f"That not_live_in_crank is not named proves nothing: off is reported only after "
            f"{proof.off_delay.value_s:.1f} s, {said}. Read the wire in a crank with the meter's MIN hold."
        )
    else:
        yield f"Off is reported after {proof.off_delay.value_s:.1f} s and {said}: an ignition lost in crank would show."


def _flips(proof: Proof) -> Iterator[str]:
    if proof.alignment is not None and proof.alignment.best.span.cut:
        more = proof.alignment.best.span.cut
        yield f"Of the unit's ignition events within the script, {more} more were only counted."
    if proof.alignment is not None and proof.alignment.best.silent:
        yield "No report of the unit is from the time of the script: is it the right day, and the right time zone?"


def _limits(proof: Proof) -> Iterator[str]:
    if not proof.timing.from_sheet:
        yield (
            f"No unit sheet states the off debounce: an off up to {proof.timing.off_limit_s:.0f} s late counts as "
            "healthy (common practice, no source)."
        )


def _power(proof: Proof) -> Iterator[str]:
    """Power-up, restarts and supply."""
    if proof.alignment is None:
        return
    power_up = proof.alignment.best.power_up
    if power_up.time_s is None:
        yield "No power-up shows before the first turn of the key: all of the unit's reports were taken for this job's."
    elif not power_up.by_event:
        yield f"The power-up is taken to be the end of the last silence of over {GAP_S / 3600:.0f} hours."
    if proof.supply.level_V is not None or proof.supply.change_V is not None:
        yield f"{SAID}."


def _place(proof: Proof, setup: ProveSetup) -> Iterator[str]:
    if setup.place is None:
        yield "Where the vehicle stands is not known: give it with --at LAT,LON or in job.toml."
    elif setup.place.accuracy_m is None:
        yield f"How well the vehicle's place is known was not said: {PLACE_ACCURACY_M:.0f} m was taken."
    if setup.place is not None and not proof.position.fixes and proof.alignment is not None:
        yield "No report since power-up has a position."


def _long(proof: Proof) -> Iterator[str]:
    """For how long supply and off are proven."""
    if proof.alignment is None:
        return
    parked = proof.parked
    if parked.night:
        yield f"'Constant' and 'ignition off' are proven over a parked night ({parked.ignition_off_h:.1f} h)."
    else:
        yield (
            f"'Constant' is proven for {hours_text(parked.constant_h)}, 'ignition off' for "
            f"{hours_text(parked.ignition_off_h)}; reports over one parked night ({NIGHT_H:.0f} h) prove them fully."
        )
