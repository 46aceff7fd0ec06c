"""The proof of a job's unit: what is missing for it is said, and what it came to."""

from __future__ import annotations

from dataclasses import replace

import pytest
from tests.samples.jobs import PROOF, finding, parts
from tests.samples.prove_world import FAULTS, reports_text, script_text, world_of

from backprobe.findings import Stage, Verdict
from backprobe.formats.reports_csv import read_reports
from backprobe.job.door import evidence_of
from backprobe.job.judge import JobJudgement, judge_job
from backprobe.job.proving import together

SCRIPT = "key-script.csv"
REPORTS = "reports.csv"
ONLY_HEADER = "unit_id,t,received_at,ignition,event\n"


def judged(**changed: str | None) -> JobJudgement:
    """A good job with other files for the proof, None: it has no such file."""
    given = {
        SCRIPT: PROOF[SCRIPT],
        REPORTS: PROOF[REPORTS],
        **{name.replace("_csv", ".csv"): text for name, text in changed.items()},
    }
    return judge_job(evidence_of({**parts(), **given}))


def test_a_good_proof_holds():
    """Every finding of the stage, and nothing is left to do."""
    found = [each for each in judged().findings if each.stage is Stage.PROVE]
    assert {each.verdict for each in found} == {Verdict.HOLDS}
    assert len(found) >= 6
    assert judged().next is None


@pytest.mark.parametrize(
    ("files", "name", "because", "then"),
    [
        (
            {"script": None, "reports": None},
            "prove_missing",
            "there is no key-script.csv and no reports.csv",
            "prove --plan",
        ),
        ({"script": None}, "prove_missing", "there is no key-script.csv", "prove --plan"),
        ({"reports": None}, "prove_reports", "there is no reports.csv", "fetch the unit's reports"),
        ({"reports": ONLY_HEADER}, "prove_reports", "reports.csv holds no report", "fetch the unit's reports"),
        ({"script": "t,key\n"}, "prove_missing", "expected rows beneath the header", "prove --plan"),
        ({"script": "t,key\n2026-03-31T14:00:00Z,on\n"}, "prove_missing", "the key is turned off", "prove --plan"),
        ({"script": "t,key\n2026-03-31T14:00:00Z,off\n"}, "prove_missing", "the key is turned on", "prove --plan"),
        (
            {"reports": PROOF[REPORTS].replace("LN2-00417", "LN2-00555")},
            "prove_reports",
            "holds 2 units (",
            "write the unit's id",
        ),
    ],
)
def test_what_is_missing_is_said(files, name, because, then):
    """Open, what is missing, what to do; the other stages say what they said."""
    given = {f"{file}_csv" if file == "reports" else "key-script_csv": text for file, text in files.items()}
    job = judged(**given)
    found = finding(job, name)
    assert found.verdict is Verdict.OPEN
    assert because in found.because
    assert then in found.next
    assert job.verdict is Verdict.OPEN
    assert job.proof is None
    others = [each for each in job.findings if each.stage is not Stage.PROVE]
    assert others == [each for each in judged().findings if each.stage is not Stage.PROVE]


def test_reports_of_another_unit_alone():
    """They are named, and the job's unit too."""
    only = "\n".join(line for line in PROOF[REPORTS].splitlines() if "00417" not in line)
    sheet = str(parts()["job.toml"]).replace('serial = "LN2-00417"', 'serial = "LN2-00417"\nid = "LN2-00417"')
    job = judge_job(evidence_of({**parts(), "job.toml": sheet, REPORTS: only}))
    found = finding(job, "prove_reports")
    assert "reports of unit LN2-00417" in found.because
    assert "the file holds: LN2-00422" in found.because


@pytest.mark.parametrize("fault", FAULTS)
def test_a_fault_stands_among_the_findings(fault: str):
    """Each fault of the examination, in a job: its pattern, and the job is not proven."""
    world = world_of(fault, 7)
    sheet = str(parts()["job.toml"]).replace("lat = -33.10015\nlon = 151.20035", "lat = -33.1\nlon = 151.2")
    job = judge_job(
        evidence_of({**parts(), "job.toml": sheet, SCRIPT: script_text(world), REPORTS: reports_text(world)})
    )
    assert job.proof is not None
    named = [str(pattern.id) for pattern in job.proof.proof.patterns]
    assert {f"prove_{name}" for name in named} <= {each.id for each in job.findings}
    assert fault in named
    assert job.verdict is not Verdict.HOLDS


def test_lights_without_a_proof_are_judged_all_the_same():
    """Nobody has turned the key yet; what the lights showed stands there."""
    job = judge_job(evidence_of({**parts(), SCRIPT: None, "lights.csv": "light,pattern\nnetwork,steady\n"}))
    assert finding(job, "prove_lights").because == "network: steady"


def test_the_next_step_of_the_proof_is_that_of_the_job():
    """All else holds, and a pattern says where to look."""
    world = world_of("inverted", 7)
    sheet = str(parts()["job.toml"]).replace("lat = -33.10015\nlon = 151.20035", "lat = -33.1\nlon = 151.2")
    job = judge_job(
        evidence_of({**parts(), "job.toml": sheet, SCRIPT: script_text(world), REPORTS: reports_text(world)})
    )
    assert job.verdict is Verdict.FAILS
    assert (
        job.next
        == "look at the input's polarity in the unit's settings, and whether the lead sits on a switched ground"
    )


def test_two_tables_of_reports_count_as_one():
    """Halved by time, overlapping by ten rows: the same proof as the whole, the rows that stand twice counted."""
    head, *rows = PROOF[REPORTS].splitlines()
    tables = [read_reports([head, *part], file=REPORTS) for part in (rows[:60], rows[50:])]
    whole, both = read_reports([head, *rows], file=REPORTS), together(tables)
    assert both is not None
    assert (both.file, len(both.reports), both.columns) == (REPORTS, len(rows) + 10, whole.columns)
    answers = [
        judge_job(replace(evidence_of(parts()), proving=replace(evidence_of(parts()).proving, reports=table))).proof
        for table in (whole, both)
    ]
    one, two = (answer.as_json() for answer in answers if answer is not None)
    assert two["left_out"] == {**one["left_out"], "doubled": 10}
    assert {**two, "left_out": None} == {**one, "left_out": None}
    assert together([]) is None
    assert together([whole]) is whole
