"""What is asked of a place."""

from __future__ import annotations

import math

from tests.samples.mount import sheet

from backprobe.findings import Standing
from backprobe.stages.mount.wanted import quality_of, quality_words, share_limit


def test_the_standard_where_nothing_is_wanted() -> None:
    """PDOP 6, and 88 % of the day, with their source."""
    assert quality_of(sheet()).pdop_most == 6
    assert (share_limit(sheet()).value, share_limit(sheet()).standing) == (88, Standing.PUBLISHED)
    assert quality_words(sheet()) == "four satellites and PDOP 6 or less"


def test_a_fleets_own_wishes() -> None:
    """An HDOP alone stands alone, beside a PDOP both count; a share of the fleet's own is common practice."""
    alone, both = sheet(hdop_most=2.5), sheet(hdop_most=2.5, pdop_most=4, share_percent=95)
    assert (quality_of(alone).pdop_most, quality_of(alone).hdop_most) == (math.inf, 2.5)
    assert quality_words(both) == "four satellites and PDOP 4 or less and HDOP 2.5 or less"
    limit = share_limit(both)
    assert (limit.value, limit.warrant) == (95, "mount.toml: what this fleet wants (common practice, no source)")
