"""A fleet's own policy: tables [join] and [parked] of limits that are tighter than the usual ones."""

from __future__ import annotations

from backprobe.evidence.fleet_policy import FleetPolicy
from backprobe.formats.toml_text import TomlTable, parse_toml
from backprobe.limits.fuses import LOAD_PART, SELECTIVE_TIMES, WIRE_OVER_FUSE
from backprobe.limits.joints import JOINTS
from backprobe.limits.parked import BALANCE
from backprobe.limits.practice import PRACTICE

POLICY = "policy.toml"
KEYS = {
    "": ("join", "parked"),
    "join": (
        *("ground_drop_mV", "joint_drop_mV", "path_drop_mV", "loaded_drop_V"),
        *("wire_over_fuse", "fuse_load_part", "selective_times", "unit_margin_V"),
    ),
    "parked": ("wanted_days", "balance_V"),
}
NEVER_LOOSER = "a policy may tighten a limit, never loosen it"
PATH_DROP_MV = JOINTS["wire_drop"].value + JOINTS["ground_drop"].value
MOST_FACTOR, MOST_MARGIN_V, MOST_DAYS = 10.0, 20.0, 3650.0


def read_policy(text: str, file: str) -> FleetPolicy:
    r"""The policy that the TOML `text` holds. Raises UnreadableError, with the line, where it would loosen a limit.

    >>> read_policy('[join]\nground_drop_mV = 50', "fleet.toml").ground_drop_mV
    50.0
    """
    sheet = parse_toml(text, file=file)
    sheet.only(KEYS)
    join, parked = sheet.table_of("join"), sheet.table_of("parked")
    join.only(KEYS)
    parked.only(KEYS)
    return FleetPolicy(
        file=file,
        ground_drop_mV=_within(join, "ground_drop_mV", least=0.0, most=JOINTS["ground_drop"].value),
        joint_drop_mV=_within(join, "joint_drop_mV", least=0.0, most=JOINTS["joint_drop"].value),
        path_drop_mV=_within(join, "path_drop_mV", least=0.0, most=PATH_DROP_MV),
        loaded_drop_V=_within(join, "loaded_drop_V", least=0.0, most=PRACTICE["supply_loaded_drop"][12].value),
        wire_over_fuse=_within(join, "wire_over_fuse", least=WIRE_OVER_FUSE, most=MOST_FACTOR),
        fuse_load_part=_within(join, "fuse_load_part", least=0.01, most=LOAD_PART),
        selective_times=_within(join, "selective_times", least=SELECTIVE_TIMES, most=MOST_FACTOR),
        unit_margin_V=_within(join, "unit_margin_V", least=0.0, most=MOST_MARGIN_V),
        wanted_days=_within(parked, "wanted_days", least=0.1, most=MOST_DAYS),
        balance_V=_within(parked, "balance_V", least=0.0, most=BALANCE.value),
    )


def _within(table: TomlTable, key: str, *, least: float, most: float) -> float | None:
    """The number of `key`; outside the bounds it would loosen the limit that stands without it, or make no sense."""
    value = table.values.get(key)
    if isinstance(value, int | float) and not isinstance(value, bool) and not least <= value <= most:
        raise table.refuse(key, f"{least:g} to {most:g}: {NEVER_LOOSER}")
    return table.number_of(key, least=least, most=most)
