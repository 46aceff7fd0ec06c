"""What to mind wherever a bus appears."""

from __future__ import annotations

from backprobe.stages.bus.caution import LISTEN_ONLY, minded


def test_listening_is_all_that_is_asked_for() -> None:
    """Nothing is sent, and no power lead goes near a bus wire."""
    assert "listen only" in LISTEN_ONLY
    assert "never tap bus wires with the unit's power leads" in LISTEN_ONLY


def test_what_is_to_be_done_at_a_bus_has_the_caution_with_it() -> None:
    """It stands behind the step where it matters."""
    assert minded("log again") == f"log again; {LISTEN_ONLY}"
