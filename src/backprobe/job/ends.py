"""How a job can end as it stands: what a page offers first."""

from __future__ import annotations

from collections.abc import Sequence

from backprobe.evidence.hand_over import End, HandOver, Lack
from backprobe.findings import Finding, Verdict
from backprobe.job.signing import without_own
from backprobe.stages.hand_over.ending import obstacles
from backprobe.stages.hand_over.lacks import MEANS, in_words, owed


def ends_json(findings: Sequence[Finding], hand_over: HandOver | None = None) -> dict[str, object]:
    """How the job can end, as plain JSON values.

    `can` is the best end that may be signed; `not_proven` says, a sentence each, what keeps it from being proven;
    `fails` what keeps it from being provisional too; `lacks` is what a provisional end has to name (`what`, and of the
    three lacks that have a name of their own what that `means`). `hindered` says what keeps it from ending as its
    sheet says (`hand_over`), null where the sheet says nothing.
    """
    judged = without_own(findings)
    not_proven = obstacles(HandOver(end=End.PROVEN), judged)
    fails = [in_words(each) for each in judged if each.verdict is Verdict.FAILS]
    lacks = [] if fails else [_lack(what) for what in owed(judged)]
    can = End.ABANDONED if fails else End.PROVISIONAL if lacks else End.PROVEN
    if not_proven and can is End.PROVEN:
        can = End.ABANDONED  # nothing was looked at: there is nothing that could be owed
    hindered = None if hand_over is None else list(obstacles(hand_over, judged))
    return {"can": str(can), "not_proven": list(not_proven), "fails": fails, "lacks": lacks, "hindered": hindered}


def _lack(what: str) -> dict[str, object]:
    named = {str(lack): meaning for lack, meaning in MEANS.items()}
    return {"what": str(what), "means": named.get(str(what)) if what in tuple(Lack) else None}
