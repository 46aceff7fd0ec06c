"""The open sky's curve against a receiver's log of 8 April 2007.

Source: gpsd 3.22, test/daemon/haicom-305N.log (BSD-2): a receiver outdoors, 27° S, stationary and then walked about.
"""

from __future__ import annotations

import re
from collections import defaultdict
from pathlib import Path
from statistics import median

import pytest

from backprobe.stages.mount.heard import open_sky_dBHz

VIEW = re.compile(r"\$GPGSV,\d+,\d+,\d+,([^*]*)\*")


def test_the_curve_is_how_a_receiver_hears_the_sky(shared_data: Path) -> None:
    """By tens of degrees from 10° to 60° the medians of its signals are within 3 dB of the curve in their middle."""
    heard: defaultdict[int, list[int]] = defaultdict(list)
    for line in (shared_data / "nmea" / "haicom-305N.log").read_text(encoding="latin-1").splitlines():
        for told in VIEW.findall(line):
            cells = told.split(",")
            for at in range(0, len(cells) - 3, 4):
                if cells[at + 1].isdigit() and cells[at + 3].isdigit():
                    heard[int(cells[at + 1]) // 10].append(int(cells[at + 3]))
    tens = {ten: median(levels) for ten, levels in heard.items() if 1 <= ten <= 6}
    assert sorted(tens) == [1, 2, 3, 4, 5, 6]
    for ten, level in tens.items():
        assert level == pytest.approx(open_sky_dBHz(10 * ten + 5), abs=3.0)
