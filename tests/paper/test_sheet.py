"""Content as the plain values of the page."""

import json
from collections.abc import Callable
from dataclasses import replace

import pytest

from backprobe.findings import Finding, Verdict
from backprobe.paper.content import Picture, RecordContent
from backprobe.paper.sheet import made_text, sheet

Build = Callable[..., RecordContent]
NONE: frozenset[str] = frozenset()


def test_a_sheet_is_plain_json(record: Build) -> None:
    """Everything on it survives JSON."""
    values = sheet(record(), NONE)
    assert json.loads(json.dumps(values)) == values


def test_every_finding_has_a_bar_and_its_words(record: Build, findings: Callable[[int], tuple[Finding, ...]]) -> None:
    """Ten findings, ten bars, each with an alternative text that says its verdict."""
    rows = sheet(record(findings=findings(10)), NONE)["findings"]
    assert isinstance(rows, list)
    assert len(rows) == 10
    assert all(row["bar"].startswith("<svg") for row in rows)
    assert ["Verdict: holds" in row["alt"] for row in rows] == [True, False] * 5


def test_what_is_missing_is_said_once(record: Build, findings: Callable[[int], tuple[Finding, ...]]) -> None:
    """Without a value the reason stands in the bar, so it does not stand beside it again."""
    missing = replace(findings(1)[0], value=None, low=None, high=None, verdict=Verdict.OPEN, because="not read yet")
    rows = sheet(record(findings=(missing,)), NONE)["findings"]
    assert isinstance(rows, list)
    assert rows[0]["because"] is None
    assert "not read yet" in rows[0]["bar"]


@pytest.mark.parametrize(
    ("journal", "given"), [("µ\n".encode(), "µ\n"), (b"\xff\x00", [255, 0]), (b"\r\n", "\r\n"), (b"", "")]
)
def test_the_journal_goes_over_as_text_or_numbers(record: Build, journal: bytes, given: object) -> None:
    """UTF-8 travels as text, anything else byte by byte."""
    assert sheet(record(journal=journal), NONE)["journal"] == given


def test_a_note_is_added_only_where_something_was_replaced(record: Build) -> None:
    """The note on codes follows the record's own notes; an alternative text alone does not bring it."""
    plain = sheet(record(), frozenset("漢"))["notes"]
    heard = sheet(record(pictures=(Picture(svg="<svg/>", caption="c", alt="漢"),)), frozenset("漢"))["notes"]
    coded = sheet(record(title="漢"), frozenset("漢"))["notes"]
    assert isinstance(plain, list)
    assert isinstance(coded, list)
    assert plain == heard
    assert len(coded) == len(plain) + 1


@pytest.mark.parametrize(
    ("made_at", "shown"),
    [
        ("2026-03-04T11:20:00+02:00", "made 2026-03-04 11:20 +02:00"),
        ("2026-03-04T09:20:00Z", "made 2026-03-04 09:20 +00:00"),
        ("2026-03-04T11:20", "made 2026-03-04 11:20"),
        ("last Tuesday", "made last Tuesday"),
        (None, "made at a time not known"),
    ],
)
def test_the_time_is_shown_as_far_as_it_is_known(made_at: str | None, shown: str) -> None:
    """A time without offset stays without; a word stays a word; no time is no time."""
    assert made_text(made_at) == shown
