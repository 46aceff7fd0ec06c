"""What was declared of a wire decides before its volts do."""

from __future__ import annotations

import pytest

from backprobe.evidence.reading import WireFacts
from backprobe.stages.probe.permission import CIRCUITS, bans, identified


@pytest.mark.parametrize(
    ("circuit", "kind"),
    [
        ("SRS control unit", "restraint"),
        ("air bag, driver", "restraint"),
        ("fuse F7 ABS pump", "brake"),
        ("Power steering", "steering"),
        ("engine control module, term. 15", "engine"),
        ("ECU supply", "engine"),
        ("starter solenoid", "start"),
        ("terminal 50", "start"),
        ("J1939 can high", "data bus"),
        ("K-line", "data bus"),
        ("oil pressure sensor", "sensor"),
        ("HV interlock", "high voltage"),
    ],
)
def test_a_forbidden_circuit_is_named_for_what_it_is(circuit, kind):
    """The reason quotes what was declared and says which kind of circuit it is."""
    (reason,) = bans(WireFacts(circuits=(circuit,)))
    assert circuit in reason
    assert kind in reason


@pytest.mark.parametrize(
    "circuit",
    [
        "body-builder connector X12, ignition feed, fuse F31",
        "permanent supply, fuse F12",
        "cigar lighter",
        "reading lamp",
        "scanner cradle",
        "bracket light",
    ],
)
def test_an_ordinary_circuit_is_not_forbidden(circuit):
    """Whole words count: 'scanner' holds no 'can', 'bracket' no 'brake'."""
    assert bans(WireFacts(circuits=(circuit,))) == ()


@pytest.mark.parametrize("mark", ["twisted", "Yellow", "ORANGE tube", "airbag label"])
def test_marks_forbid_as_circuits_do(mark):
    """Twisted, yellow and orange end the matter, as does a label."""
    assert len(bans(WireFacts(marks=(mark,)))) == 1


def test_every_reason_is_given():
    """Two bans make two reasons: the technician sees both."""
    assert len(bans(WireFacts(circuits=("brake lamp", "fuse F3"), marks=("twisted",)))) == 2


def test_nothing_declared_forbids_nothing_and_identifies_nothing():
    """Without a circuit the wire is not identified; a mark alone does not identify it."""
    assert bans(None) == ()
    assert not identified(None)
    assert not identified(WireFacts(circuits=(" ",), marks=("white",)))
    assert identified(WireFacts(circuits=("fuse F12",)))


@pytest.mark.parametrize("ban", CIRCUITS, ids=lambda ban: ban.kind)
def test_each_word_of_the_table_is_found_in_a_sentence(ban):
    """Every word in the table does what it is there for, at the start, in the middle and at the end."""
    for word in ban.words.split():
        plain = word.rstrip("*")
        for text in (plain, f"feed of {plain} unit", f"fuse 3 {plain}"):
            assert bans(WireFacts(circuits=(text,))), text


@pytest.mark.parametrize(
    "circuit",
    [
        "airbag-unit",
        "ABS-pump",
        "CAN-bus",
        "HV-battery",
        "starter-relay",
        "brake_switch",
        "S.R.S. module",
        "a.b.s",
    ],
)
def test_a_name_written_in_one_is_found_too(circuit):
    """Hyphens, underscores and dots between letters do not hide what it is."""
    assert len(bans(WireFacts(circuits=(circuit,)))) == 1


@pytest.mark.parametrize("circuit", ["non-scanned feed", "fuse F12-a", "12 V socket", "roof light", "D+ relay"])
def test_parts_of_words_are_not_taken_for_words(circuit):
    """'scanned' holds no 'can', and a figure in a name is no terminal."""
    assert bans(WireFacts(circuits=(circuit,))) == ()
