"""The patterns and their words."""

from backprobe.stages.prove.patterns import INCOMPLETE, LEAST_STRENGTH, WORDS, Pattern, PatternId, ranked


def test_every_pattern_says_what_it_means_and_where_to_look():
    """In sentences."""
    assert set(WORDS) == set(PatternId)
    assert all(text.endswith(".") for words in WORDS.values() for text in (words.means, words.look_at))
    assert set(PatternId) >= INCOMPLETE


def test_the_strongest_comes_first_and_weak_ones_are_not_named():
    """Of equals the order of the list."""
    found = ranked(
        [
            Pattern(PatternId.FLOATING, 0.7),
            Pattern(PatternId.BODY_WAKE, 0.9),
            Pattern(PatternId.NEVER_OFF, 0.7),
            Pattern(PatternId.INVERTED, LEAST_STRENGTH - 0.01),
        ]
    )
    assert [str(pattern.id) for pattern in found] == ["body_wake", "never_off", "floating"]


def test_a_pattern_as_json():
    """Another unit stands there only where there is one."""
    plain = Pattern(PatternId.NEVER_OFF, 0.12345).as_json()
    assert (plain["pattern"], plain["strength"]) == ("never_off", 0.12)
    assert "other_unit" not in plain
    assert Pattern(PatternId.SWAPPED_SERIAL, 1.0, other_unit="L9").as_json()["other_unit"] == "L9"
