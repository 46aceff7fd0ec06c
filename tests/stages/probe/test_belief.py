"""What readings say about a wire's role."""

import math

import pytest
from tests.samples.probe_tables import AT_24_V, ELECTRIC, SETUP, SHOWN, doubled, readings_of, rows, table_of

from backprobe.evidence.keys import Key
from backprobe.stages.probe.belief import Belief, answered, believe
from backprobe.stages.probe.roles import PRIOR, Role
from backprobe.stages.probe.setup import Setup


def belief_of(shown: str, *, setup: Setup = SETUP, others: str = "") -> Belief:
    """The belief about a wire that showed this."""
    beside = table_of(rows("other", others), system_V=setup.system_V).readings if others else ()
    return believe("w", readings_of(shown, system_V=setup.system_V), others=beside, setup=setup)


def test_nothing_read_is_the_prior():
    """Each role keeps its prior."""
    assert belief_of("").roles == pytest.approx(PRIOR)


@pytest.mark.parametrize("role", SHOWN)
def test_a_full_table_names_each_role(role: str):
    """A wire read at all positions is believed to be what it is, at 12 V and at 24 V.

    A lamp dimmed to half of a 24 V battery is left out: it looks like a converter.
    """
    for setup, shown in ((SETUP, SHOWN[role]), (AT_24_V, doubled(SHOWN[role]))):
        if setup is AT_24_V and role == Role.LIGHTING:
            continue
        roles = belief_of(shown, setup=setup).roles
        assert max(roles, key=lambda each: roles[each]) == role
        assert roles[Role(role)] > 0.7
        assert math.fsum(roles.values()) == pytest.approx(1.0)


def test_the_order_of_readings_does_not_matter():
    """The same readings backwards give the same belief."""
    words = SHOWN["ignition"].split()
    backwards = " ".join(f"{key} {volts}" for key, volts in list(zip(words[::2], words[1::2], strict=True))[::-1])
    assert belief_of(backwards).roles == pytest.approx(belief_of(SHOWN["ignition"]).roles)


def test_a_vehicle_without_a_crank_has_no_start_wire():
    """Off 0 V and on 0 V leave other roles."""
    assert belief_of("off 0.01 on 0.01", setup=ELECTRIC).roles[Role.START] == 0.0


@pytest.mark.parametrize("key", ["off", "accessory", "on", "running", "after"])
def test_a_comma_in_the_wrong_place_is_doubted_not_believed(key: str):
    """1.24 V typed for 12.4 V on an otherwise perfect constant: doubtful, and still a constant."""
    others = [f"{k} {v}" for k, v in _pairs(SHOWN["constant"]) if k != key]
    belief = belief_of(" ".join([*others, f"{key} 1.24" if key != "running" else "running 1.41"]))
    assert [reading.key for reading in belief.doubtful] == [Key(key)]
    assert belief.roles[Role.CONSTANT] > 0.7
    assert belief.at(Key(key)) == ()
    assert belief.volts(Key(key)) is None


def _pairs(shown: str) -> list[tuple[str, str]]:
    words = shown.split()
    return list(zip(words[::2], words[1::2], strict=True))


def test_a_true_zero_is_believed():
    """0.03 V ten minutes after key-off is a retained wire, not a slip."""
    belief = belief_of(SHOWN["retained"])
    assert belief.doubtful == ()


def test_one_reading_alone_is_never_doubtful():
    """There is nothing that it could contradict."""
    assert belief_of("on 1.23").doubtful == ()


def test_a_figure_read_again_alike_is_believed():
    """1.24 V twice ten minutes after key-off is no slip any more: a retained wire with stray volts."""
    belief = belief_of(SHOWN["constant"].replace("after 12.55", "after 1.24 after 1.25"))
    assert belief.doubtful == ()
    assert belief.roles[Role.RETAINED] > 0.85


