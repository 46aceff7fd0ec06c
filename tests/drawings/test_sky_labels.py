"""Words beside marks keep clear of one another."""

from backprobe.drawings.sky_labels import Box, placed


def test_a_lone_word_stands_to_the_right() -> None:
    """At (100, 100) with a mark 7 wide and a gap of 3, a word 20 wide has its middle at 100 + 7 + 3 + 10."""
    assert placed([(100, 100)], [(20, 10)], mark=7, taken=[]) == [Box(120, 100, 20, 10)]


def test_a_word_makes_way_for_a_mark() -> None:
    """With another mark where the word would stand, it goes to the left."""
    first, _ = placed([(100, 100), (120, 100)], [(20, 10), (20, 10)], mark=7, taken=[])
    assert first.x == 80


def test_words_share_no_room() -> None:
    """Six marks in a row, 16 apart: no two words overlap."""
    boxes = placed([(16.0 * n, 50.0) for n in range(6)], [(24, 10)] * 6, mark=7, taken=[])
    pairs = [(a, b) for i, a in enumerate(boxes) for b in boxes[i + 1 :]]
    assert all(a.shared(b) == 0 for a, b in pairs)


def test_no_word_takes_no_room() -> None:
    """A mark without a word gets an empty box and hides nothing."""
    assert placed([(5, 5)], [(0, 10)], mark=7, taken=[]) == [Box(5, 5, 0, 0)]


def test_boxes_share_what_they_share() -> None:
    """Two boxes of 10 by 10, shifted by 4 and 6, share 6 · 4."""
    assert Box(0, 0, 10, 10).shared(Box(4, 6, 10, 10)) == 24
