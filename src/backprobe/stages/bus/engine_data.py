"""Engine data in rows, listened to as a bus log is. An adapter talks while the key is on: its turns are not seen."""

from __future__ import annotations

from backprobe.evidence.recording import Recording
from backprobe.formats.bus_faults import TORN_LINE
from backprobe.formats.obd_csv import engine_rows
from backprobe.stages.bus.engine import EngineTrack
from backprobe.stages.bus.envelope import EnvelopeTrack
from backprobe.stages.bus.heard import Heard
from backprobe.stages.bus.key_cycle import Crank, KeyCycle, cranked
from backprobe.stages.bus.listen import IMPLAUSIBLE, Listened, volts_heard
from backprobe.stages.bus.volts import VoltTrack

FORM = "obd-csv"


def listen_to_rows(recording: Recording) -> Listened:
    """What the rows come to; times count from the first row."""
    engine, volts = EngineTrack(), VoltTrack()
    volt_points, rpm_points = EnvelopeTrack(), EnvelopeTrack()
    cranks: list[Crank] = []
    for row in engine_rows(recording):
        time_s = row.time_s - recording.start_s
        if row.volts is not None:
            volts.take(time_s, row.volts, running=engine.state == "runs")
            volt_points.take(time_s, row.volts)
        if row.rpm is not None:
            engine.take(time_s, row.rpm)
            rpm_points.take(time_s, row.rpm)
            cranks += _cranked(engine, volts, known=len(cranks))
    engine.finish()
    cranks += _cranked(engine, volts, known=len(cranks))
    skipped = {TORN_LINE: recording.skipped_count, IMPLAUSIBLE: volts.implausible}
    heard = Heard(
        file=recording.name,
        format=FORM,
        frames=recording.rows,
        length_s=recording.end_s - recording.start_s,
        skipped={reason: count for reason, count in skipped.items() if count},
        places=tuple(str(each) for each in recording.skipped),
        times_known=recording.time_known,
        key=KeyCycle(
            on_at_start=True,
            cranks=tuple(cranks),
            stops_s=tuple(engine.stops_s),
            end_s=recording.end_s - recording.start_s,
            runs_at_start=engine.ran_at_start,
        ),
        volts=volts_heard(volts),
        rpm_max=engine.highest_rpm if engine.samples else None,
    )
    return Listened(heard=heard, volts=volt_points, rpm=rpm_points)


def _cranked(engine: EngineTrack, volts: VoltTrack, *, known: int) -> list[Crank]:
    """The turns of the starter that are new since `known`, with what the supply did in each."""
    return [cranked(attempt, volts) for attempt in engine.attempts[known:]]
