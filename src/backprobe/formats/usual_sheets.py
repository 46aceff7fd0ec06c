"""The sheets of one vehicle reduced to what another of its type may take over: choices, and what is of the type.

What was measured or seen on the one vehicle stays out, as do its number, its place, people's names, and remarks.
"""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence

from backprobe.evidence.job_sheet import NamedWire
from backprobe.formats.job_as_built import KEYS as AS_BUILT_KEYS
from backprobe.formats.job_join import KEYS as JOIN_KEYS
from backprobe.formats.job_parked import KEYS as PARKED_KEYS
from backprobe.formats.toml_text import parse_toml
from backprobe.formats.toml_written import written_toml

# what was measured, tried or happened on that one vehicle, or is about how and where it stood
_ITS_OWN: Mapping[str, frozenset[str]] = {
    "joint": frozenset({"pull_N", "tugged", "drop_mV", "drop_A"}),
    "input": frozenset({"on_V", "off_V", "reported_on", "reported_off"}),
    "join": frozenset({"tap_drop_mV", "tap_load_A", "pierced", "spread", "why_spliced"}),
    "ground": frozenset({"drop_mV", "load_A"}),
    "mount": frozenset(),
    "route": frozenset(),
    "battery": frozenset({"age_years", "rest_V", "hours_since_charge", "temperature_C"}),
    "parked": frozenset({"vehicle_drain_mA", "minutes_after_lock"}),
}
_KEYS = {**AS_BUILT_KEYS, **JOIN_KEYS, **PARKED_KEYS}
JOB_KEPT: Mapping[str, tuple[str, ...]] = {
    **{name: tuple(key for key in _KEYS[name] if key not in own) for name, own in _ITS_OWN.items()},
    "hand_over": ("told_driver",),
    "unit": ("sheet",),  # of which kind: a firmware is taken over for the same kind alone
}
WALKROUND_KEPT: Mapping[str, tuple[str, ...]] = {
    "unit": ("firmware", "firmware_wanted", "backup_least_V", "lights"),
    "hazards": (
        *("high_voltage", "dual_batteries", "battery_switch", "battery_switch_side", "after_run_min"),
        "system_48V",
    ),
}
MOUNT_KEPT = ("chosen", "wanted", "place")  # not where the front pointed


def usual_job(text: str, wires: Sequence[NamedWire]) -> str:
    """What is kept of a job sheet, with those of `wires` that were chosen for a lead or stand in a joint.

    Raises UnreadableError for a text that is not TOML.
    """
    values = parse_toml(text, file="job.toml").values
    kept = _kept(values, JOB_KEPT)
    joints = kept.get("joint", [])
    joined = {_plain(str(one["wire"])) for one in joints if "wire" in one} if isinstance(joints, list) else set()
    chosen = [_wire(wire) for wire in wires if wire.lead is not None or _plain(wire.name) in joined]
    return written_toml({**kept, "wire": chosen} if chosen else kept)


def usual_walkround(text: str) -> str:
    """What is kept of a walkround. Raises UnreadableError for a text that is not TOML."""
    return written_toml(_kept(parse_toml(text, file="walkround.toml").values, WALKROUND_KEPT))


def usual_mount(text: str) -> str:
    """What is kept of the sheet of places. Raises UnreadableError for a text that is not TOML."""
    values = parse_toml(text, file="mount.toml").values
    return written_toml({key: values[key] for key in MOUNT_KEPT if key in values})


def _kept(values: Mapping[str, object], kept: Mapping[str, Collection[str]]) -> dict[str, object]:
    found: dict[str, object] = {}
    for name, keys in kept.items():
        table = values.get(name)
        if isinstance(table, dict) and any(key in table for key in keys):
            found[name] = _row(table, keys)
        elif isinstance(table, list):
            found[name] = [_row(row, keys) for row in table if isinstance(row, dict)]
    return found


def _row(row: Mapping[str, object], keys: Collection[str]) -> dict[str, object]:
    return {key: row[key] for key in keys if key in row}


def _wire(wire: NamedWire) -> dict[str, object]:
    circuit = wire.circuits[0] if len(wire.circuits) == 1 else list(wire.circuits) or None
    said = {"name": wire.name, "lead": wire.lead, "circuit": circuit}
    said |= {name: getattr(wire, name) for name in ("connector", "cavity", "colour", "size")}
    return {name: value for name, value in said.items() if value is not None}


def _plain(name: str) -> str:
    return "".join(name.split()).casefold()
