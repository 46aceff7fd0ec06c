"""The unit's own supply voltage: what its change says, and what its level does not.

The level that a unit reports lies below the battery by its input diode and converter, and by how well it measures:
that is the unit, not the work. The *change* from idle to transmitting is another matter: diode and converter hardly
care, and what is left is the current's change times the resistance of tap, fuse, lead, joints and ground. It is held
against the drop that installers allow a supply under a load of 1 to 2 A, taken at 1 A.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from statistics import median

from backprobe.evidence.supply_pair import SupplyPair
from backprobe.evidence.unit_sheet import UnitSheet
from backprobe.findings import Limit, Verdict, judge, rounded
from backprobe.stages.prove.observed import Stamped

SAID = (
    "supply_V: the level is mostly the unit's own diode and converter; the change from idle to transmitting is joint "
    "and lead"
)
VOLTS_DIGITS = 3
OHM_DIGITS = 2


@dataclass(frozen=True, slots=True)
class Supply:
    """The change [V] with its standard uncertainty, the resistance that it comes to [ohm], and the verdict.

    `level_V` is the median of what the reports say, None where they say nothing. The resistance, its range of
    `spread_ohm` either way and the `limit` are there where the unit's sheet states the currents.
    """

    verdict: Verdict
    level_V: float | None = None
    change_V: float | None = None
    u_V: float | None = None
    loop_ohm: float | None = None
    spread_ohm: float = 0.0
    limit: Limit | None = None

    def as_json(self) -> dict[str, object]:
        """The supply as answered."""
        return {
            "verdict": str(self.verdict),
            "change_V": rounded(self.change_V, VOLTS_DIGITS),
            "u_V": rounded(self.u_V, VOLTS_DIGITS),
            "loop_ohm": rounded(self.loop_ohm, OHM_DIGITS),
            "level_V": rounded(self.level_V, VOLTS_DIGITS),
        }


def supply_of(
    kept: Sequence[Stamped], *, pair: SupplyPair | None, sheet: UnitSheet | None, limit: Limit | None
) -> Supply:
    """What the pair says, by the currents of the unit's sheet; open without either of them.

    Each value may be off by one count either way, as likely anywhere: u = count / √3, twice. The verdict takes the
    range of twice that.
    """
    levels = [report.supply_V for _, report in kept if report.supply_V is not None]
    level_V = median(levels) if levels else None
    if pair is None:
        return Supply(Verdict.OPEN, level_V)
    change_V = pair.idle_V - pair.transmit_V
    u_V = pair.count_V * math.sqrt(2.0 / 3.0)
    step_A = _step_A(sheet)
    if step_A is None or limit is None:
        return Supply(Verdict.OPEN, level_V, change_V, u_V)
    at_1_A, spread = change_V / step_A, 2 * u_V / step_A
    verdict = judge(limit, at_1_A, low=at_1_A - spread, high=at_1_A + spread)
    return Supply(verdict, level_V, change_V, u_V, at_1_A, spread, limit)


def _step_A(sheet: UnitSheet | None) -> float | None:
    """By how much the current rises when the unit transmits [A]; None where its sheet does not say."""
    if sheet is None or sheet.supply.idle_mA is None or sheet.supply.transmit_mA is None:
        return None
    step_mA = sheet.supply.transmit_mA - sheet.supply.idle_mA
    return step_mA / 1000 if step_mA > 0 else None
