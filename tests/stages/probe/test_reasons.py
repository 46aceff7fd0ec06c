"""Why a wire was judged so, in sentences."""

from __future__ import annotations

from dataclasses import replace

import pytest
from tests.samples.probe_tables import AT_24_V, SHOWN, answer_of, wire_of
from tests.samples.probe_tables import rows as probe_rows
from tests.samples.wire_readings import IGNITION, SETUP, SUPPLY, reading, rows, table

from backprobe.evidence.reading import WireFacts
from backprobe.limits.lookup import meter
from backprobe.stages.probe.reasons import HALF, reasons
from backprobe.stages.probe.setup import Setup
from backprobe.stages.probe.tapping import Obstacle
from backprobe.stages.probe.wires import judge_wires


def said(wire: str, *readings, facts: WireFacts | None = None) -> list[str]:
    """The reasons for one wire of a table."""
    named = {} if facts is None else {wire: facts}
    judged = judge_wires(table(*readings, facts=named), SETUP).wire(wire)
    return list(reasons(judged, facts, setup=SETUP))


def test_a_wire_that_was_only_declared_says_so():
    """Nothing is claimed of it."""
    declared = judge_wires(table(reading("Red", "on", 12.4)), SETUP)
    assert declared.wire("Red") is not None
    bare = judge_wires(table().__class__(wires=("Blue",)), SETUP).wire("Blue")
    assert "not measured yet" in reasons(bare, None, setup=SETUP)


def test_a_constant_is_proven_for_its_minutes_and_its_circuit_is_unknown():
    """Both sentences must stand."""
    lines = said("Red", *rows("Red", SUPPLY))
    assert any("proven for 10 minutes" in line for line in lines)
    assert any("circuit not identified" in line for line in lines)


def test_a_named_circuit_is_not_called_unknown():
    """Once it is named, the sentence goes."""
    lines = said("Red", *rows("Red", SUPPLY), facts=WireFacts(circuits=("fuse F12",)))
    assert not any("circuit not identified" in line for line in lines)


def test_a_limit_never_stands_without_what_it_rests_on():
    """Every sentence with a limit says that it is common practice."""
    lines = said("Violet", *rows("Violet", IGNITION))
    limited = [line for line in lines if "at least" in line or "at most" in line]
    assert limited
    assert all("common practice" in line for line in limited)


def test_the_crank_shows_its_range_and_whose_model_that_is():
    """A MIN hold is not believed to the volt."""
    (line,) = [line for line in said("Violet", *rows("Violet", IGNITION)) if line.startswith("crank")]
    assert "11.60 V" in line
    assert "our own model" in line


def test_a_ban_comes_first():
    """What forbids the wire is read before anything else."""
    lines = said("Red", *rows("Red", SUPPLY), facts=WireFacts(marks=("twisted",)))
    assert "twisted" in lines[0]


def test_a_battery_switch_is_spoken_of():
    """Dead or live with the switch open are two different warnings."""
    dead = said("Red", *rows("Red", SUPPLY), reading("Red", "isolated", 0.01))
    live = said("Red", *rows("Red", SUPPLY), reading("Red", "isolated", 12.5))
    assert any("isolated: 0.01 V, dead" in line for line in dead)
    assert any("isolated: 12.50 V, live" in line for line in live)


def test_what_is_met_stands_in_one_line_and_what_is_owed_in_another():
    """A limit is said once for all positions that share it."""
    lines = reasons_of("off 12.52 on 12.31")
    assert "live: off 12.52 V, on 12.31 V (at least 10.5 V, common practice, no source)" in lines
    owed = "accessory, running, after (at least 10.5 V, common practice, no source)"
    assert f"not measured yet for the supply: {owed}; crank (at least 9 V, common practice, no source)" in lines


def test_a_banned_wire_is_spoken_of_no_further():
    """Its bans, and that it is never tapped; no list of what to measure."""
    lines = reasons_of(SHOWN["constant"], circuit="airbag", marks="yellow")
    assert lines[-1] == "never tapped, whatever its volts"
    assert len(lines) == 3


