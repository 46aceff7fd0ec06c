"""What a debounce lets through."""

from backprobe.stages.prove.debounce import Delays, due_from
from backprobe.stages.prove.wirings import Change


def due(*changes, on_s=2.0, off_s=20.0, level=False, clock_s=0.0):
    """What is due of changes at these seconds, negative where the level falls: (seconds, optional)."""
    listed = [Change(on=t > 0, lo_s=abs(t), hi_s=abs(t), row=0) for t in changes]
    delays = Delays(on_s=on_s, off_s=off_s, clock_s=clock_s)
    return [((1 if each.on else -1) * each.lo_s, each.optional) for each in due_from(listed, delays, level=level)]


def test_long_levels_are_reported_late():
    """On after 2 s, off after 20 s."""
    assert due(100, -300) == [(102, False), (-320, False)]


def test_a_short_off_is_never_reported():
    """5 s of off within a debounce of 20 s: neither the off nor the on after it need be there."""
    assert due(100, -300, 305, -500) == [(102, False), (-320, True), (307, True), (-520, False)]


def test_near_the_debounce_nobody_can_say():
    """21 s of off may or may not be reported; with 40 s it must."""
    assert due(100, -300, 321, -500)[1:3] == [(-320, True), (323, True)]
    assert due(100, -300, 340, -500)[1:3] == [(-320, False), (342, False)]


def test_the_clock_is_no_debounce():
    """Of an off that is 80 s late by a clock 60 s ahead, 20 s are the debounce: 40 s of off are reported."""
    assert due(100, -300, 340, -500, on_s=62, off_s=80, clock_s=60)[1] == (-380, False)
    assert due(100, -300, 340, -500, on_s=62, off_s=80)[1] == (-380, True)


def test_the_bare_input_shows_at_once():
    """What is due late may be seen from the change on."""
    [only] = due_from([Change(on=True, lo_s=10, hi_s=10, row=3)], Delays(on_s=2, off_s=20), level=False)
    assert (only.bare_s, only.lo_s, only.row) == (10, 12, 3)
