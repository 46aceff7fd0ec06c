"""Sentences of one moment come together."""

import pytest
from tests.samples.nmea import gga, gsv, rmc, sentence

from backprobe.evidence.epoch import Epoch, SatelliteSample
from backprobe.formats.nmea_clock import LogClock
from backprobe.formats.nmea_fields import MOMENTS, said_of
from backprobe.formats.nmea_moment import Moment
from backprobe.formats.nmea_sentence import Sentence, sentences_in


def moment_of(*lines: str) -> Epoch:
    """The moment that some sentences make."""
    moment = Moment()
    for line in lines:
        (found,) = sentences_in(line)
        assert isinstance(found, Sentence)
        if found.kind in MOMENTS:
            moment.add(said_of(found), found)
        else:
            moment.add_satellites(found)
    return moment.epoch(LogClock())


def test_a_fix_needs_everybodys_word() -> None:
    """RMC says yes, GGA says no: no fix."""
    assert moment_of(rmc("120000"), gga("120000")).fix is not None
    assert moment_of(rmc("120000"), gga("120000", quality=0)).fix is None


def test_used_beyond_the_cap() -> None:
    """GGA counts to 12 at most; where it says 12 and GSA names 14, there are 14. Where it says 8, there are 8."""
    names = [sentence(f"GNGSA,A,3,{','.join(row)},1.7,1.0,1.4") for row in (_named(1, 12), _named(65, 2))]
    full, less = moment_of(gga("120000", used=12), *names), moment_of(gga("120000", used=8), *names)
    assert full.fix is not None
    assert less.fix is not None
    assert (full.fix.used, less.fix.used) == (14, 8)


def _named(first: int, count: int) -> list[str]:
    """Twelve fields with the numbers of some satellites."""
    return [f"{first + n:02d}" if n < count else "" for n in range(12)]


def test_a_position_from_no_satellite_is_no_count() -> None:
    """GGA with a position and 00 satellites: those that GSA names, else nobody knows."""
    names = sentence(f"GPGSA,A,3,{','.join(_named(1, 5))},1.7,1.0,1.4")
    counted, unknown = moment_of(gga("120000", used=0), names), moment_of(gga("120000", used=0))
    assert counted.fix is not None
    assert unknown.fix is not None
    assert (counted.fix.used, unknown.fix.used) == (5, None)


def test_hdop_of_none_is_none() -> None:
    """99.99 is how receivers write that there is no HDOP."""
    found = moment_of(gga("120000", hdop="99.99"))
    assert found.fix is not None
    assert found.fix.hdop is None


def test_the_main_signal_stands() -> None:
    """L1 at 40 with its place, L5 at 46 without: 40 where it stood, in either order."""
    first, second = sentence("GPGSV,1,1,01,06,12,215,40,1"), sentence("GPGSV,1,1,01,06,,,46,8")
    for lines in ((first, second), (second, first)):
        assert moment_of(rmc("120000"), *lines).satellites == (SatelliteSample("G06", 215, 12, 40.0),)


def test_satellites_of_several_talkers() -> None:
    """GPS and GLONASS side by side."""
    lines = (*gsv([(5, 40, 100, 38)]), *gsv([(70, 30, 200, 33)], talker="GL"))
    assert [each.id for each in moment_of(rmc("120000"), *lines).satellites] == ["G05", "R06"]


def test_speed_of_either_sentence() -> None:
    """VTG where there is no RMC: 10 kn = 5.144 m/s."""
    found = moment_of(gga("120000"), sentence("GPVTG,0,T,,M,10.0,N,18.5,K,A"))
    assert found.fix is not None
    assert found.fix.speed_mps == pytest.approx(5.1444, abs=1e-3)