def test_a_slip_is_answered_by_one_good_reading():
    """1.24 V and then 12.41 V: the second settles it."""
    belief = belief_of(SHOWN["constant"].replace("on 12.31", "on 1.24 on 12.41"))
    (doubtful,) = belief.doubtful
    assert doubtful.typed == "1.24"
    assert answered(belief, doubtful)


def test_a_good_reading_before_a_slip_does_not_answer_it():
    """12.41 V and then 1.24 V: the last word is the odd one."""
    belief = belief_of(SHOWN["constant"].replace("on 12.31", "on 12.41 on 1.24"))
    assert [reading.typed for reading in belief.doubtful] == ["1.24"]
    assert not answered(belief, belief.doubtful[0])


def test_a_poor_touch_is_outvoted_by_two():
    """0.02 V among live readings is how a probe reads that touches nothing: two good readings outvote it, not one."""
    once = belief_of(SHOWN["constant"].replace("on 12.31", "on 0.02 on 12.41"))
    twice = belief_of(SHOWN["constant"].replace("on 12.31", "on 0.02 on 12.41 on/max 12.43"))
    assert [reading.typed for reading in once.doubtful] == [reading.typed for reading in twice.doubtful] == ["0.02"]
    assert not answered(once, once.doubtful[0])
    assert answered(twice, twice.doubtful[0])


def test_a_loaded_reading_does_not_answer_a_bare_one():
    """1.24 V bare and 12.2 V under 1.5 A were not taken alike."""
    belief = belief_of(SHOWN["constant"].replace("on 12.31", "on 1.24 on%1.5 12.20"))
    assert not answered(belief, belief.doubtful[0])


def test_a_crank_is_answered_by_the_same_hold_only():
    """A display in the crank says nothing about a MIN that hardly fell."""
    belief = belief_of("off 12.5 on 12.4 crank/min 12.38 crank 11.2 running 14.1")
    assert [reading.typed for reading in belief.doubtful] == ["12.38"]
    assert not answered(belief, belief.doubtful[0])


def test_a_crank_that_hardly_falls_is_doubted():
    """12.25 V from 12.4 V: the starter cannot have turned, or the figure was another one."""
    shown = SHOWN["ignition"].replace("crank/min 11.63", "crank/min 12.15")
    assert [reading.typed for reading in belief_of(shown).doubtful] == ["12.15"]


def test_a_load_does_not_confuse_a_supply():
    """11.9 V under 1.5 A beside 12.3 V bare: still a constant."""
    shown = SHOWN["constant"].replace("on 12.31", "on 12.31 on%1.5 11.90")
    belief = belief_of(shown)
    assert belief.doubtful == ()
    assert belief.roles[Role.CONSTANT] > 0.97
    assert belief.volts(Key.ON) == 12.31


def test_a_load_gives_a_signal_away():
    """12.1 V bare and 0.1 V under 1.5 A is no feed."""
    roles = belief_of("on 12.1 on%1.0 0.1").roles
    assert roles[Role.SIGNAL] > 0.5


def test_a_wire_near_12_v_in_a_24_v_vehicle_is_a_half():
    """12.6 V at key on of a 24 V vehicle: a converter or a centre tap; 24.6 V is none."""
    assert belief_of("on 12.6", setup=AT_24_V).half_voltage > 0.8
    assert belief_of("on 24.6", setup=AT_24_V).half_voltage < 0.01


def test_a_wire_beside_others_is_compared():
    """Only positions at which another live wire was read count."""
    assert belief_of("on 12.3 off 12.5", others="on 12.4 off 0.02").compared == {Key.ON}


def test_volts_at_a_position_are_the_median_without_load():
    """A loaded reading does not count: (12.4 + 12.2) / 2."""
    found = belief_of("on 12.4 on 12.2 on%2.0 11.9")
    assert found.volts(Key.ON) == pytest.approx((12.4 + 12.2) / 2)
    assert found.volts(Key.CRANK) is None
