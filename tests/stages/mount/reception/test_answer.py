"""The answer to a log in the shape that was promised."""

import json

from tests.samples.receptions import OPEN_SKY, reception, sky_bins

from backprobe.errors import Place, Skipped
from backprobe.evidence.reception import Rest
from backprobe.findings import Verdict
from backprobe.formats.nmea_0183 import ODD_WORDS
from backprobe.formats.nmea_clock import Odd
from backprobe.formats.nmea_sentence import EXPECTED, Fault
from backprobe.stages.mount.reception.answer import answer_of, notes_of

BLOCKED = sky_bins({az: cn0 - 16 if 90 <= az < 180 else cn0 for az, cn0 in OPEN_SKY.items()})


def test_the_shape() -> None:
    """Every key, with figures rounded."""
    answer = answer_of(reception()).as_json()
    assert list(answer) == [
        *("ok", "sentences", "skipped", "epochs", "fix_share", "first_fix_s", "used", "hdop", "cn0_top4_dBHz"),
        *("scatter_m", "blocked", "verdict", "findings", "notes"),
    ]
    assert answer["fix_share"] == 0.9917  # 1190 / 1200
    assert answer["first_fix_s"] == 10.0
    assert answer["used"] == {"median": 9.0}
    assert answer["hdop"] == {"median": 0.9, "p95": 0.9}
    assert answer["cn0_top4_dBHz"] == 43.5
    assert answer["scatter_m"] == {"r50": 1.0, "r95": 2.1}
    assert answer["blocked"] == []
    assert answer["verdict"] == "holds"
    json.dumps(answer)


def test_nothing_is_null_or_empty_where_nothing_is() -> None:
    """Never a position, no signals."""
    log = reception(
        fixes=0,
        since_first=0,
        first_fix_ms=None,
        used={},
        hdop_hundredths={},
        rest=None,
        told=0,
        top4_tenths={},
        bins=(),
    )
    answer = answer_of(log).as_json()
    assert answer["first_fix_s"] is None
    assert answer["used"] == {"median": None}
    assert answer["hdop"] == {"median": None, "p95": None}
    assert answer["cn0_top4_dBHz"] is None
    assert answer["scatter_m"] is None
    assert answer["verdict"] == "fails"


def test_blocked_sectors_with_their_strength() -> None:
    """Bounds in whole degrees, strength below 1."""
    answer = answer_of(reception(bins=BLOCKED))
    blocked: dict[str, float] = answer.as_json()["blocked"][0]  # type: ignore[index]
    assert set(blocked) == {"from_deg", "to_deg", "strength"}
    assert 0.95 <= blocked["strength"] < 1
    assert answer.verdict is Verdict.THIN
    assert answer_of(reception(bins=BLOCKED, moving=600)).as_json()["blocked"] == []


def test_notes_say_what_is_missing_and_where() -> None:
    """Counts in words, the clock's oddities, and the first places."""
    wrong, jump = EXPECTED[Fault.BAD_CHECKSUM], ODD_WORDS[Odd.WEEK_ROLLOVER]
    places = [Skipped(Place("a.nmea", line, "$GP"), wrong) for line in (199, 1175)] + [
        Skipped(Place("a.nmea", 7), jump)
    ]
    log = reception(
        skipped={"bad_checksum": 54, "doubled": 91}, odd={"week_rollover": 1}, places=tuple(places), rest=None
    )
    notes = list(notes_of(log))
    assert (
        "54 with a wrong checksum (letters were lost, or one sentence runs into another), first in lines 199, 1175."
        in notes
    )
    assert "91 written twice by the logger." in notes
    assert "The receiver's date jumped by 1,024 weeks once, first in line 7." in notes
    assert "No minute of rest in it: no scatter." in notes
    held = reception(rest=Rest(600, 600, 10, 0, 0))
    assert "The receiver holds its position while it rests: no scatter shows." in list(notes_of(held))
