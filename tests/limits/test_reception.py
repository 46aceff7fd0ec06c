"""The limits of reception, each with its basis."""

from backprobe.findings import Side, Standing
from backprobe.limits.reception import RECEPTION


def test_what_a_log_is_held_against() -> None:
    """The figures as written in authorities/reception."""
    assert {name: (limit.value, limit.side) for name, limit in RECEPTION.items()} == {
        "reception_fix_kept": (95.0, Side.AT_LEAST),
        "reception_first_fix": (60.0, Side.AT_MOST),
        "reception_used": (6.0, Side.AT_LEAST),
        "reception_hdop": (2.0, Side.AT_MOST),
        "reception_hdop_p95": (4.0, Side.AT_MOST),
        "reception_cn0": (35.5, Side.AT_LEAST),
        "reception_scatter": (8.0, Side.AT_MOST),
        "reception_sky_told": (10.0, Side.AT_LEAST),
    }


def test_each_has_a_basis() -> None:
    """Nobody's figure says so."""
    assert all(limit.basis for limit in RECEPTION.values())
    assert RECEPTION["reception_fix_kept"].standing is Standing.COMMON_PRACTICE
    assert RECEPTION["reception_scatter"].standing is Standing.FROM_MEMORY
