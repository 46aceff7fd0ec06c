"""Whether a job can end as its sheet says: proven, provisional or abandoned."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from backprobe.evidence.hand_over import End, HandOver, Missing
from backprobe.findings import Finding, Stage, Verdict
from backprobe.stages.hand_over.lacks import MEANS, contradicted, in_words

ENDING = "ending"
DRIVER, MISSING = "the driver was told", "missing"
SHOWN = 5  # findings that are named; the rest is counted
NOTHING_TOUCHED = 'or "nothing had been touched"'


def obstacles(hand_over: HandOver, findings: Sequence[Finding]) -> tuple[str, ...]:
    """What keeps a job with these findings from ending as `hand_over` says, a sentence each; nothing where it can.

    * proven: everything holds, the findings on the unit's own reports among it, nothing is named as missing;
    * provisional: nothing fails, and for all that is missing it is said who owes it and until when; nothing is said to
      be missing that is there;
    * abandoned: it is said what was undone, what was restored and tested again, and why.
    """
    if hand_over.end is End.PROVEN:
        return tuple(_proven(hand_over, findings))
    if hand_over.end is End.PROVISIONAL:
        return (*_provisional(hand_over, findings), *contradicted(hand_over.missing, findings))
    return tuple(_abandoned(hand_over))


def _proven(hand_over: HandOver, findings: Sequence[Finding]) -> Iterator[str]:
    unsettled = [each for each in findings if each.verdict is not Verdict.HOLDS]
    yield from _named(sorted(unsettled, key=lambda each: each.stage is not Stage.PROVE))
    if not any(each.stage is Stage.PROVE for each in findings):
        yield "nothing shows that the unit works in the vehicle: the job has no finding of the stage 'prove'"
    if hand_over.missing:
        yield f"it is said to be proven, yet to lack: {hand_over.missing[0].what}"


def _provisional(hand_over: HandOver, findings: Sequence[Finding]) -> Iterator[str]:
    yield from _named([each for each in findings if each.verdict is Verdict.FAILS])
    if not hand_over.missing:
        yield "what is missing is not said: [[hand_over.missing]] with what, owed_by and until"
    for one in hand_over.missing:
        if one.owed_by is None:
            yield f"{one.what}: who owes it is not said (owed_by)"
        if one.until is None:
            yield f"{one.what}: until when is not said (until)"


def _abandoned(hand_over: HandOver) -> Iterator[str]:
    if hand_over.why is None:
        yield "why the job was abandoned is not said (why)"
    if not hand_over.undone:
        yield f"what was undone is not said (undone = what was taken out again, {NOTHING_TOUCHED})"
    if not hand_over.restored:
        yield f"what was restored is not said (restored = fuses put back, functions tested again, {NOTHING_TOUCHED})"
    if hand_over.missing:
        yield f"it is said to be abandoned, yet to lack: {hand_over.missing[0].what}"


def _named(findings: Sequence[Finding]) -> Iterator[str]:
    """The findings that stand in the way."""
    yield from (in_words(each) for each in findings[:SHOWN])
    if len(findings) > SHOWN:
        yield f"and {len(findings) - SHOWN} more findings that do not hold"


def ending_finding(hand_over: HandOver, findings: Sequence[Finding]) -> Finding:
    """The finding on the job's end: open where something stands in the way, and where the end is provisional.

    What a provisional job lacks is evidence that is missing, however well it is known who owes it.
    """
    hindered = obstacles(hand_over, findings)
    first_owed = next((f"{one.what}: {_owed(one)}" for one in hand_over.missing), None)
    return Finding(
        id=ENDING,
        stage=Stage.HAND_OVER,
        what=f"How the job ends: {hand_over.end}",
        verdict=Verdict.OPEN if hindered or hand_over.missing else Verdict.HOLDS,
        because="; ".join(hindered) if hindered else said(hand_over),
        next=_then(hand_over, findings) if hindered else first_owed,
    )


def _then(hand_over: HandOver, findings: Sequence[Finding]) -> str:
    """What to do where something stands in the way; what was owed and has come since closes itself but for the end."""
    come = tuple(contradicted(hand_over.missing, findings))
    if hand_over.end is not End.PROVISIONAL or set(obstacles(hand_over, findings)) != set(come):
        return _NEXT[hand_over.end]
    return ALL_CAME if len(come) == len(hand_over.missing) else SOME_CAME


ALL_CAME = "all that was owed is there: end the job as proven"
SOME_CAME = "take what is there by now out of what is missing"
_NEXT = {
    End.PROVEN: "settle what is named, or end the job as provisional",
    End.PROVISIONAL: "put right what fails, or undo the work and end the job as abandoned; complete [hand_over]",
    End.ABANDONED: "write into [hand_over] of the job sheet what is not said",
}


def said(hand_over: HandOver) -> str:
    """What is said of the end, in one line.

    >>> said(HandOver(end=End.ABANDONED, undone=("both taps",), restored=("fuse F12",), why="the owner said no"))
    'undone: both taps; restored: fuse F12; why: the owner said no'
    """
    parts = told(hand_over)
    lines = [f"{name}: {', '.join(items)}" for name, items in parts.items() if items and name != DRIVER]
    return "; ".join(lines) or "everything holds"


def told(hand_over: HandOver) -> dict[str, tuple[str, ...]]:
    """All that is said of the end, by what it is; empty where nothing is said."""
    return {
        MISSING: tuple(f"{missing_in_words(one)} ({_owed(one)})" for one in hand_over.missing),
        "undone": hand_over.undone,
        "restored": hand_over.restored,
        "why": (hand_over.why,) if hand_over.why else (),
        DRIVER: hand_over.told_driver,
    }


def missing_in_words(one: Missing) -> str:
    """What is missing; of the named lacks what that means."""
    return one.what if one.lack is None else f"{one.what}: {MEANS[one.lack]}"


def _owed(one: Missing) -> str:
    return f"owed by {one.owed_by or 'nobody'} until {one.until or 'no day'}"
