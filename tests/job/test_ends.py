"""Which end a page offers first, and what a provisional end has to name."""

from __future__ import annotations

from backprobe.evidence.hand_over import End, HandOver
from backprobe.findings import Finding, Stage, Verdict
from backprobe.job.ends import ends_json


def finding(name: str, verdict: Verdict, *, stage: Stage = Stage.PROVE, what: str = "") -> Finding:
    """A finding with nothing more to it."""
    return Finding(id=name, stage=stage, what=what or name, verdict=verdict, because="it is so", next=None)


HOLDS = finding("prove_turns", Verdict.HOLDS)
NIGHT = finding("prove_parked", Verdict.OPEN, what="Reports over a parked night")


def test_where_all_holds_it_is_proven():
    """Nothing stands in the way, nothing is owed; what the end and the sign-off say of themselves does not count."""
    own = [finding("ending", Verdict.OPEN), finding("sign_off", Verdict.OPEN)]
    nothing = {"not_proven": [], "fails": [], "lacks": []}
    assert ends_json([HOLDS, *own]) == {"can": "proven", **nothing, "hindered": None}
    assert ends_json([HOLDS], HandOver(end=End.PROVEN)) == {"can": "proven", **nothing, "hindered": []}


def test_a_night_that_is_missing_has_its_own_name():
    """Provisional: the named lack with what it means, then other open findings by their own words, each once."""
    twice = [finding(name, Verdict.THIN, what="Joints", stage=Stage.JOIN) for name in ("a", "b")]
    said = ends_json([HOLDS, NIGHT, *twice], HandOver(end=End.PROVEN))
    assert said["hindered"] == said["not_proven"]
    assert said["can"] == "provisional"
    assert said["not_proven"] == ["Reports over a parked night: open: it is so", "Joints: thin", "Joints: thin"]
    assert said["lacks"] == [
        {"what": "parked night", "means": "the reports do not cover one night with the vehicle parked"},
        {"what": "Joints", "means": None},
    ]


def test_what_fails_can_only_be_put_right_or_abandoned():
    """Neither proven nor provisional; what fails is named, nothing is offered as owed."""
    said = ends_json([HOLDS, NIGHT, finding("ground", Verdict.FAILS, stage=Stage.JOIN, what="Ground")])
    assert (said["can"], said["fails"], said["lacks"]) == ("abandoned", ["Ground: fails"], [])


def test_a_job_without_any_proof_is_not_proven():
    """No finding of the stage prove: nothing shows that the unit works, and nothing is there that could be owed."""
    said = ends_json([finding("mount", Verdict.HOLDS, stage=Stage.MOUNT)])
    assert said["can"] == "abandoned"
    assert said["not_proven"] == [
        "nothing shows that the unit works in the vehicle: the job has no finding of the stage 'prove'"
    ]
