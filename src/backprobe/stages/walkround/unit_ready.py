"""Is the unit ready on the bench? If it is not, the dash stays shut."""

from __future__ import annotations

from collections.abc import Iterator

from backprobe.evidence.meter import Meter
from backprobe.evidence.walkround import Bench
from backprobe.findings import Finding, Limit, Side, Standing, Verdict, judge
from backprobe.physics.meter import accuracy_V
from backprobe.stages.walkround.doubts import Doubt, Matter, not_said, wrong

READY = Matter("unit_ready", "Unit on the bench")
BACKUP = Matter("unit_backup", "Backup battery of the unit")
SHUT = "the dash stays shut: "
CHARGE = SHUT + "charge the unit's battery and measure again, or take another unit"
MEASURE_AGAIN = "measure the unit's backup battery again with a more exact meter, or charge it first"
SURE_DIGITS = 6  # of volts: what floats add behind them must decide nothing
BASIS = "what the unit's maker states, as the walkround gives it"


def unit_ready(bench: Bench, sheet_serial: str | None, *, meter: Meter) -> tuple[Finding, ...]:
    """Whether the unit is the sheet's, activated, of the firmware that is wanted, its battery well, its lights seen.

    Where the backup battery does not hold, it has a finding of its own, with its figures; all else is one finding.
    """
    doubts = [*_serial(bench, sheet_serial), *_state(bench), *_firmware(bench), *_backup_said(bench)]
    battery = _backup(bench, meter)
    if battery is None:
        return (READY.finding(doubts, well=f"unit ready: firmware {bench.firmware}"),)
    if battery.verdict is not Verdict.HOLDS:
        return (READY.finding(doubts, well=f"all but its backup battery is well: firmware {bench.firmware}"), battery)
    return (READY.finding(doubts, well=f"unit ready: firmware {bench.firmware}, {_figures(bench, meter)}"),)


def _figures(bench: Bench, meter: Meter) -> str:
    """The backup battery's voltage with what the meter's accuracy leaves, and the least that it must have."""
    volts, least_V = bench.backup_V or 0.0, bench.backup_least_V or 0.0
    return f"backup {volts:.15g} ± {_spread_V(volts, meter):.2f} V (≥ {least_V:.15g} V)"


def _serial(bench: Bench, sheet_serial: str | None) -> Iterator[Doubt]:
    if bench.serial is None:
        yield not_said("its serial number was not read", SHUT + "read the serial number on the unit itself")
    elif sheet_serial is None:
        then = f"write the serial number {bench.serial} into the job sheet"
        yield not_said(f"serial number {bench.serial}; the job sheet has none", then)
    elif _plain(bench.serial) != _plain(sheet_serial):
        said = f"serial number {sheet_serial} on the sheet, {bench.serial} on the unit"
        yield wrong(said, SHUT + "take the unit that was meant for this vehicle, or put the job sheet right")


def _state(bench: Bench) -> Iterator[Doubt]:
    if bench.activated is False:
        yield wrong("it is not activated", SHUT + "have the unit activated, or take one that is")
    elif bench.activated is None:
        yield not_said("whether it is activated is not said", SHUT + "see that the unit is activated (activated)")
    if bench.lights is None:
        yield not_said(
            "what its lights showed is not said", SHUT + "power it on the bench and write what its lights do"
        )
    elif not bench.lights:
        yield wrong("none of its lights came on", SHUT + "take another unit")


def _firmware(bench: Bench) -> Iterator[Doubt]:
    if bench.firmware is None or bench.firmware_wanted is None:
        which = "its firmware" if bench.firmware is None else "which firmware it should have"
        yield not_said(f"{which} is not said", SHUT + "write firmware and firmware_wanted under [unit]")
    elif _plain(bench.firmware) != _plain(bench.firmware_wanted):
        said = f"firmware {bench.firmware}, {bench.firmware_wanted} is wanted"
        yield wrong(said, SHUT + "have the unit brought to the firmware that is wanted")


def _backup_said(bench: Bench) -> Iterator[Doubt]:
    if bench.backup is False:
        return
    if bench.backup_V is None:
        said = SHUT + "measure its backup battery (backup_V); backup = false for a unit without one"
        yield not_said("its backup battery was not measured", said)
    elif bench.backup_least_V is None:
        then = SHUT + "write the lowest voltage that the unit's maker allows (backup_least_V)"
        yield not_said(f"its backup battery shows {bench.backup_V:.15g} V; the least it must have is not said", then)


def _backup(bench: Bench, meter: Meter) -> Finding | None:
    """The backup battery's voltage against the least that the maker states [V]; None where either is not known."""
    volts, least_V = bench.backup_V, bench.backup_least_V
    if bench.backup is False or volts is None or least_V is None:
        return None
    rule = Limit("unit_backup_least", least_V, "V", Side.AT_LEAST, BASIS, Standing.PUBLISHED)
    spread_V = _spread_V(volts, meter)
    low_V, high_V = (round(end, SURE_DIGITS) for end in (volts - spread_V, volts + spread_V))
    verdict = judge(rule, volts, low=low_V, high=high_V)
    return Finding(
        id=BACKUP.id,
        stage=BACKUP.stage,
        what=BACKUP.what,
        verdict=verdict,
        because="measured on the bench",
        next=CHARGE if verdict is Verdict.FAILS else MEASURE_AGAIN,
        value=volts,
        low=low_V,
        high=high_V,
        unit="V",
        limit=rule,
    )


def _spread_V(volts: float, meter: Meter) -> float:
    """Half the range that the meter's accuracy leaves [V].

    A final 0 is lost in TOML (3.90 reads as 3.9), so the last digit is at worst taken ten times too coarse.
    """
    decimals = len(f"{volts:.15g}".partition(".")[2])
    return accuracy_V(volts, percent=meter.percent, counts=meter.counts, count_V=10.0**-decimals)


def _plain(text: str) -> str:
    return "".join(text.split()).casefold()
