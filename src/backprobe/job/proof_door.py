"""The engine's door for the proof under way: what to do with the key next, what the unit says, what its lights mean.

In: a journal as for `backprobe.job.journal_door`. Out: ``{"ok": true, "plan": [{"t", "key", "hold_s", "do"}, …],
"heard": {…}|null, "lights": [{"light", "colour", "pattern", "means", "seen", "after_s", "as_stated"}, …]}``; the plan
as `backprobe prove --plan --json` prints it for this unit and vehicle, `heard` as `backprobe.stages.prove.heard` has
it, null while there are no reports on this device.
"""

from __future__ import annotations

from dataclasses import replace

from backprobe.evidence.keys import Key
from backprobe.formats.parts import Parts
from backprobe.job.journal_door import JOURNAL, asked_in, evidence_of
from backprobe.job.judge import JobEvidence
from backprobe.job.told import told
from backprobe.stages.prove.heard import heard_of
from backprobe.stages.prove.lights import lights_of
from backprobe.stages.prove.plan import plan_of
from backprobe.stages.prove.setup import ProveSetup, setup_from


def proof_text(asked: str) -> str:
    """The proof under way as JSON text; errors come back in the same shape as everywhere.

    >>> print(proof_text("{}"))
    {"code": "job", "error": "entries: a list of texts is expected", "ok": false}
    """
    return told(asked, JOURNAL, answer_to=_answer)


def _answer(parts: Parts) -> dict[str, object]:
    evidence = evidence_of(asked_in(parts))
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
