"""What a vehicle at rest is held against."""

from __future__ import annotations

from backprobe.findings import Limit, Side, Standing

ASLEEP = Limit(
    id="parked_asleep",
    value=20.0,
    unit="min",
    side=Side.AT_LEAST,
    basis="two makers' workshop manuals of cars: modules time out within 20 min; a repair site waits 60",
    standing=Standing.PUBLISHED,
)
BALANCE = Limit(
    id="parked_balance",
    value=0.1,
    unit="V",
    side=Side.AT_MOST,
    basis="two batteries in series at rest; a tenth of the charge is 0.08 V",
    standing=Standing.COMMON_PRACTICE,
)
