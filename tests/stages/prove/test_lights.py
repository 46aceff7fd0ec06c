"""The unit's lights."""

from backprobe.evidence.light_seen import LightSeen
from backprobe.evidence.unit_sheet import Light
from backprobe.stages.prove.lights import lights_of

SHEET = (
    Light(name="network", pattern="one flash a second", means="registered, sending"),
    Light(name="sky", pattern="steady", means="position found"),
)


def test_what_the_sheet_says_beside_what_was_seen():
    """As stated, another pattern, or not looked at; spaces and capitals do not matter."""
    seen = [LightSeen(light="Network", pattern="One  flash a second", after_s=41.0)]
    network, sky = lights_of(SHEET, seen)
    assert (network.as_stated, network.means, network.as_json()["after_s"]) == (True, "registered, sending", 41.0)
    assert (sky.seen, sky.as_stated) == (None, None)
    assert lights_of(SHEET, [LightSeen(light="sky", pattern="dark")])[1].as_stated is False


def test_the_last_look_counts_and_unknown_lights_are_kept():
    """Nothing that was written down is lost."""
    looks = [("sky", "dark"), ("sky", "steady"), ("lamp", "red")]
    found = lights_of(SHEET, [LightSeen(light=light, pattern=pattern) for light, pattern in looks])
    assert [(each.light, each.as_stated) for each in found] == [("network", None), ("sky", True), ("lamp", None)]
    assert found[2].as_json()["seen"] == "red"
