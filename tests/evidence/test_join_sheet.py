"""What was written down beside the joints."""

from __future__ import annotations

from dataclasses import fields

import pytest

from backprobe.evidence.join_sheet import Drop, JoinSheet, Mount, Route, SignalLevels


@pytest.mark.parametrize("empty", [JoinSheet(), Mount(), Route()])
def test_nothing_said_is_nothing_known(empty):
    """No key has a value that nobody wrote; a missing answer is never 'no'."""
    assert all(getattr(empty, field.name) in (None, ()) for field in fields(empty))


def test_a_drop_goes_with_its_load():
    """Millivolts alone say nothing: 340 mV at 2 A is 170 mΩ."""
    drop = Drop(340.0, 2.0)
    assert drop.drop_mV / drop.load_A == 170.0


def test_levels_belong_to_a_lead():
    """A signal without its lead cannot be judged."""
    with pytest.raises(TypeError):
        SignalLevels(on_V=12.0)
