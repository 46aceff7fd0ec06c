"""What materials take."""

from __future__ import annotations

from backprobe.limits.materials import MATERIALS


def test_least_value_most_in_order() -> None:
    """The value reckoned with lies between the least and the most, and every row says what it rests on."""
    assert all(0 <= row.least_dB <= row.value_dB <= row.most_dB for row in MATERIALS.values())
    assert all(row.id == name and row.basis.text for name, row in MATERIALS.items())


def test_what_the_trade_knows() -> None:
    """Plastic takes nothing, plain glass little, a coated one most of a signal, metal all that a fix can spare."""
    values = [MATERIALS[name].value_dB for name in ("plastic", "glass", "coated_glass", "metal")]
    assert values == sorted(values)
    assert MATERIALS["plastic"].least_dB == 0
    assert MATERIALS["metal"].least_dB > 43.5 - 28  # the strongest satellite falls below the least that a fix needs
