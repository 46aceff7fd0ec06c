"""What the reports say of the unit beside the key, as findings."""

from dataclasses import replace

import pytest
from tests.samples.prove_cases import HERE, healthy, proven, row

from backprobe.evidence.corner import Corner, CornerIndex
from backprobe.evidence.light_seen import LightSeen
from backprobe.evidence.unit_sheet import Light
from backprobe.findings import Verdict
from backprobe.limits.lookup import limit
from backprobe.stages.prove.lights import lights_of
from backprobe.stages.prove.parked import Parked
from backprobe.stages.prove.patterns import INCOMPLETE, WORDS, Pattern, PatternId
from backprobe.stages.prove.position import Position
from backprobe.stages.prove.supply import Supply
from backprobe.stages.prove.unit_findings import first_fix, lights, parked_night, patterns, position, supply_change

PROOF = proven(healthy()).proof
SHEET = (
    Light(name="network", colour="green", pattern="one flash a second", means="registered"),
    Light(name="sky", colour="blue", pattern="steady", means="found"),
)


@pytest.mark.parametrize("pattern", PatternId)
def test_a_pattern_says_what_it_means_and_where_to_look(pattern):
    """A fault fails, what only keeps the evidence incomplete is open."""
    (found,) = patterns(replace(PROOF, patterns=(Pattern(pattern, 0.9),)))
    assert found.id == f"prove_{pattern}"
    assert found.verdict is (Verdict.OPEN if pattern in INCOMPLETE else Verdict.FAILS)
    assert found.because == WORDS[pattern].means
    assert found.next.lower().endswith(WORDS[pattern].look_at.lower().removesuffix("."))


def test_a_swapped_serial_names_the_other_unit():
    """It is the first thing that is asked."""
    (found,) = patterns(replace(PROOF, patterns=(Pattern(PatternId.SWAPPED_SERIAL, 0.9, other_unit="L2"),)))
    assert found.because.endswith(" The unit that fits: L2.")


def test_no_pattern_is_a_finding_too():
    """It holds where turns were reported; where none was, there is nothing to look for patterns in."""
    (found,) = patterns(PROOF)
    assert (found.id, found.verdict) == ("prove_patterns", Verdict.HOLDS)
    silent = tuple(replace(outcome, edge=None) for outcome in PROOF.turns)
    assert patterns(replace(PROOF, turns=silent))[0].verdict is Verdict.OPEN


@pytest.mark.parametrize(
    ("away_m", "verdict"), [(0.0, Verdict.HOLDS), (12.8, Verdict.HOLDS), (12.9, Verdict.THIN), (19.3, Verdict.FAILS)]
)
def test_a_position_against_three_times_the_joint_accuracy(away_m, verdict):
    """6.4 m: whole range within 19.2 m, part of it, none of it; just as the stage judges it."""
    known = Position(verdict, away_m, 6.4, 0.0, 30)
    found = position(replace(PROOF, position=known))
    assert found.verdict is verdict
    assert found.limit.value == pytest.approx(19.2)
    assert (found.low, found.high) == (max(0.0, away_m - 6.4), away_m + 6.4)
    inside, worst = found.value <= found.limit.value, found.high <= found.limit.value + 1e-9
    assert (inside, worst) == {"holds": (True, True), "thin": (True, False), "fails": (False, False)}[verdict]


def test_a_position_that_nobody_can_judge():
    """No fix, or no place to hold it against: each says what to do."""
    assert position(replace(PROOF, position=Position(Verdict.OPEN))).next.startswith("wait until the unit reports")
    assert position(replace(PROOF, position=Position(Verdict.OPEN, fixes=9))).next.startswith("write where the vehicle")


def test_the_time_to_the_first_position():
    """Shown where power-up and fix were both seen."""
    assert first_fix(replace(PROOF, first_fix_s=None)) == ()
    (found,) = first_fix(replace(PROOF, first_fix_s=44.0))
    assert (found.value, found.unit, found.verdict, found.limit) == (44.0, "s", Verdict.HOLDS, None)


