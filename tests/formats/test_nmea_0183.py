"""A receiver's log is read into moments; what cannot be believed is counted with its place."""

import itertools
import tracemalloc

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from tests.samples.nmea import gga, gsv, rmc, sentence

from backprobe.errors import UnreadableError
from backprobe.evidence.epoch import Epoch
from backprobe.formats.nmea_0183 import NmeaReader, NmeaTally


def read(lines: list[str]) -> tuple[list[Epoch], NmeaTally]:
    """The moments of a log, and its tally."""
    reader = NmeaReader("a.nmea")
    return list(reader.moments(lines)), reader.tally


def burst(second: int) -> list[str]:
    """What a receiver says in one second after noon."""
    time = f"12{second // 60:02d}{second % 60:02d}.00"
    return [gga(time), *gsv([(5, 40, 100, 38), (7, 60, 200, 44)]), rmc(time)]


def test_sentences_of_one_time_are_one_moment() -> None:
    """Three seconds, twelve sentences, three moments with two satellites each."""
    found, tally = read([line for second in range(3) for line in burst(second)])
    assert [(epoch.time_s, len(epoch.satellites)) for epoch in found] == [(0.0, 2), (1.0, 2), (2.0, 2)]
    assert (tally.sentences, dict(tally.skipped)) == (9, {})


def test_moments_without_a_time() -> None:
    """A receiver that knows no time says GGA and RMC again: each GGA begins a moment."""
    void = ["$GPGGA,,,,,,0,,,,M,,M,,*66", "$GPRMC,,V,,,,,,,,,,N*53"]
    found, _ = read([*void * 4, *burst(0)])
    assert [epoch.fix is not None for epoch in found] == [False] * 4 + [True]
    assert found[-1].time_s == 4.0


def test_a_standing_clock_without_a_fix_is_many_moments() -> None:
    """The same void sentence again and again is a receiver waiting, not a log that repeats itself."""
    found, tally = read([gga("000000", quality=0)] * 5)
    assert len(found) == 5
    assert dict(tally.odd) == {"clock_stood": 4}


def test_a_logger_that_repeats_itself() -> None:
    """Three seconds written twice are three moments, and the copies are counted."""
    lines = [line for second in range(3) for line in burst(second)]
    found, tally = read([*lines, *lines])
    assert len(found) == 3
    assert dict(tally.skipped) == {"doubled": 6}


def test_faults_are_placed() -> None:
    """File, line, text and what was expected; three of each kind, and the count of all."""
    wrong = rmc("120000").replace("A,48", "A,49")
    _, tally = read([*burst(0), *[wrong] * 5, "garbage", rmc("120001")[:30], sentence("GPRMC,990000,A,,,,,,,,,")])
    assert dict(tally.skipped) == {"bad_checksum": 5, "cut_off": 1, "not_a_sentence": 1, "bad_field": 1}
    places = [(each.place.line, each.place.text) for each in tally.places]
    assert places[:3] == [(4, wrong[:80]), (5, wrong[:80]), (6, wrong[:80])]
    assert len(places) == 6
    assert "a.nmea, line 9: garbage" in str(tally.places[3])


def test_not_one_good_sentence_is_refused() -> None:
    """A file of something else."""
    with pytest.raises(UnreadableError, match="none is good in the 2 lines"):
        read(["wire,key,volts", "red,on,12.4"])


def test_an_endless_wrong_file_is_given_up() -> None:
    """Nobody reads a gigabyte of something else to its end."""
    counted = itertools.count(1)
    endless = ("not a sentence" for _ in counted)
    with pytest.raises(UnreadableError):
        list(NmeaReader("a.nmea").moments(endless))
    assert next(counted) == 200_001


def test_the_day_comes_from_either_sentence() -> None:
    """GGA has no date: midnight passes by itself, and RMC's or ZDA's date is no jump."""
    found, tally = read(
        [gga("235959.00"), rmc("235959.00"), gga("000000.00"), rmc("000000.00", date="150226"), gga("000001.00")]
    )
    assert [epoch.time_s for epoch in found] == [0.0, 1.0, 2.0]
    zda = [gga("235959.00"), sentence("GPZDA,235959.00,14,02,2026,00,00"), gga("000000.00")]
    zda += [sentence("GPZDA,000000.00,15,02,2026,00,00")]
    again, odd = read(zda)
    assert [epoch.time_s for epoch in again] == [0.0, 1.0]
    assert dict(tally.odd) == dict(odd.odd) == {}


def test_odd_clocks_are_placed() -> None:
    """A date that jumps back by 1,024 weeks is named with its line."""
    _, tally = read([rmc("120000"), rmc("120001"), rmc("120002", date="010706"), rmc("120003", date="010706")])
    assert dict(tally.odd) == {"week_rollover": 1}
    assert str(tally.places[0]) == "a.nmea, line 3 (the receiver's date jumps by 1,024 weeks here)"


def test_memory_stays_flat() -> None:
    """Ten times as many lines need no more memory: less than 100 kB more."""

    def most(count: int) -> int:
        tracemalloc.start()
        lines = (line for second in range(count) for line in (*burst(second % 3600), "torn $GPGGA,1"))
        for _ in NmeaReader("a.nmea").moments(lines):
            pass
        peak = tracemalloc.get_traced_memory()[1]
        tracemalloc.stop()
        return peak

    most(50)
    assert most(2000) - most(200) < 100_000


@settings(max_examples=60)
@given(st.lists(st.text(max_size=90) | st.sampled_from(burst(3)), max_size=25), st.integers(0, 2**32))
def test_nothing_breaks_the_reader(lines: list[str], cut: int) -> None:
    """Any lines, with good ones among them cut anywhere: an answer or a refusal, never another error."""
    torn = [line[: cut % (len(line) + 1)] if index % 3 == 0 else line for index, line in enumerate(lines)]
    try:
        found, tally = read(torn)
    except UnreadableError:
        return
    assert tally.sentences >= len(found)
