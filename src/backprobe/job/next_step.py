"""What may be asked for next, and what to mind when it is done.

Nobody is asked to crank an engine that nobody has allowed to be cranked. The sentences that ask for a crank are told by
their words, because they come from several stages.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace

from backprobe.evidence.keys import Key
from backprobe.evidence.reading import ReadingsTable
from backprobe.evidence.walkround import Walkround
from backprobe.findings import Finding, Verdict
from backprobe.stages.probe.answer import Answer, answer_table
from backprobe.stages.probe.findings import CARE, POSITION
from backprobe.stages.probe.setup import Setup
from backprobe.stages.probe.slots import SlotName
from backprobe.stages.probe.wires import Wire
from backprobe.stages.walkround.cautions import BEFORE_CRANK, before_isolating

ASKING = (POSITION[Key.CRANK], "through a crank", "in the crank", "in a crank", "record a start", "record the start")
SCRIPT = ("key through the script", "key through a script")  # a script holds a crank where there is a starter
NOT_ALLOWED = "no crank has been allowed: ask somebody who may allow it, and write who under [authority] (crank_by)"


def crank_withheld(walked: Walkround | None, *, has_crank: bool) -> bool:
    """Whether a crank must not be asked for: there was a walkround, and it names nobody who allowed one."""
    return has_crank and walked is not None and not walked.authority.may_crank


def asks_for_crank(sentence: str) -> bool:
    """Whether a sentence about what to do next asks for a crank, where the vehicle has a starter.

    >>> asks_for_crank("measure Red while the engine cranks, with a MIN hold"), asks_for_crank("measure Red at key on")
    (True, False)
    """
    return any(words in sentence for words in (*ASKING, *SCRIPT))


def answer_without_crank(table: ReadingsTable, setup: Setup) -> Answer:
    """The answer to a readings table whose next reading is never one in the crank; slots demand the crank as ever.

    Where each slot is proven or has a wire that lacks the crank alone, no other reading leads further: there is none.
    """
    answer = answer_table(table, replace(setup, absent_keys=setup.absent_keys | {Key.CRANK}))
    result = answer.result
    chosen = {SlotName.SUPPLY: result.supply, SlotName.IGNITION: result.ignition}
    if all(chosen[slot] or _done_but_for_crank(result.wires, slot, setup=setup) for slot in SlotName):
        return replace(answer, result=replace(result, next=None))
    return answer


def _done_but_for_crank(wires: Iterable[Wire], slot: SlotName, *, setup: Setup) -> bool:
    return any(_lacks_only_crank(wire, slot, to_come=setup.to_come_for(wire.name)) for wire in wires)


def _lacks_only_crank(wire: Wire, slot: SlotName, *, to_come: frozenset[Key]) -> bool:
    fit = wire.fits[slot]
    fails = any(check.verdict is Verdict.FAILS for check in fit.checks)
    return set(fit.missing()) - to_come == {Key.CRANK} and not (fails or wire.bans or wire.belief.doubtful)


def without_crank(finding: Finding) -> Finding:
    """The finding, asking for the authority to crank where it asks for a crank."""
    if finding.next is None or not asks_for_crank(finding.next):
        return finding
    head, _, rest = finding.next.partition("; ")
    kept = f"{head}; " if rest and not asks_for_crank(head) else ""
    return replace(finding, next=kept + NOT_ALLOWED)


def with_care(sentence: str, walked: Walkround | None, *, has_crank: bool = True) -> str:
    """What to do next, with what to mind at a step where somebody can be hurt; `has_crank`: there is a starter.

    >>> with_care("measure Red with the battery switch open", None).partition("; ")[2][:60]
    "open the battery switch only after the maker's after-run tim"
    """
    if has_crank and asks_for_crank(sentence):
        return sentence.replace(f" ({CARE[Key.CRANK]})", "") + f"; before the crank: {BEFORE_CRANK}"
    if POSITION[Key.ISOLATED] in sentence:
        return f"{sentence}; {before_isolating(None if walked is None else walked.hazards.after_run_min)}"
    return sentence
