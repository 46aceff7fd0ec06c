"""Listening to one bus log."""

from __future__ import annotations

from pathlib import Path

import pytest
from tests.samples.bus_frames import aligned, key_cycle
from tests.samples.bus_heard import VIN, with_vin

from backprobe.cases import import_folder as importing
from backprobe.cases.bus import bus_file, listen_to, start_of
from backprobe.cases.import_folder import import_folder
from backprobe.cases.judge import judge_folder
from backprobe.errors import OptionError, UnreadableError
from backprobe.files.folder import open_folder
from backprobe.findings import Verdict

SHEET = """
[vehicle]
system_V = 12
vin = "{vin}"

[unit]
sheet = "unit.toml"
"""


@pytest.fixture
def log(tmp_path: Path) -> Path:
    """A whole key cycle with its VIN, as aligned text under the name of a log."""
    path = tmp_path / "truck.log"
    path.write_text("\n".join(aligned(with_vin(key_cycle()))) + "\n", encoding="utf-8")
    return path


def test_a_log_is_judged_by_itself(log: Path) -> None:
    """Without a job nothing is compared."""
    case = bus_file(log)
    assert case.answer.heard.vins[0].text == VIN
    assert case.answer.verdict is Verdict.THIN


def test_the_job_s_vin_is_taken_from_its_sheet(log: Path, tmp_path: Path) -> None:
    """Another vehicle's sheet fails; what was said beside it goes before."""
    sheet = tmp_path / "job.toml"
    sheet.write_text(SHEET.format(vin="1G4AH59H45G118341"), encoding="utf-8")
    assert bus_file(log, job=sheet).answer.verdict is Verdict.FAILS
    assert bus_file(log, job=sheet, vin=VIN).answer.verdict is Verdict.THIN


def test_engine_data_is_listened_to_as_well(tmp_path: Path) -> None:
    """A CSV with an engine speed, whatever its name."""
    path = tmp_path / "obd.log"
    rows = ["0,0,12.4", "0.5,0,12.4", "1,900,9.6", "1.5,850,13.9", "2,800,14.0", "2.5,800,14"]
    path.write_text("\n".join(["time_s,ENGINE_RPM (),CONTROL_MODULE_VOLTAGE ()", *rows]), encoding="utf-8")
    assert listen_to(path).heard.format == "obd-csv"


def test_a_recording_of_wires_is_no_bus_log(tmp_path: Path) -> None:
    """It has no engine speed: it is refused with the line that was found."""
    path = tmp_path / "wires.csv"
    path.write_text("time_s,red\n0,12.4\n1,12.4\n", encoding="utf-8")
    with pytest.raises(UnreadableError, match="time_s,red"):
        listen_to(path)


def test_the_start_is_a_moment() -> None:
    """A zone is read; what is no moment is refused with an example."""
    assert start_of("2026-03-31T08:05:00+02:00") == 1_774_937_100.0
    with pytest.raises(OptionError, match="--start noon"):
        start_of("noon")


def in_a_job(log: Path, *, vin: str = VIN, name: str = "truck.log") -> Path:
    """A job folder with the log in it."""
    folder = log.parent / "job"
    (folder / "bus").mkdir(parents=True)
    (folder / "job.toml").write_text(SHEET.format(vin=vin), encoding="utf-8")
    (folder / "unit.toml").write_text(UNIT, encoding="utf-8")
    (folder / "bus" / name).write_bytes(log.read_bytes())
    return folder


UNIT = """
name = "Lantern 2"
[supply]
least_V = 8.0
most_V = 32
[[lead]]
name = "power"
purpose = "supply"
[[lead]]
name = "ground"
purpose = "ground"
"""


def test_a_log_in_a_job_folder_stands_among_its_findings(log: Path) -> None:
    """Its VIN against the sheet's, and the key cycle; the file is kept by its digest, what it came to beside it."""
    folder = in_a_job(log, vin="1G4AH59H45G118341")
    assert [path.name for path in open_folder(folder).buses] == ["truck.log"]
    found = {finding.id: finding for finding in judge_folder(folder).judged.findings}
    assert found["bus_vin"].verdict is Verdict.FAILS
    assert found["bus_key"].what == "truck.log: key cycle seen from inside"


def test_a_log_that_the_journal_knows_is_not_listened_to_again(log: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Nothing is added the second time; a log that changed is heard anew and corrects what stood there."""
    folder = in_a_job(log)
    assert import_folder(folder).added["bus_log"] == 1
    with monkeypatch.context() as patch:
        patch.delattr(importing, "listen_to")
        assert import_folder(folder).added == {}
    (folder / "bus" / "truck.log").write_text("\n".join(aligned(key_cycle())) + "\n", encoding="utf-8")
    again = import_folder(folder)
    assert again.added == {"correction": 1}
    assert "bus_vin" not in {finding.id for finding in judge_folder(folder).judged.findings}


def test_a_file_in_bus_that_is_no_log_is_refused_and_nothing_is_written(log: Path) -> None:
    """As a recording that is none is."""
    folder = in_a_job(log)
    (folder / "bus" / "photo.log").write_bytes(b"\xff\xd8\xff\xe0" + bytes(200))
    with pytest.raises(UnreadableError, match="a photo"):
        import_folder(folder)
    assert not (folder / "journal.jsonl").exists() or not (folder / "journal.jsonl").read_bytes()
