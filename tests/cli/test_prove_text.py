"""A proof and a plan for people."""

from tests.samples.prove_cases import healthy, proven, row

from backprobe.cli.prove_text import as_text, plan_text
from backprobe.evidence.unit_sheet import Light, Supply, UnitSheet
from backprobe.stages.prove.plan import plan_of
from backprobe.stages.prove.setup import ProveSetup

SHEET = UnitSheet(
    name="Lantern 2",
    maker=None,
    supply=Supply(least_V=8, most_V=32),
    leads=(),
    lights=(Light(name="network", pattern="one flash a second", means="registered, sending"),),
)


def test_a_proof_that_holds():
    """Verdict, rows, delays, position, lights, what was left out, notes, and what to do next."""
    lines = as_text(proven([*healthy(), row(0, unit="L2")], sheet=SHEET)).splitlines()
    assert lines[0] == "unit L1: holds"
    assert "  2026-03-31T08:05:00Z  on          must go on: matched  reported 2026-03-31T08:05:02Z" in lines
    assert "off reported after  20.4 s ± 2.3 s" in lines
    assert any(line.startswith("position            holds: 0.0 m off, joint accuracy 6.4 m") for line in lines)
    assert "light network: not looked at (one flash a second: registered, sending)" in lines
    assert "left out: 1 × other unit" in lines
    assert lines[-1].startswith("next: Leave the vehicle parked overnight")


def test_a_fault_with_where_to_look():
    """And the events that no key explains."""
    extra = [row(102, "ignition_on", 1), row(220, "ignition_off", 0)]
    text = as_text(proven([line for line in healthy() if "heartbeat" not in line] + extra))
    assert "on_in_accessory (" in text
    assert "    look at: The ignition tap" in text
    assert "no turn for: on at 2026-03-31T08:01:42Z" in text
    assert "? 2026-03-31T08:01:40Z  accessory   open" in text


def test_another_unit_and_what_is_not_known():
    """Nothing is printed for figures that nobody has."""
    text = as_text(proven(healthy(unit="L9")))
    assert "the unit that fits: L9" in text
    assert "on reported after   not known" in text
    assert "position            open" in text


def test_a_plan_is_a_script_to_fill_in():
    """Comments first, then a table; what to do stands in quotes."""
    lines = plan_text(plan_of(ProveSetup()), ("no sheet",)).splitlines()
    assert lines[1] == "# note: no sheet"
    assert lines[2] == "t,key,hold_s,do"
    assert lines[3].endswith('"key off; wait"')
