"""Make limits/constellation.py, limits/materials.py and limits/sky.py from authorities/gps-sps-ps and authorities/sky.

Run ``python builders/build_sky.py`` after a change there; ``--check`` only says whether that was done.
"""

from __future__ import annotations

from build_limits import MARK, SIDES, STANDINGS
from generated import quoted, rows, settle

MARK_SKY = MARK.replace("build_limits", "build_sky")
CONSTELLATION_HEAD = '''"""The 24 slots of the nominal GPS constellation: node, argument of latitude [degrees]."""

from __future__ import annotations

'''
MATERIALS_HEAD = '''"""What materials take from a satellite's signal at 1575 MHz: at least, reckoned with, at most."""

from __future__ import annotations

from backprobe.findings import Standing
from backprobe.limits.material import Material
from backprobe.limits.sourced import Basis

MATERIALS: dict[str, Material] = {
'''
SKY_HEAD = '''"""What a fix needs, and how strongly an open sky is heard."""

from __future__ import annotations

from backprobe.findings import Limit, Side, Standing

SKY: dict[str, Limit] = {
'''


def constellation_source(slots: str, constants: str) -> str:
    """The text of limits/constellation.py."""
    lines = [f"{row['id'].upper()}_{row['unit'].upper()} = {float(row['value'])}" for row in rows(constants)]
    basis = quoted("GPS SPS Performance Standard, 5th edition, April 2020, table 3.2-1, read in a secondary document")
    lines += [f"BASIS = {basis}", "", "SLOTS: dict[str, tuple[float, float]] = {"]
    lines += [
        f"    {quoted(row['slot'])}: ({float(row['node_deg'])}, {float(row['latitude_deg'])})," for row in rows(slots)
    ]
    return "\n".join([MARK_SKY.format(table=slots), CONSTELLATION_HEAD + "\n".join([*lines, "}", ""])])


def material_source(row: dict[str, str]) -> str:
    """One entry of the table of materials."""
    figures = (f"        {name}={float(row[name])}," for name in ("least_dB", "value_dB", "most_dB"))
    return "\n".join(
        [
            f"    {quoted(row['id'])}: Material(",
            f"        id={quoted(row['id'])},",
            f"        what={quoted(row['what'])},",
            *figures,
            "        basis=Basis(",
            f"            {quoted(row['basis'])},",
            f"            {STANDINGS[row['standing']]},",
            "        ),",
            "    ),\n",
        ]
    )


def materials_source(table: str) -> str:
    """The text of limits/materials.py."""
    entries = "".join(material_source(row) for row in rows(table))
    return f"{MARK_SKY.format(table=table)}\n{MATERIALS_HEAD}{entries}}}\n"


def limit_source(row: dict[str, str]) -> str:
    """One entry of the table of limits."""
    return "\n".join(
        [
            f"    {quoted(row['id'])}: Limit(",
            f"        {quoted(row['id'])},",
            f"        {float(row['value'])},",
            f"        {quoted(row['unit'])},",
            f"        {SIDES[row['side']]},",
            f"        {quoted(row['basis'])},",
            f"        {STANDINGS[row['standing']]},",
            "    ),\n",
        ]
    )


def sky_source(table: str, curve: str) -> str:
    """The text of limits/sky.py."""
    entries = "".join(limit_source(row) for row in rows(table))
    points = ", ".join(f"({float(row['elevation_deg'])}, {float(row['cn0_dBHz'])})" for row in rows(curve))
    told = (
        "# elevation [degrees] and C/N0 [dB-Hz] of a small upright antenna in the open; straight lines between: our own"
    )
    return (
        f"{MARK_SKY.format(table=table)}\n{SKY_HEAD}{entries}}}\n\n"
        f"{told} model\nOPEN_SKY: tuple[tuple[float, float], ...] = ({points})\n"
    )


if __name__ == "__main__":
    raise SystemExit(
        settle(
            {
                "src/backprobe/limits/constellation.py": constellation_source(
                    "gps-sps-ps/slots-2020.csv", "gps-sps-ps/constants.csv"
                ),
                "src/backprobe/limits/materials.py": materials_source("sky/materials.csv"),
                "src/backprobe/limits/sky.py": sky_source("sky/limits.csv", "sky/open-sky.csv"),
            }
        )
    )