def test_a_wire_that_fails_says_only_what_fails():
    """An accessory wire: live in accessory, dead in the crank; nothing on what it does well or still owes."""
    lines = reasons_of(SHOWN["accessory"])
    assert "accessory: 12.41 V, must be dead (at most 1 V, common practice, no source)" in lines
    assert "crank: MIN 0.02 V; limit at least 10 V, common practice, no source: fails" in lines
    assert not any(line.startswith(("live:", "dead:", "not measured")) for line in lines)


@pytest.mark.parametrize(
    ("crank", "said"),
    [
        (
            "crank/min 10.93",
            ", true lowest 9.61 to 11.00 V as a hold of 100 ms averages the inrush away (our own model)",
        ),
        ("crank/logged 10.40", ", true lowest 10.33 to 10.47 V;"),
        ("crank 11.20", "display 11.20 V, which can have missed the dip: it proves nothing;"),
        ("crank/min 10.20", ": thin, part of the range is below it"),
        ("crank 8.20", "display 8.20 V; limit at least 9 V, common practice, no source: fails"),
    ],
)
def test_each_kind_of_crank_reading_is_worded(crank: str, said: str):
    """10.93 - 0.075 - 1.25 = 9.61 V; 10.40 ± 0.072 V; a display proves nothing but disproves."""
    (line,) = [each for each in reasons_of(SHOWN["constant"].replace("crank/min 10.93", crank)) if "crank:" in each]
    assert said in line


def test_a_quick_hold_is_not_said_to_average():
    """A MIN of 1 ms sees the whole trough: no model is needed."""
    quick = replace(SETUP, meter=meter("service"))
    (line,) = [each for each in reasons_of(SHOWN["constant"], setup=quick) if each.startswith("crank:")]
    assert "model" not in line


def test_stray_volts_ask_for_a_load_only_on_a_wire_that_was_identified():
    """A test lamp on an unknown wire might set off what it feeds."""
    shown = SHOWN["ignition"].replace("accessory 0.03", "accessory 1.60 accessory 1.62")
    unknown = "\n".join(reasons_of(shown))
    known = "\n".join(reasons_of(shown, circuit="ignition feed F31"))
    assert "a test lamp tells, but only once its circuit is identified" in unknown
    assert "stray volts vanish under a test lamp: measure it so and write load_A" in known
    assert "lamp" not in "\n".join(reasons_of(SHOWN["accessory"]))


def test_a_doubtful_figure_is_named_as_typed():
    """1.24 V at key on of a constant."""
    assert "1.24 V at on does not fit the other readings: set aside, measure it again" in reasons_of(
        SHOWN["constant"].replace("on 12.31", "on 1.24")
    )


@pytest.mark.parametrize(
    ("shown", "obstacle"),
    [
        (SHOWN["constant"].replace("running 14.12", "running 13.00"), Obstacle.NOT_COMPARED),
        (SHOWN["constant"].replace("crank/min 10.93", "crank/min 9.50"), Obstacle.TOO_THIN),
        (SHOWN["constant"].replace("on 12.31", "on 12.31 on 1.24"), Obstacle.CONTRADICTED),
    ],
)
def test_a_good_wire_that_is_left_alone_says_why(shown: str, obstacle: Obstacle):
    """Its limits are met, and still it is not to be tapped."""
    assert wire_of(shown).tap == "no"
    assert str(obstacle) in reasons_of(shown)


def test_a_converter_says_what_it_is():
    """12.4 V at every position of a 24 V vehicle; whatever it feeds is not known either."""
    lines = reasons_of("off 12.4 accessory 12.4 on 12.4 running 13.9", setup=AT_24_V)
    assert lines[0] == HALF
    assert len(lines) == 2


def test_a_wire_that_fits_nothing_asks_to_be_measured_again():
    """17 V at key off and 15.9 V in accessory are no level of any wire."""
    lines = reasons_of("off 17.0 accessory 9.3 on 17.4 running 9.1")
    assert not any("100%" in line for line in lines)


def reasons_of(shown: str, *, setup: Setup = SETUP, circuit: str = "", marks: str = "") -> tuple[str, ...]:
    """The reasons given for a single wire that showed this."""
    answer = answer_of(probe_rows("w", shown, circuit=circuit, marks=marks), setup=setup)
    return answer.reasons(answer.result.wires[0])
