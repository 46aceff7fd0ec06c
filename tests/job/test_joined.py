"""The crank that a job's wiring is judged by, out of its recordings."""

from __future__ import annotations

import shutil
from pathlib import Path

from tests.samples.jobs import demo_job

from backprobe.cases.join import join_file
from backprobe.findings import Finding, Verdict


def found(folder: Path) -> dict[str, Finding]:
    """The findings of a job folder by id."""
    return {each.id: each for each in join_file(folder).findings}


def test_the_recorded_crank_is_taken_sample_by_sample(tmp_path: Path):
    """10.387 V less 1.2 A × (2.7 m × 30.1 mΩ/m + fuse 31.1 + joints 4 + ground 12 mΩ) = 10.387 - 0.154 V."""
    volts = found(demo_job(tmp_path, "truck-07"))["join_unit_volts"]
    assert volts.verdict is Verdict.HOLDS
    assert volts.value == 10.23
    assert "crank.csv, the worst crank: 'X12/4 RD' down to 10.387 V" in volts.because


def test_without_a_recording_a_level_is_taken_where_one_is_named(tmp_path: Path):
    """The second truck names level I; without it its MIN hold counts, and without that the crank is asked for."""
    folder = demo_job(tmp_path, "truck-12")
    assert "level I" in found(folder)["join_unit_reset"].because
    sheet = folder / "job.toml"
    sheet.write_text(sheet.read_text(encoding="utf-8").replace('crank_level = "I"\n', ""), encoding="utf-8")
    assert "join_unit_reset" not in found(folder)
    assert "X12/4 RD in the crank: 10.81 V" in found(folder)["join_unit_volts"].because
    table = folder / "readings.csv"
    rows = table.read_text(encoding="utf-8").splitlines(keepends=True)
    table.write_text("".join(row for row in rows if ",crank," not in row), encoding="utf-8")
    without = found(folder)
    assert "join_unit_volts" not in without
    assert "volts of the supply wire in a crank" in without["join_wire_told"].because


def test_the_demo_shows_a_wiring_that_holds_and_one_that_does_not(tmp_path: Path):
    """Poor ground, painted place and a 15 A fuse on 0.5 mm² fail; on the other truck nothing does."""
    assert {each.verdict for each in found(demo_job(tmp_path, "truck-07")).values()} == {Verdict.HOLDS}
    bad = found(demo_job(tmp_path, "truck-12"))
    failing = {name for name, each in bad.items() if each.verdict is Verdict.FAILS}
    assert failing >= {"join_ground_drop", "join_ground_place", "join_ignition_wire_over_fuse", "join_ignition_fuse"}


def uncircuited(tmp_path: Path) -> Path:
    """Truck 7 with its wires named but not identified in the job sheet."""
    folder = demo_job(tmp_path, "truck-07")
    sheet = folder / "job.toml"
    lines = sheet.read_text(encoding="utf-8").splitlines(keepends=True)
    left = [line for line in lines if not line.startswith("circuit = ")]
    assert len(left) == len(lines) - 2
    sheet.write_text("".join(left), encoding="utf-8")
    return folder


def test_circuits_of_the_readings_table_count_at_the_joints(tmp_path: Path):
    """A body-builder connector needs no reason; of a wire that nobody identified it is asked why it was spliced."""
    folder = uncircuited(tmp_path)
    asked = found(folder)["join_order_told"].because
    assert "why 'power' is neither at the body-builder connector nor on a fuse tap" in asked
    table = folder / "readings.csv"
    head, *rows = table.read_text(encoding="utf-8").splitlines()
    feeds = "body-builder connector X12 permanent supply fuse F12"
    rows = [f"{row},{feeds if row.startswith('X12') else ''}" for row in rows]
    table.write_text("\n".join([f"{head},circuit", *rows]), encoding="utf-8")
    order = found(folder)
    assert "join_order_told" not in order
    assert [order[f"join_{lead}_order"].verdict for lead in ("supply", "ignition")] == [Verdict.HOLDS, Verdict.HOLDS]


def test_the_probes_own_two_readings_stand_for_the_drop_at_the_tap(tmp_path: Path):
    """12.40 and 12.29 V under 1.5 A at on: 110 ± (40 + 0.55) mV, 150.55 / 1.425 = 106 mΩ at most; nothing is asked."""
    folder = demo_job(tmp_path, "truck-07")
    sheet = folder / "job.toml"
    lines = sheet.read_text(encoding="utf-8").splitlines(keepends=True)
    sheet.write_text("".join(line for line in lines if not line.startswith("tap_")), encoding="utf-8")
    by_readings = found(folder)
    assert "join_fuse_told" not in by_readings
    clears = by_readings["join_supply_fuse_clears"]
    assert clears.verdict is Verdict.HOLDS
    assert "key on: 12.40 V, and 12.29 V under 1.5 A, up to the tap 73.3 mΩ, 106 mΩ at most" in clears.because
    table = folder / "readings.csv"
    rows = table.read_text(encoding="utf-8").splitlines(keepends=True)
    table.write_text("".join(row for row in rows if ",1.5" not in row), encoding="utf-8")
    assert "tap_drop_mV and tap_load_A" in found(folder)["join_fuse_told"].because


def test_a_min_hold_stands_for_a_crank_that_nobody_recorded(tmp_path: Path):
    """10.81 V by a hold of 100 ms, 9.42 V at worst as the probe has it, less 0.156 V: thin, and nothing is asked."""
    folder = demo_job(tmp_path, "truck-07")
    shutil.rmtree(folder / "recordings")
    assert "volts of the supply wire in a crank" in found(folder)["join_wire_told"].because
    table = folder / "readings.csv"
    held = "X12/4 RD,crank,10.81,min,,\nX12/9 VT,crank,10.70,min,,\n"
    table.write_text(table.read_text(encoding="utf-8") + held, encoding="utf-8")
    by_hold = found(folder)
    assert "join_wire_told" not in by_hold
    volts, ignition = by_hold["join_unit_volts"], by_hold["join_ignition_volts"]
    assert (volts.value, volts.verdict, ignition.value, ignition.verdict) == (10.65, Verdict.THIN, 10.7, Verdict.THIN)
    assert "X12/4 RD in the crank: 10.81 V (9.42 to 10.88), MIN hold of 100 ms" in volts.because
