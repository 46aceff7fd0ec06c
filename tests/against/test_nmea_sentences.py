"""Sentences of others, as they were published or received, hold by our checksum and say what they say.

Sources beside each; the last five are well known examples, from memory, whose checksums were reckoned by hand.
"""

import pytest

from backprobe.formats.nmea_fields import MOMENTS, in_view, said_of, speed_of, used_in
from backprobe.formats.nmea_sentence import Sentence, sentences_in

# NOAA R/V Ronald H. Brown, 14 January 2020: downloads.psl.noaa.gov …/ATOMIC_2020/…/gps02001420_raw.txt (public domain)
NOAA = (
    "$GPGGA,195959.00,1541.31258893,N,05130.51204125,W,2,06,1.5,9.2,M,-37.6,M,4.0,0138*7E",
    "$GPVTG,147.44,T,164.31,M,0.26,N,0.49,K,D*2C",
    "$GPRMC,195959.00,A,1541.31258893,N,05130.51204125,W,0.26,147.44,140120,16.9,W,D*0B",
    "$GPGSA,M,3,14,16,26,27,29,31,,,,,,,2.7,1.5,2.3*34",
    "$GPGSV,3,1,12,03,09,280,,04,11,322,,08,11,209,35,14,68,160,42*70",
    "$GPGSV,3,2,12,16,47,299,37,21,17,098,,22,12,259,,26,48,343,35*7A",
    "$GPGSV,3,3,12,27,42,200,47,29,11,037,38,31,47,038,44,32,37,155,42*74",
    "$GPZDA,195959.00,14,01,2020,00,00*6A",
)
OTHERS = (
    "$GNGGA,135627.00,3947.65338,N,10509.20216,W,2,12,0.67,1708.6,M,-21.5,M,,0000*4E",  # com-diag-hazer, its tests
    "$GPGGA,123519,4807.038,N,01131.000,E,1,08,0.9,545.4,M,46.9,M,,*47",  # from memory, as all that follow
    "$GPRMC,123519,A,4807.038,N,01131.000,E,022.4,084.4,230394,003.1,W*6A",
    "$GPGSA,A,3,04,05,,09,12,,,24,,,,,2.5,1.3,2.1*39",
    "$GPGSV,2,1,08,01,40,083,46,02,17,308,41,12,07,344,39,14,22,228,45*75",
    "$GPVTG,054.7,T,034.4,M,005.5,N,010.2,K*48",
)


def sentence(line: str) -> Sentence:
    """The one sentence of a line."""
    (found,) = sentences_in(line)
    assert isinstance(found, Sentence), line
    return found


@pytest.mark.parametrize("line", [*NOAA, *OTHERS])
def test_checksums_hold(line: str) -> None:
    """Each is good as it stands, and bad with any letter of its body dropped."""
    sentence(line)
    star = line.index("*")
    for index in range(7, star):
        if line[index] != line[index - 1]:
            assert not isinstance(sentences_in(line[:index] + line[index + 1 :])[0], Sentence)


def test_the_ship_was_where_all_sentences_say() -> None:
    """GGA and RMC give one place and one time; ZDA and RMC one date; GSA's six are among GSV's twelve, all heard."""
    gga, rmc, zda = (said_of(sentence(NOAA[index])) for index in (0, 2, 7))
    assert gga.place == rmc.place
    assert gga.place == pytest.approx((15 + 41.31258893 / 60, -(51 + 30.51204125 / 60)))
    assert gga.tod_s == rmc.tod_s == zda.tod_s == 71_999.0
    assert rmc.day == zda.day
    used, hdop = used_in(sentence(NOAA[3]))
    seen = {sample.id: sample for line in NOAA[4:7] for sample, _ in in_view(sentence(line))}
    assert len(seen) == 12
    assert all(seen[one].cn0_dBHz is not None for one in used)
    assert (len(used), hdop) == (gga.used, gga.hdop)
    assert sum(sample.cn0_dBHz is None for sample in seen.values()) == 4


def test_knots_and_kilometres_agree() -> None:
    """0.26 kn and 0.49 km/h in one sentence: 0.26 · 1.852 = 0.48."""
    found = sentence(NOAA[1])
    speed_mps = speed_of(found)
    assert speed_mps is not None
    assert speed_mps * 3.6 == pytest.approx(float(found.fields[6]), abs=0.01)


def test_all_kinds_are_read() -> None:
    """None of these is of a kind that is passed over unread."""
    assert all(sentence(line).kind in {*MOMENTS, "GSV", "GSA", "VTG"} for line in (*NOAA, *OTHERS))
