"""A receiver's log goes into a journal as figures and comes back the same."""

import pytest
from tests.samples.journals import Phone
from tests.samples.receiver_world import World, log_lines
from tests.samples.receptions import reception

from backprobe.errors import Place, Skipped
from backprobe.evidence.reception import Reception, SkyBin
from backprobe.job.canonical import Body, canonical
from backprobe.job.entry import MOST_BYTES
from backprobe.job.fold import fold
from backprobe.job.receptions import figures_of, known_figures, reception_from, receptions_of
from backprobe.stages.mount.reception.listen import MOST_BINS, reception_of

SHA = "ab" * 32


def body(log: Reception) -> Body:
    """The body of an entry on a log."""
    return {"file": log.file, "sha256": SHA, "bytes": 1000, "stored": True, "figures": figures_of(log)}


def heard() -> Reception:
    """A log of an invented world, with a few lines that were passed over."""
    lines = log_lines(World(seed=4, satellites=18, minutes=5))
    return reception_of([*lines, "junk", lines[0][:20], *lines[-4:]], file="reception.nmea")


def test_figures_come_back_as_they_went() -> None:
    """All but the text of the lines that were passed over, in which positions may stand."""
    for log in (heard(), reception(), reception(rest=None, first_fix_ms=None, used={}, bins=())):
        again = reception_from(figures_of(log), file=log.file)
        places = tuple(Skipped(Place(log.file, each.place.line), each.expected) for each in log.places)
        assert again is not None
        assert {name: getattr(again, name) for name in log.__slots__ if name != "places"} == {
            name: getattr(log, name) for name in log.__slots__ if name != "places"
        }
        assert again.places == places


def test_figures_hold_no_position() -> None:
    """Neither degrees nor the text of a sentence: 48° 07' stands in the log and not in the figures."""
    assert any(",48" in line for line in log_lines(World(seed=4, satellites=18, minutes=5)))
    text = canonical(figures_of(heard())).decode()
    assert ",48" not in text
    assert "$GPGGA,12" not in text


def test_a_journal_holds_its_logs() -> None:
    """By file; the figures are known by the digest, so that a file is not listened to twice."""
    phone = Phone()
    phone.say("reception", body(reception(file="nmea/b.nmea")))
    phone.say("reception", body(reception(file="nmea/a.nmea", epochs=1300)))
    state = fold(phone.entries)
    assert [log.file for log in receptions_of(state)] == ["nmea/a.nmea", "nmea/b.nmea"]
    assert receptions_of(state)[0].epochs == 1300
    assert set(known_figures(state)) == {SHA}


def test_an_entry_without_figures_is_not_understood() -> None:
    """It is kept, and somebody has to look."""
    phone = Phone()
    phone.say("reception", {"file": "a.nmea", "sha256": SHA, "bytes": 9})
    state = fold(phone.entries)
    assert receptions_of(state) == ()
    assert len(state.unknown) == 1


@pytest.mark.parametrize(
    "changed",
    [
        {"epochs": -1},
        {"epochs": "9"},
        {"used": [[9]]},
        {"used": {"9": 1}},
        {"skipped": [1]},
        {"rest": [1, 2, 3]},
        {"bins": ["G05 1 2 3"]},
        {"bins": ["G05 6 4 0 0 0 0 0 0"]},
        {"bins": None},
        {"first_fix_ms": "soon"},
    ],
)
def test_figures_that_are_none(changed: Body) -> None:
    """What another program wrote wrongly is no log, and never an error of ours."""
    assert reception_from({**figures_of(reception()), **changed}, file="a") is None
    assert reception_from({}, file="a") is None


def test_the_largest_log_fits_into_an_entry() -> None:
    """A day at once a second over the whole sky: as many pieces as are kept, figures as large as they get."""
    sums = (86_400, 86_400, 86_400, 47_520_000, 62_000_000, 15_000_000)
    bins = tuple(SkyBin(f"G{n % 99:02d}", n % 24, n % 9, *sums) for n in range(MOST_BINS))
    hdop = dict.fromkeys((*range(40, 500), *range(500, 1000, 10), *range(1000, 5000, 100)), 86400)
    places = tuple(Skipped(Place("reception.nmea", 9_999_999), "x" * 90) for _ in range(27))
    log = reception(
        bins=bins, hdop_hundredths=hdop, top4_tenths=dict.fromkeys(range(150, 550, 2), 86400), places=places
    )
    assert len(canonical(body(log))) < MOST_BYTES - 1000
