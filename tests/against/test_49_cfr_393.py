"""The rules for commercial vehicles: 49 CFR part 393, as copies at public addresses print it."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from tests.samples.wiring import SEAT, found, told

from backprobe.findings import Side, Standing, Verdict
from backprobe.limits.windscreen import WINDSCREEN
from backprobe.stages.join.route import ASKED

ROOT = Path(__file__).resolve().parents[2]
MM_PER_IN = 25.4


@pytest.mark.parametrize(
    ("name", "inches", "mm"), [("windscreen_below_top", 8.5, 216.0), ("windscreen_above_bottom", 7.0, 175.0)]
)
def test_the_strips_of_the_windscreen(name: str, inches: float, mm: float):
    """393.60(e)(1)(ii) by 87 FR 12596 (pmta.org/Safety-Director/12646234): 8.5 in and 7 in, printed as 216 and 175 mm.

    The inches are 215.9 and 177.8 mm; the printed millimetres are held, of which the second is the stricter.
    """
    rule = WINDSCREEN[name]
    assert (rule.value, rule.unit, rule.side, rule.standing) == (mm, "mm", Side.AT_MOST, Standing.PUBLISHED)
    assert mm == pytest.approx(inches * MM_PER_IN, rel=0.016)
    assert "393.60(e)(1)(ii)" in rule.basis


def test_the_place_of_antennas_is_from_memory_and_decides_nothing():
    """393.60(e)(1)(i), 6 in, from memory: it is shown, and no unit holds by it."""
    rule = WINDSCREEN["windscreen_antenna"]
    assert rule.standing is Standing.FROM_MEMORY
    assert rule.value == pytest.approx(6 * MM_PER_IN, abs=0.5)
    seat = {"windscreen": True, "in_sight": False, "top_mm": 100.0}
    for looked_up, verdict in ((None, Verdict.OPEN), (True, Verdict.HOLDS)):
        case = told(mount=SEAT.__class__(**{**_answers(), **seat, "safety_technology": looked_up}))
        assert found(case)["mount_windscreen"].verdict is verdict


def _answers() -> dict[str, object]:
    """The good seat's answers by key."""
    return {name: getattr(SEAT, name) for name in SEAT.__slots__}


def test_sheaths_go_all_round():
    """393.28, guidance question 1 (verityrvs.com/es/regs-interps): enclosed on the whole circumference; SAE J1292."""
    assert "49 CFR 393.28 by SAE J1292" in ASKED["sheathed"]
    assert "the whole circumference" in ASKED["sheathed"]


RESERVED = re.compile(r"393\.(?:27|29|31|32|33)(?!\d)")


def test_reserved_sections_are_cited_nowhere():
    """393.27, .29 and .31 to .33 hold nothing (omb.report, part 393 of 2005-10-01): nothing here cites them."""
    places = [*ROOT.glob("src/**/*.py"), *ROOT.glob("docs/**/*.md"), *ROOT.glob("demo/**/*.toml")]
    assert len(places) > 100
    assert [str(path) for path in places if RESERVED.search(path.read_text(encoding="utf-8"))] == []
    assert RESERVED.search("49 CFR 393.27") is not None
