"""What must be so before a job is signed off, and the entry that signs it: the same in a terminal and on a phone.

Nothing here signs: the entry comes out with an empty signature, and its bytes are what is to be signed.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from backprobe.errors import JobError
from backprobe.evidence.hand_over import End, HandOver
from backprobe.findings import Finding, worst
from backprobe.job.entry import Entry, digest
from backprobe.job.journal import Draft
from backprobe.job.kinds import SIGN_OFF
from backprobe.job.shown import findings_bytes, hand_over_bytes
from backprobe.job.sign_off import Judged, digests_text, unsigned_body
from backprobe.job.signed import FINDING
from backprobe.stages.hand_over.ending import ENDING, obstacles
from backprobe.stages.hand_over.lacks import owed_example

NO_END = """\
nothing says how this job ends; write it into job.toml, for example:
  [hand_over]
  end = "provisional"
  told_driver = "what the driver was told"
  [[hand_over.missing]]
  what = "one parked night"
  owed_by = "who"
  until = 2026-04-07"""

OFFER = (
    "settle it; or end the job as provisional, saying who owes what until when, in place of [hand_over] in job.toml:"
)
PUT_RIGHT = "put right what fails; or undo the work and end the job as abandoned"


@dataclass(frozen=True, slots=True, kw_only=True)
class Tools:
    """By what was judged, each as sha256: the engine's source (None where not at hand), all limits, the unit sheet."""

    engine: str | None
    limits: str
    unit_sheet: str


@dataclass(frozen=True, slots=True, kw_only=True)
class ToSign:
    """What is put a name to: the findings that were `shown` and the hand-over, as they are kept, and their digests."""

    end: HandOver
    shown: tuple[Finding, ...]
    judged: Judged
    findings: bytes
    hand_over: bytes


def without_own(findings: Iterable[Finding]) -> tuple[Finding, ...]:
    """The findings that an end rests on: all but those on the end itself and on the sign-off."""
    return tuple(each for each in findings if each.id not in (FINDING, ENDING))


def to_sign(hand_over: HandOver | None, findings: Sequence[Finding], *, tools: Tools) -> ToSign:
    """What a sign-off is made over, but for the entries; of the findings all but the one on the sign-off itself.

    Raises JobError where nothing says how the job ends, or where it cannot end so, with how it can.
    """
    if hand_over is None:
        raise JobError(NO_END)
    rested_on = without_own(findings)
    hindered = obstacles(hand_over, rested_on)
    if hindered:
        raise JobError(refusal(hand_over, hindered, findings=rested_on))
    shown = tuple(each for each in findings if each.id != FINDING)
    kept, ended = findings_bytes(shown), hand_over_bytes(hand_over)
    judged = Judged(
        end=str(hand_over.end),
        verdict=str(worst(each.verdict for each in shown)),
        findings=digest(kept),
        hand_over=digest(ended),
        engine=tools.engine,
        limits=tools.limits,
        unit_sheet=tools.unit_sheet,
    )
    return ToSign(end=hand_over, shown=shown, judged=judged, findings=kept, hand_over=ended)


def refusal(hand_over: HandOver, hindered: Sequence[str], *, findings: Sequence[Finding]) -> str:
    """Why a job cannot be signed as its sheet says, and how it can: as provisional, where nothing fails."""
    reasons = [f"this job cannot be signed as {hand_over.end}:", *(f"  {reason}" for reason in hindered)]
    if hand_over.end is not End.PROVEN:
        return "\n".join(reasons)
    example = owed_example(findings)
    if not example:
        return "\n".join([*reasons, PUT_RIGHT])
    return "\n".join([*reasons, OFFER, *(f"  {line}" for line in example)])


def drafted(
    stood: Sequence[Entry], what: ToSign, *, key: str, entry_id: str, at: str | None, by: str | None
) -> tuple[Draft, dict[str, bytes]]:
    """The sign-off over the entries that `stood`, in this order, its signature empty; and the files it was made over.

    `key` is the public key in hex, `by` the entry of the person who signs.
    """
    listed = digests_text(stood)
    blobs = {digest(content): content for content in (what.findings, what.hand_over, listed)}
    body = unsigned_body(stood, what.judged, key=key)
    return Draft(id=entry_id, kind=SIGN_OFF, body=body, blobs=tuple(blobs), at=at, by=by), blobs
