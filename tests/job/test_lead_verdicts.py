"""What the findings on the wiring say of one lead."""

from __future__ import annotations

from backprobe.evidence.unit_sheet import Lead, Purpose
from backprobe.findings import Finding, Limit, Side, Stage, Standing, Verdict
from backprobe.job.lead_verdicts import standing_of_lead, verdict_of_lead

POWER = Lead(name="power", purpose=Purpose.SUPPLY)
DOOR = Lead(name="door", purpose=Purpose.INPUT)
LIMIT = Limit("ground_drop", 100.0, "mV", Side.AT_MOST, "a test", Standing.PUBLISHED)


def finding(name: str, verdict: Verdict, *, value: float | None = None, what: str = "The drop") -> Finding:
    """A finding of that id."""
    limit = None if value is None else LIMIT
    return Finding(
        id=name,
        stage=Stage.JOIN,
        what=what,
        verdict=verdict,
        because="it was seen",
        value=value,
        unit="mV",
        limit=limit,
    )


def test_a_lead_on_which_all_holds_is_not_marked():
    """Nor one that no finding is about."""
    assert verdict_of_lead([finding("join_power_made", Verdict.HOLDS)], POWER) is None
    assert verdict_of_lead([], POWER) is None


def test_the_worst_comes_first_with_its_figure():
    """Fails before open before thin; how many more there are of it."""
    findings = [
        finding("join_power_made", Verdict.THIN),
        finding("join_supply_wire", Verdict.OPEN),
        finding("join_path_budget", Verdict.FAILS, value=345.84),
        finding("join_supply_fuse", Verdict.FAILS, value=1.0),
    ]
    assert verdict_of_lead(findings, POWER) == (Verdict.FAILS, "The drop: 345.84 mV, at most 100 mV (and 1 more)")
    assert verdict_of_lead(findings[:2], POWER) == (Verdict.OPEN, "The drop: it was seen")


def test_a_finding_marks_its_own_lead_alone():
    """By the lead's name or by what it is for; what was not told of a whole matter marks none."""
    findings = [
        finding("join_supply_fuse", Verdict.FAILS),
        finding("join_supply_told", Verdict.OPEN),
        finding("supply_live", Verdict.FAILS),
    ]
    assert verdict_of_lead(findings, DOOR) is None
    assert verdict_of_lead(findings[1:], POWER) is None


def test_a_leads_name_is_not_said_twice():
    """It stands above the line already."""
    found = verdict_of_lead([finding("join_power_pull", Verdict.FAILS, value=50.0, what="'power': the pull")], POWER)
    assert found == (Verdict.FAILS, "the pull: 50 mV, at most 100 mV")


def test_a_lead_stands_by_the_worst_on_it():
    """Holds where all of them hold; open where there is none."""
    found = [finding("join_power_made", Verdict.HOLDS), finding("join_path_budget", Verdict.THIN)]
    assert standing_of_lead(found, POWER) is Verdict.THIN
    assert standing_of_lead(found[:1], POWER) is Verdict.HOLDS
    assert standing_of_lead(found, DOOR) is Verdict.OPEN
