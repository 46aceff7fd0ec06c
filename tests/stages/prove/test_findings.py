"""All findings of the proof, and the one thing to do."""

from tests.samples.prove_cases import healthy, proven, row

from backprobe.findings import Stage, Verdict, worst
from backprobe.stages.prove.findings import prove_findings, unproven

ALWAYS = ["prove_patterns", "prove_on", "prove_off", "prove_crank", "prove_position"]


def ids(answer, has_crank=True):
    """The ids of an answer's findings in their order."""
    return [each.id for each in prove_findings(answer, has_crank=has_crank)]


def test_a_healthy_unit():
    """Every group, all of the stage prove; all holds but the night, which the reports do not cover."""
    answer = proven(healthy())
    found = prove_findings(answer, has_crank=True)
    assert [each.id for each in found] == [*ALWAYS, "prove_first_fix", "prove_parked"]
    assert {each.stage for each in found} == {Stage.PROVE}
    assert [each.id for each in found if each.verdict is not Verdict.HOLDS] == ["prove_parked"]


def test_a_vehicle_without_a_starter_has_no_crank():
    """Nothing is asked that cannot be done."""
    assert "prove_crank" not in ids(proven(healthy()), has_crank=False)


def test_the_most_urgent_asks_for_what_the_proof_asks_for():
    """A night that is owed; a turn that is missing goes before it."""
    night = {each.id: each for each in prove_findings(proven(healthy()), has_crank=True)}
    assert night["prove_parked"].next.startswith("leave the vehicle parked overnight and fetch the reports again")
    steps = [(0, "off"), (100, "on"), (200, "off"), (300, "on"), (800, "off")]
    lost = proven(healthy(), steps)
    (first, *_) = [each for each in prove_findings(lost, has_crank=False) if each.verdict is Verdict.FAILS]
    assert first.id == "prove_on"
    assert first.next.startswith("turn the key through the script again: 'on' at ")


def test_a_pattern_keeps_its_own_words():
    """Where to look is what its finding says to do."""
    rows = [*healthy(), row(506, "boot", 1)]
    first = prove_findings(proven(rows), has_crank=True)[0]
    assert (first.id, first.verdict) == ("prove_resets_in_crank", Verdict.FAILS)
    assert first.next.startswith("look at the supply's tap")


def test_the_findings_are_never_better_than_the_proof():
    """Of a healthy unit, of one that restarts, and of one without a position."""
    for rows in (healthy(), [*healthy(), row(506, "boot", 1)], healthy(place=",,")):
        answer = proven(rows)
        order = [Verdict.HOLDS, Verdict.THIN, Verdict.OPEN, Verdict.FAILS]
        said = worst(each.verdict for each in prove_findings(answer, has_crank=True))
        assert order.index(said) >= order.index(answer.proof.verdict)


def test_a_unit_of_which_nothing_is_proven():
    """Open, and two names: what is missing on site, and a unit that was not heard."""
    assert (unproven("no script").id, unproven("no script").verdict) == ("prove_missing", Verdict.OPEN)
    assert unproven("not heard", "fetch", heard=False).id == "prove_reports"
