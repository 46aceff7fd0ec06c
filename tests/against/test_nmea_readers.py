"""Two independent readers find the same good sentences in real logs, and the same figures in them.

pynmeagps 1.1.8 (BSD 3-Clause) and pynmea2 1.19.0 (MIT), both from PyPI. Logs: shared/data/README.md.
"""

import io
from collections import Counter
from pathlib import Path

import pytest

from backprobe.formats.nmea_fields import in_view, said_of, used_in
from backprobe.formats.nmea_sentence import Sentence, sentences_in

LOGS = Path(__file__).resolve().parents[3] / "shared" / "data" / "nmea"
NAMES = (
    "car-drive.log",
    "garmin-10x.log",
    "haicom-305N.log",
    "quectelLC79D.log",
    "telit-he910.log",
    "ublox-8.log",
    "urban-3h.nmea",
)
pytestmark = pytest.mark.skipif(not LOGS.is_dir(), reason="no real receiver logs beside the repository")


def ours(name: str) -> list[tuple[str, Sentence]]:
    """Our good sentences of a log, each with its text from the address on."""
    text = (LOGS / name).read_bytes().decode("latin-1")
    found = ((line, item) for line in text.splitlines() for item in sentences_in(line) if isinstance(item, Sentence))
    return [(f"{item.talker}{item.kind},{','.join(item.fields)}", item) for _, item in found]


@pytest.mark.parametrize("name", NAMES)
def test_pynmeagps_agrees(name: str) -> None:
    """The same count of each kind.

    It does not know the talker QZ, and in the city's log it loses the one sentence behind another that broke off.
    """
    module = pytest.importorskip("pynmeagps", reason="pynmeagps is not installed")
    reader = module.NMEAReader(io.BytesIO((LOGS / name).read_bytes()), quitonerror=0, validate=1)
    theirs = Counter(parsed.identity for _, parsed in reader if parsed is not None)
    own = Counter(item.talker + item.kind for _, item in ours(name))
    lost = own - theirs
    assert theirs - own == Counter()
    assert lost == {"urban-3h.nmea": Counter(GPRMC=1), "quectelLC79D.log": Counter(QZGSV=37)}.get(name, Counter())


@pytest.mark.parametrize("name", NAMES)
def test_pynmea2_agrees_on_every_figure(name: str) -> None:
    """Each of our good sentences is good to it; position, date, count, HDOP, used and seen satellites are the same."""
    module = pytest.importorskip("pynmea2", reason="pynmea2 is not installed")
    compared = 0
    for text, item in ours(name):
        if item.talker == "P":
            continue
        theirs = module.parse("$" + text)
        if item.kind in {"RMC", "GGA"}:
            said = said_of(item)
            if said.place is not None:
                assert said.place == pytest.approx((theirs.latitude, theirs.longitude), abs=1e-9)
            assert item.kind != "GGA" or not theirs.num_sats or said.used == int(theirs.num_sats)
            assert item.kind != "RMC" or not theirs.datestamp or said.day == theirs.datestamp.toordinal()
            compared += 1
        elif item.kind == "GSA" and theirs.mode_fix_type in {"2", "3"}:
            named = [getattr(theirs, f"sv_id{n:02d}") for n in range(1, 13)]
            assert len(used_in(item)[0]) == len({one for one in named if one})
            assert used_in(item)[1] == float(theirs.hdop)
            compared += 1
        elif item.kind == "GSV":
            rows = [
                tuple(getattr(theirs, f"{field}_{n}") for field in ("sv_prn_num", "elevation_deg", "azimuth", "snr"))
                for n in range(1, 5)
            ]
            rows = rows[: (len(item.fields) - 3) // 4]  # it takes the signal behind them for one more satellite
            rows = [row for row in rows if row[0]]
            seen = [sample for sample, _ in in_view(item)]
            assert len(seen) == len(rows)
            heard = [float(row[3]) for row in rows if row[3] not in (None, "", "00")]
            assert [sample.cn0_dBHz for sample in seen if sample.cn0_dBHz is not None] == heard
            compared += 1
    assert compared > 20
