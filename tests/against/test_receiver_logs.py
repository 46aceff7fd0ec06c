"""Real receivers' logs, and what they are known to show.

Figures beside each check were counted in the files by other means (grep, and the notes of those who gave them); logs
and licences: shared/data/README.md.
"""

from pathlib import Path

import pytest

from backprobe.cases.reception import judged_file
from backprobe.findings import Verdict
from backprobe.stages.mount.reception.answer import ReceptionAnswer

LOGS = Path(__file__).resolve().parents[3] / "shared" / "data" / "nmea"
pytestmark = pytest.mark.skipif(not LOGS.is_dir(), reason="no real receiver logs beside the repository")


def answer(name: str) -> ReceptionAnswer:
    """The answer to one log."""
    return judged_file(LOGS / name)


def verdicts(found: ReceptionAnswer) -> dict[str, Verdict]:
    """The verdicts by finding."""
    return {finding.id: finding.verdict for finding in found.findings}


def test_a_module_that_finds_itself_after_37_s() -> None:
    """telit: 224 moments once a second, 37 without a position and without a time, then 187 in a row."""
    found = answer("telit-he910.log")
    said = found.as_json()
    assert (said["epochs"], found.log.fixes, said["first_fix_s"]) == (224, 187, 37.0)
    assert said["fix_share"] == round(187 / 224, 4)
    assert said["skipped"] == {}
    assert verdicts(found)["reception_first_fix"] is Verdict.HOLDS
    assert said["scatter_m"] is not None


def test_three_hours_in_a_city() -> None:
    """urban-3h: 54 wrong checksums; 10,868 RMC, 69 of them written twice; 326 void; HDOP 0.69 to 7.67."""
    found = answer("urban-3h.nmea")
    said = found.as_json()
    assert said["sentences"] == 22_800
    assert found.log.skipped["bad_checksum"] == 54
    assert said["epochs"] == 10_868 - 69
    assert found.log.epochs - found.log.fixes == 326
    assert (min(found.log.hdop_hundredths), max(found.log.hdop_hundredths)) == (69, 770)  # 7.67: from 5 on in tenths
    assert said["blocked"] == []
    assert str(found.log.places[0]).startswith("urban-3h.nmea, line 199: $GPGSV")


def test_a_weak_sky() -> None:
    """ublox-8: 72 bursts; most signals at 20 to 30 dB-Hz; GPS and GLONASS, 12 and more used; the last breaks off."""
    found = answer("ublox-8.log")
    said = found.as_json()
    assert said["epochs"] == 72
    assert said["fix_share"] == 1.0
    assert found.log.skipped["cut_off"] == 1
    assert 12 <= said["used"]["median"] <= 14  # type: ignore[index]
    assert verdicts(found)["reception_cn0"] is Verdict.FAILS
    assert said["blocked"] == []  # GLONASS is heard 8 dB worse than GPS in all directions: no side


def test_a_receiver_that_is_put_into_a_computer_case() -> None:
    """garmin-10x: 14 moments, 9 with a position, never above 28 dB-Hz; a gap while it was carried."""
    found = answer("garmin-10x.log")
    said = found.as_json()
    assert (said["epochs"], found.log.fixes) == (14, 9)
    assert said["cn0_top4_dBHz"] is not None
    assert said["cn0_top4_dBHz"] < 28  # type: ignore[operator]
    assert found.verdict is Verdict.FAILS
    assert found.log.odd == {"gap": 1}


def test_a_start_in_the_open() -> None:
    """haicom: from 09:52:55.81 void, valid from 09:53:04.80 on: 9 s; satellites still sought are no blocked sky."""
    found = answer("haicom-305N.log")
    said = found.as_json()
    assert (said["epochs"], found.log.fixes, said["first_fix_s"]) == (74, 68, 9.0)
    assert said["blocked"] == []


def test_many_systems_and_a_side_that_is_blocked() -> None:
    """quectel: 30 moments, 20 to 22 used of three systems; 42 to 49 dB-Hz in the south, 20 to 28 in the north."""
    found = answer("quectelLC79D.log")
    said = found.as_json()
    assert said["epochs"] == 30
    assert 20 <= said["used"]["median"] <= 22  # type: ignore[index]
    (blocked,) = found.sectors
    north = {bin_.satellite for bin_ in found.log.bins if (bin_.az_deg - blocked.from_deg) % 360 < 225}
    assert {"G05", "R08", "R24", "R07"} <= north
    assert blocked.strength > 0.99


def test_sentences_in_comment_lines() -> None:
    """car-drive: all 450 sentences stand behind a '#'; 226 moments in 223 s, all with a position, partly under way."""
    found = answer("car-drive.log")
    said = found.as_json()
    assert (said["sentences"], said["epochs"], said["fix_share"]) == (450, 226, 1.0)
    assert found.log.duration_ms == pytest.approx(223_000, abs=1000)
    assert verdicts(found)["reception_blocked"] is Verdict.OPEN
