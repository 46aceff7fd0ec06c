"""The words of a key script."""

from backprobe.evidence.key_turn import BODY_KEYS, IGNITION_KEYS, ScriptKey


def test_every_word_is_a_position_or_something_of_the_body():
    """Off and accessory are positions in which a true ignition is dead; the three of the body move no key."""
    assert {key for key in ScriptKey if key not in IGNITION_KEYS | BODY_KEYS} == {ScriptKey.OFF, ScriptKey.ACCESSORY}
    assert not IGNITION_KEYS & BODY_KEYS
