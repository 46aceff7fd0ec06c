"""Who allowed the work, and who allowed the engine to be cranked."""

from __future__ import annotations

from collections.abc import Iterator

from backprobe.evidence.walkround import Authority
from backprobe.findings import Finding
from backprobe.stages.walkround.doubts import Doubt, Matter, not_said, wrong

WORK = Matter("authority", "Authority to work")
CRANK = Matter("authority_crank", "Authority to crank")
ASK_FOR_WORK = "touch nothing until somebody who may has allowed the work; write who under [authority] (work_by)"
ASK_FOR_CRANK = "ask somebody who may allow a crank, and write who under [authority] (crank_by)"


def authority(given: Authority, *, has_crank: bool, cranked: bool) -> tuple[Finding, ...]:
    """The findings on the authority to work and, for a vehicle that has a crank, to crank.

    `cranked` says whether the evidence holds a crank. That a crank was refused is no fault: it is open, with nothing
    to do about it, so that the next thing to do is a reading that can be taken without one.
    """
    work = WORK.finding(list(_work(given)), well=_well(given, has_crank=has_crank))
    if not has_crank or (given.may_crank and given.crank_by == given.work_by):
        return (work,)
    return (work, CRANK.finding(list(_crank(given, cranked=cranked)), well=f"cranking allowed by {given.crank_by}"))


def _well(given: Authority, *, has_crank: bool) -> str:
    both = has_crank and given.may_crank and given.crank_by == given.work_by
    return f"{'work and cranking' if both else 'work'} allowed by {given.work_by}"


def _work(given: Authority) -> Iterator[Doubt]:
    if given.may_work is False:
        yield wrong(_refused("the work", given.work_by), ASK_FOR_WORK)
    elif given.may_work is None:
        yield not_said("who allowed the work is not said", ASK_FOR_WORK)


def _crank(given: Authority, *, cranked: bool) -> Iterator[Doubt]:
    if given.may_crank is False and cranked:
        yield not_said("a crank was measured, yet it is said that nobody allowed one", ASK_FOR_CRANK)
    elif given.may_crank is False:
        refused = _refused("cranking", given.crank_by)
        yield not_said(f"{refused}: without a crank no supply and no ignition can be proven", None)
    elif given.may_crank is None:
        yield not_said("who allowed cranking is not said", ASK_FOR_CRANK)


def _refused(what: str, by: str | None) -> str:
    return f"{what} was refused by {by}" if by else f"nobody allowed {what}"
