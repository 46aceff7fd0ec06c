"""The engine's door for the proof under way: what to do with the key next, what the unit says, what its lights mean.

In: a journal as for `backprobe.job.journal_door`. Out: ``{"ok": true, "plan": [{"t", "key", "hold_s", "do"}, …],
"heard": {…}|null, "lights": [{"light", "colour", "pattern", "means", "seen", "after_s", "as_stated"}, …]}``; the plan
as `backprobe prove --plan --json` prints it for this unit and vehicle, `heard` as `backprobe.stages.prove.heard` has
it, null while there are no reports on this device.
"""

from __future__ import annotations

import json
from dataclasses import replace

from backprobe.errors import BackprobeError, error_json
from backprobe.evidence.keys import Key
from backprobe.job.journal_door import asked_in, evidence_of
from backprobe.job.judge import JobEvidence
from backprobe.stages.prove.heard import heard_of
from backprobe.stages.prove.lights import lights_of
from backprobe.stages.prove.plan import plan_of
from backprobe.stages.prove.setup import ProveSetup, setup_from


def proof_text(asked: str) -> str:
    """The proof under way as JSON text; errors come back in the same shape as everywhere.

    >>> json.loads(proof_text("{}"))["error"]
    'entries: a list of texts is expected'
    """
    try:
        answer = _answer(evidence_of(asked_in(asked)))
    except BackprobeError as error:
        answer = error_json(error)
    return json.dumps(answer, ensure_ascii=False, sort_keys=True)


def _answer(evidence: JobEvidence) -> dict[str, object]:
    setup, reports = _setup(evidence), evidence.proving.reports
    return {
        "ok": True,
        "plan": [step.as_json() for step in plan_of(setup)],
        "heard": None if reports is None else heard_of(reports, setup=setup).as_json(),
        "lights": _lights(evidence),
    }


def _setup(evidence: JobEvidence) -> ProveSetup:
    """The setup by the sheets, without the positions of the key that somebody found missing on this vehicle."""
    setup, absent = setup_from(evidence.sheet, evidence.unit), evidence.table.absent_keys
    return replace(
        setup,
        has_crank=setup.has_crank and Key.CRANK not in absent,
        has_accessory=setup.has_accessory and Key.ACCESSORY not in absent,
    )


def _lights(evidence: JobEvidence) -> list[dict[str, object]]:
    colours = {light.name: light.colour for light in evidence.unit.lights}
    return [
        {"colour": colours.get(one.light), **one.as_json()}
        for one in lights_of(evidence.unit.lights, evidence.proving.lights)
    ]
