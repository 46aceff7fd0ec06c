"""A job's judgement as plain JSON values."""

from __future__ import annotations

from backprobe.errors import InputError
from backprobe.job.judge import HeardRecording, JobJudgement
from backprobe.stages.probe.slots import SlotName
from backprobe.stages.walkround.same_type import same_type


def judgement_json(judged: JobJudgement) -> dict[str, object]:
    """The judgement as plain JSON values; figures rounded to their declared digits."""
    vehicle = judged.evidence.sheet.vehicle
    probe = judged.probe.as_json()
    return {
        "ok": True,
        "verdict": str(judged.verdict),
        "next": judged.next,
        "next_stage": judged.next_stage and str(judged.next_stage),
        "vehicle": {
            "vin": vehicle.vin,
            "plate": vehicle.plate,
            "fleet_number": vehicle.fleet_number,
            "system_V": vehicle.system_V,
            "same_type": _type_of(vehicle.vin),
        },
        "unit": {"name": judged.evidence.unit.name, "serial": judged.evidence.sheet.unit_serial},
        "choice": {str(slot): judged.chosen(slot) for slot in SlotName},
        "findings": [finding.as_json() for finding in judged.findings],
        "wires": _wires_json(probe["wires"], judged),
        "next_reading": probe["next"],
        "skipped": probe["skipped"],
        "prove": None if judged.proof is None else judged.proof.as_json(),
        "recordings": [_recording_json(each) for each in judged.heard],
        "policy": None if judged.evidence.policy is None else judged.evidence.policy.file,
    }


def _type_of(vin: str | None) -> str | None:
    """What the VINs of this type of vehicle share; None without a well-formed one."""
    try:
        return None if vin is None else same_type(vin)
    except InputError:
        return None


def _wires_json(wires: object, judged: JobJudgement) -> list[dict[str, object]]:
    """The wires, each with the use that this job may make of it: by its volts alone no wire is tapped in a job."""
    chosen = {judged.chosen(slot): str(slot) for slot in SlotName}
    rows = wires if isinstance(wires, list) else []
    return [{**row, "tap": row["tap"] if row["tap"] == "never" else chosen.get(row["wire"], "no")} for row in rows]


def _recording_json(each: HeardRecording) -> dict[str, object]:
    """What one recording shows: its events, cranks, channels and notes."""
    answer = each.answer.as_json()
    kept = ("events", "time_known", "cranks", "channels", "notes", "skipped")
    return {"file": each.recording.name, **{name: answer[name] for name in kept if name in answer}}
