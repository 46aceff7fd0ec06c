"""Texts are told apart: entries that can be kept, and what is none with its reason."""

from __future__ import annotations

from tests.samples.journals import JOB, Phone

from backprobe.cases.arrivals import MOST_NAME, arrival


def test_an_entry_is_read() -> None:
    """Its bytes are the text's."""
    entry = Phone().reads("Red", "on", "12.3")
    found = arrival(entry.raw.decode())
    assert (found.entry, found.raw, found.fault) == (entry, entry.raw, None)


def test_what_is_none_says_why_and_whose_it_may_be() -> None:
    """The ids are shown where they can be read."""
    torn = Phone().reads("Red", "on", "12.3").raw.decode().replace('"kind":"reading",', "")
    found = arrival(torn)
    assert found.entry is None
    assert "kind" in str(found.fault)
    assert found.job == JOB
    assert arrival("no").id is None


def test_too_long_a_name_is_a_fault() -> None:
    """200 letters are let through, 201 are not."""
    assert arrival(Phone("d" * MOST_NAME).reads("Red", "on", "1").raw.decode()).fault is None
    assert "device" in str(arrival(Phone("d" * (MOST_NAME + 1)).reads("Red", "on", "1").raw.decode()).fault)
