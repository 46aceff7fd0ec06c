"""The fields of the sentences that are read."""

from datetime import date

import pytest
from tests.samples.nmea import sentence

from backprobe.evidence.epoch import SatelliteSample
from backprobe.formats.nmea_fields import (
    FieldError,
    Said,
    day_of,
    degrees,
    in_view,
    number,
    said_of,
    speed_of,
    time_of_day_s,
    used_in,
)
from backprobe.formats.nmea_sentence import Sentence, sentences_in


def only(body: str) -> Sentence:
    """The sentence of a body."""
    (found,) = sentences_in(sentence(body))
    assert isinstance(found, Sentence)
    return found


def test_rmc_gives_time_date_place_and_speed() -> None:
    """12:35:19; 23 March 1994; 48° 07.038' N, 11° 31.000' E; 22.4 kn = 22.4 · 1852 / 3600 = 11.52 m/s."""
    said = said_of(only("GPRMC,123519,A,4807.038,N,01131.000,E,022.4,084.4,230394,003.1,W"))
    assert said.tod_s == 12 * 3600 + 35 * 60 + 19
    assert said.day == date(1994, 3, 23).toordinal()
    assert said.valid is True
    assert said.place == pytest.approx((48 + 7.038 / 60, 11 + 31 / 60))
    assert said.speed_mps == pytest.approx(11.5236, abs=1e-4)


def test_gga_counts_satellites() -> None:
    """Quality 1, eight satellites, HDOP 0.9; quality 6 is dead reckoning and no fix from satellites."""
    said = said_of(only("GPGGA,123519,4807.038,N,01131.000,E,1,08,0.9,545.4,M,46.9,M,,"))
    assert (said.valid, said.used, said.hdop) == (True, 8, 0.9)
    assert said_of(only("GPGGA,123519,4807.038,N,01131.000,E,6,08,0.9,545.4,M,46.9,M,,")).valid is False


def test_gns_and_gll_and_zda() -> None:
    """A mode for each system: one that is not N is enough; GLL by its A; ZDA has the whole date."""
    assert said_of(only("GNGNS,112257.00,3844.24,N,00908.43,W,NA,10,0.5,48.1,51.2,,")).valid is True
    assert said_of(only("GNGNS,112257.00,,,,,NN,00,99.99,,,,")).valid is False
    assert said_of(only("GPGLL,4807.038,N,01131.000,E,123519,A,A")).valid is True
    assert said_of(only("GPZDA,195959.00,14,01,2020,00,00")).day == date(2020, 1, 14).toordinal()


def test_void_fields_say_nothing() -> None:
    """A receiver that knows nothing yet."""
    assert said_of(only("GPRMC,,V,,,,,,,,,,N")) == Said(valid=False)
    assert said_of(only("GPGGA,,,,,,0,,,,M,,M,,")) == Said(valid=False)


@pytest.mark.parametrize("mode", ["N", "E", "M", "S"])
def test_a_mode_that_is_no_satellite_fix(mode: str) -> None:
    """None, estimated, manual, simulated."""
    assert said_of(only(f"GPRMC,123519,A,4807.038,N,01131.000,E,0,0,230394,,,{mode}")).valid is False


@pytest.mark.parametrize(
    "body",
    [
        "GPRMC,253519,A,4807.038,N,01131.000,E,0,0,230394,,",
        "GPRMC,123519,A,9907.038,N,01131.000,E,0,0,230394,,",
        "GPRMC,123519,A,4867.038,N,01131.000,E,0,0,230394,,",
        "GPRMC,123519,A,4807.038,X,01131.000,E,0,0,230394,,",
        "GPRMC,123519,A,4807.038,N,01131.000,E,0,0,310294,,",
        "GPRMC,123519,A,4807.038,N,01131.000,E,nan,0,230394,,",
        "GPRMC,123519,A",
        "GPGGA,12:35,4807.038,N,01131.000,E,1,08,0.9,545.4,M,46.9,M,,",
    ],
)
def test_what_cannot_be_is_refused(body: str) -> None:
    """Hours above 23, degrees above 90, minutes above 59, a side that is none, 31 February, no number, no fields."""
    with pytest.raises(FieldError):
        said_of(only(body))


def test_small_parts() -> None:
    """A leap second is a time; years of two digits turn at 80; south and west are negative; empty is nothing."""
    assert time_of_day_s("235960.00") == 86400
    assert day_of("06", "01", year="80") == date(1980, 1, 6).toordinal()
    assert day_of("06", "01", year="79") == date(2079, 1, 6).toordinal()
    assert degrees("0130.0", "W") == -1.5
    assert number("") is None


def test_vtg_gives_speed() -> None:
    """0.26 kn · 1852 / 3600 = 0.134 m/s, as 0.49 km/h says beside it (0.136)."""
    assert speed_of(only("GPVTG,147.44,T,164.31,M,0.26,N,0.49,K,D")) == pytest.approx(0.1338, abs=1e-4)
    assert speed_of(only("GPVTG,,T,,M,,N,,K,N")) is None


def test_gsa_names_those_used() -> None:
    """Six of GPS and HDOP 1.5; system number 3 makes it Galileo; without a fix none is used."""
    assert used_in(only("GPGSA,M,3,14,16,26,27,29,31,,,,,,,2.7,1.5,2.3")) == (
        frozenset(("G14", "G16", "G26", "G27", "G29", "G31")),
        1.5,
    )
    assert used_in(only("GNGSA,A,3,02,11,,,,,,,,,,,1.3,0.7,1.1,3"))[0] == {"E02", "E11"}
    assert used_in(only("GPGSA,A,1,07,,,,,,,,,,,,99.9,99.9,99.9")) == (frozenset(), None)


def test_gsv_gives_places_and_strengths() -> None:
    """A blank strength is a satellite that is not heard; 00 elevation and azimuth together are not known yet."""
    found = list(in_view(only("GPGSV,1,1,04,03,09,280,,14,68,160,42,15,00,000,44,02,05,307,00")))
    assert [sample for sample, _ in found] == [
        SatelliteSample("G03", 280, 9, None),
        SatelliteSample("G14", 160, 68, 42.0),
        SatelliteSample("G15", None, None, 44.0),
        SatelliteSample("G02", 307, 5, None),
    ]
    assert all(main for _, main in found)


def test_gsv_tells_signals_apart() -> None:
    """A field behind the last satellite is the signal: 8 is L5 of GPS."""
    assert [main for _, main in in_view(only("GPGSV,3,3,10,06,,,40,09,,,27,30,,,39,8"))] == [False, False, False]


def test_gsv_that_cannot_be() -> None:
    """An elevation of 95° or a strength of 120 dB-Hz."""
    for body in ("GPGSV,1,1,01,03,95,280,40", "GPGSV,1,1,01,03,45,280,120", "GPGSV,1,1,01,03,45,400,40"):
        with pytest.raises(FieldError):
            list(in_view(only(body)))
