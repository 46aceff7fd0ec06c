"""One matter judged: the worst of its doubts counts, and all of them are told."""

from __future__ import annotations

from backprobe.findings import Stage, Verdict
from backprobe.stages.walkround.doubts import Doubt, Matter, listed, not_said, wrong

KEY = Matter("key", "Key")


def test_without_a_doubt_it_holds():
    """What is well is told, and nothing is to be done."""
    found = KEY.finding([], well="with the driver")
    assert (found.verdict, found.because, found.next) == (Verdict.HOLDS, "with the driver", None)
    assert (found.id, found.what, found.stage) == ("key", "Key", Stage.WALKROUND)


def test_what_is_wrong_goes_before_what_is_not_said():
    """The first thing to do is about the worst; both are told in their order."""
    found = KEY.finding([not_said("a", "ask"), wrong("b", "stop")], well="")
    assert (found.verdict, found.because, found.next) == (Verdict.FAILS, "a; b", "stop")


def test_a_doubt_may_have_nothing_to_do():
    """Then the next of the same kind says what to do, and if none does, nothing is due."""
    nothing = Doubt(Verdict.OPEN, "refused", None)
    assert KEY.finding([nothing], well="").next is None
    assert KEY.finding([nothing, not_said("b", "ask")], well="").next == "ask"


def test_words_in_a_row():
    """None, one, two and three of them."""
    assert [listed(["a", "b", "c"][:count]) for count in range(4)] == ["", "a", "a and b", "a, b and c"]
    assert listed(["a", "b"], "or") == "a or b"