def test_lights_as_the_sheet_has_them():
    """Both seen as stated, with what they mean and when."""
    seen = (
        LightSeen(light="Network", pattern="one flash  a second", after_s=41),
        LightSeen(light="sky", pattern="steady"),
    )
    (found,) = lights(lights_of(SHEET, seen))
    assert found.verdict is Verdict.HOLDS
    assert found.because == "network: one flash  a second after 41 s (registered); sky: steady (found)"


def test_lights_that_show_something_else_or_were_not_looked_at():
    """Open, each by its name; nothing at all where nobody wrote anything down."""
    assert lights(lights_of(SHEET, ())) == ()
    (found,) = lights(lights_of(SHEET, (LightSeen(light="network", pattern="dark"),)))
    assert found.verdict is Verdict.OPEN
    assert found.because == "network: dark; the sheet knows one flash a second; sky: not looked at"
    assert found.next.startswith("look at network and sky again")


def test_the_supply_when_the_unit_transmits():
    """0.010 V at 115 mA are 0.087 Ω, twice u is 0.142 Ω: inside 0.3 V at 1 A; without currents the change alone."""
    rule = limit("supply_loaded_drop", system_V=12)
    supply = Supply(Verdict.HOLDS, 12.3, 0.01, 0.0082, 0.01 / 0.115, 2 * 0.0082 / 0.115, rule)
    (found,) = supply_change(replace(PROOF, supply=supply))
    assert (round(found.value, 3), found.low, round(found.high, 3)) == (0.087, 0.0, 0.23)
    assert (found.limit.value, found.limit.unit, found.verdict) == (0.3, "Ω", Verdict.HOLDS)
    (bare,) = supply_change(replace(PROOF, supply=Supply(Verdict.OPEN, None, 0.01, 0.0082)))
    assert (bare.value, bare.verdict) == (None, Verdict.OPEN)
    assert "idle_mA and transmit_mA" in bare.next
    assert supply_change(replace(PROOF, supply=Supply(Verdict.OPEN, 12.3))) == ()


def test_a_parked_night():
    """8 hours of both prove them; until then it is said for how long; a supply that was lost fails."""
    assert parked_night(replace(PROOF, parked=Parked(16.8, 16.1))).verdict is Verdict.HOLDS
    short = parked_night(replace(PROOF, parked=Parked(0.6, 0.1)))
    assert (short.verdict, short.value, short.limit.value) == (Verdict.OPEN, 0.1, 8.0)
    assert short.because == "'constant' is proven for 36 min, 'ignition off' for 6 min"
    lost = parked_night(replace(PROOF, parked=Parked(3.0, 2.5, lost=True)))
    assert lost.verdict is Verdict.FAILS
    assert "the supply was lost 2.5 h after the final off" in lost.because


def test_a_restart_while_parked_is_told_from_the_reports():
    """The unit boots 300 s after the final off was reported, with the key off."""
    rows = [*healthy(), row(1120, "boot", 0), row(1180, "heartbeat", 0)]
    assert proven(rows).proof.parked.lost
    assert not PROOF.parked.lost


def test_where_the_unit_reports_itself():
    """In words, with what is owed to the map, whether the vehicle's place is known or not; nothing without corners."""
    corner = Corner(HERE.lat_deg, HERE.lon_deg, ("Main Street", "Mill Lane"))
    index = CornerIndex(corners=(corner,), attribution="© somebody", source="m.osm.pbf")
    said = "; reported from: corner of Main Street and Mill Lane (© somebody)"
    assert position(proven(healthy(), corners=index).proof).because.endswith(said)
    assert position(proven(healthy(), corners=index, place=None).proof).because.endswith("is not known" + said)
    far = replace(index, corners=())
    assert position(proven(healthy(), corners=far).proof).because.endswith(
        "; reported from: no named corner within 300 m"
    )
    assert "reported from" not in position(PROOF).because
