"""[reports] of a job sheet, and the unit's supply as it was seen twice."""

import pytest

from backprobe.errors import UnreadableError
from backprobe.evidence.report import Event, ReportNames
from backprobe.evidence.supply_pair import SupplyPair
from backprobe.formats.job_toml import read_job

VEHICLE = "[vehicle]\nsystem_V = 12\n"


def job(unit="", more=""):
    """A least sheet with more under [unit] and at its end."""
    return read_job(f'{VEHICLE}[unit]\nsheet = "unit.toml"\n{unit}{more}', "job.toml")


def test_a_sheet_without_them_has_our_own_names():
    """No map, and no supply that was seen."""
    assert job().report_names == ReportNames()
    assert job().supply_pair is None


def test_the_servers_names():
    """Columns by name; words for events in one text or several, compared in small letters."""
    text = '[reports.columns]\nt = "Sent at"\n[reports.events]\nboot = "Start-up"\nignition_on = ["IGN ON", "Key"]\n'
    names = job(more=text).report_names
    assert names.columns == {"t": "Sent at"}
    assert names.events == {"start_up": Event.BOOT, "ign_on": Event.IGNITION_ON, "key": Event.IGNITION_ON}


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ('[reports]\ncolumn = {t = "Sent"}\n', r"line 6: column.*\n.*did you mean columns\?"),
        ('[reports.columns]\ntt = "Sent"\n', r"line 6: tt.*\n.*a key of \[reports.columns\]"),
        ("[reports.columns]\nt = 5\n", r"line 6: t = 5\n.*text in quotation marks"),
        ('[reports.events]\nreboot = "x"\n', r"line 6: reboot.*\n.*did you mean boot\?"),
    ],
)
def test_what_is_refused(text, words):
    """With the line and what was expected."""
    with pytest.raises(UnreadableError, match=words):
        job(more=text)


def test_the_supply_seen_twice():
    """As text with its last zero, as a number, with its unit; the coarser count of the two."""
    assert job('idle_V = "12.40"\ntransmit_V = "12.39"\n').supply_pair == SupplyPair(12.4, 12.39, 0.01)
    assert job('idle_V = 12.4\ntransmit_V = "12.39 V"\n').supply_pair == SupplyPair(12.4, 12.39, 0.1)
    assert job('idle_V = ""\n').supply_pair is None


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("idle_V = 12.4\n", "transmit_V beside it"),
        ("transmit_V = 12.4\n", "idle_V beside it"),
        ('idle_V = "12,4 A"\ntransmit_V = 12\n', r'idle_V = "12.41"'),
        ("idle_V = true\ntransmit_V = 12\n", "volts as they were shown"),
        ("idle_V = 12\ntransmit_V = 1200\n", "volts as they were shown"),
    ],
)
def test_a_supply_that_tells_nothing(text, words):
    """One of the two alone, a wrong unit, no voltage."""
    with pytest.raises(UnreadableError, match=words):
        job(text)
