"""A parked vehicle from files."""

import pytest
from tests.samples.jobs import demo_job
from tests.samples.parked import SHEET

from backprobe.cases.judge import judge_folder
from backprobe.cases.parked import parked_case
from backprobe.errors import JobError
from backprobe.findings import Verdict


def sheet_in(folder, text=SHEET):
    """The demo's job folder, its sheet with more in it."""
    path = folder / "job.toml"
    path.write_text(path.read_text(encoding="utf-8") + text, encoding="utf-8")
    return path


def test_sheets_that_stand_beside_one_another(tmp_path):
    """The unit's sheet is found as the job sheet names it."""
    case = parked_case(sheet_in(demo_job(tmp_path, "truck-12")))
    assert (case.unit.name, case.system_V, case.sheet.wanted_days) == ("Lantern 2", 12, 5.0)


def test_a_sheet_without_the_tables_is_refused(tmp_path):
    """With what is expected."""
    with pytest.raises(JobError, match=r"a table \[battery\] and a table \[parked\] are expected"):
        parked_case(demo_job(tmp_path, "truck-12") / "job.toml")


def test_a_vehicle_without_a_crank_is_refused(tmp_path):
    """There is no start to fail."""
    path = sheet_in(demo_job(tmp_path, "truck-12"))
    path.write_text(path.read_text(encoding="utf-8").replace("[vehicle]", "[vehicle]\nhas_crank = false", 1), "utf-8")
    with pytest.raises(JobError, match="no longer cranks"):
        parked_case(path)


def test_the_same_findings_are_among_those_of_the_job(tmp_path):
    """With the tables three findings more or less; without them none, and the demo stands as it did."""
    folder = demo_job(tmp_path, "truck-12")
    before = judge_folder(folder).judged.findings
    assert not any(finding.id.startswith("parked") for finding in before)
    sheet_in(folder)
    found = {finding.id: finding.verdict for finding in judge_folder(folder).judged.findings}
    assert {name: found[name] for name in found if name.startswith("parked")} == {
        "parked_asleep": Verdict.HOLDS,
        "parked_days": Verdict.HOLDS,
    }
    assert len(found) > 2
