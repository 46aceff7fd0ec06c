"""How a door of the engine answers: as JSON text, in the language and the voice in which it was asked.

``"language": "es"`` and ``"voice": "phone"`` beside what else is asked put the answer's sentences into other words.
Ids, figures, names and verdicts stay. What a job lacks stays too, as a page writes it into a sheet again: beside it
stands `said`, the same in other words.
"""

from __future__ import annotations

import json
from collections.abc import Callable, Mapping
from dataclasses import replace
from typing import TypeAlias

from backprobe.errors import BackprobeError, JobError, error_json
from backprobe.findings import Finding
from backprobe.formats.parts import Parts, parts_in
from backprobe.tongues.picture import picture_said
from backprobe.tongues.speaker import Say, plain, speaker

Answer: TypeAlias = dict[str, object]

SENTENCES = frozenset(
    {
        *("what", "because", "next", "basis", "why", "error", "caption", "alt", "means", "look_at", "do", "counted"),
        *("reasons", "open", "notes", "figures", "not_proven", "fails", "hindered"),
    }
)
PICTURES = frozenset({"svg", "bars"})
WRITTEN_AGAIN = frozenset({"lacks"})
FOR_THE_JOURNAL = frozenset({"rows", "more", "entry"})


def told(asked: str, what: str, *, answer_to: Callable[[Parts], Answer]) -> str:
    """What a door answers to JSON text; `what` names in an error what was asked, and errors look as everywhere."""
    say: Say = plain
    try:
        parts = parts_in(asked, what, refusal=JobError)
        say = speaker_of(parts)
        answer = answer_to(parts)
    except BackprobeError as error:
        answer = error_json(error)
    return json.dumps(answer if say is plain else in_words(answer, say), ensure_ascii=False, sort_keys=True)


def in_words(answer: Mapping[str, object], say: Say) -> Answer:
    """An answer with its sentences and pictures as `say` has them.

    >>> in_words({"id": "a", "why": "b", "lacks": [{"what": "c"}]}, str.upper)
    {'id': 'a', 'why': 'B', 'lacks': [{'what': 'c', 'said': 'C'}]}
    """
    said = {name: _said(name, value, say=say) for name, value in answer.items()}
    return said if "findings" not in answer else {**said, "next": _next(answer, say)}


def _said(name: str, value: object, *, say: Say) -> object:
    if name in FOR_THE_JOURNAL:
        return value
    if name in WRITTEN_AGAIN and isinstance(value, list):
        return [{**each, "said": say(each["what"])} for each in value]
    if isinstance(value, str):
        return say(value) if name in SENTENCES else picture_said(value, say) if name in PICTURES else value
    if isinstance(value, list):
        return [_said(name, each, say=say) for each in value]
    if isinstance(value, Mapping):
        return {key: picture_said(each, say) for key, each in value.items()} if name == "bars" else in_words(value, say)
    return value


def _next(answer: Mapping[str, object], say: Say) -> str | None:
    """The one next thing, beginning as that of its finding does: by that a page knows to which stage it belongs."""
    upcoming, findings = answer.get("next"), answer["findings"]
    if not isinstance(upcoming, str) or not isinstance(findings, list):
        return None
    own = next((each["next"] for each in findings if each["next"] and upcoming.startswith(each["next"])), "")
    return f"{say(own)}{say(upcoming.removeprefix(own))}"


def speaker_of(parts: Parts) -> Say:
    """What says the answer's sentences as it was asked."""
    return speaker(parts.maybe("language"), voice=parts.maybe("voice"))


def finding_said(finding: Finding, say: Say) -> Finding:
    """A finding with its sentences as `say` has them, for a picture that breaks them into lines."""
    if say is plain:
        return finding
    limit = finding.limit and replace(finding.limit, basis=say(finding.limit.basis))
    then = finding.next and say(finding.next)
    return replace(finding, what=say(finding.what), because=say(finding.because), next=then, limit=limit)
