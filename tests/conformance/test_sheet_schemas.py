"""The JSON Schemas of job sheet, unit sheet and meter say the same as the readers."""

import copy
import datetime
import json
import math
import tomllib
from pathlib import Path

import pytest

from backprobe.errors import UnreadableError
from backprobe.formats.job_toml import KEYS as JOB_KEYS
from backprobe.formats.job_toml import read_job
from backprobe.formats.meter_toml import KEYS as METER_KEYS
from backprobe.formats.meter_toml import read_meter
from backprobe.formats.mount_toml import KEYS as MOUNT_KEYS
from backprobe.formats.mount_toml import read_mount
from backprobe.formats.unit_sheet import KEYS as UNIT_KEYS
from backprobe.formats.unit_sheet import read_unit_sheet
from backprobe.formats.walkround_toml import KEYS as WALKROUND_KEYS
from backprobe.formats.walkround_toml import read_walkround

jsonschema = pytest.importorskip("jsonschema", reason="jsonschema is not installed")

ROOT = Path(__file__).resolve().parents[2]
SAMPLES = ROOT / "tests" / "samples"
KINDS = {
    "job_sheets": (read_job, "job.schema.json", JOB_KEYS),
    "unit_sheets": (read_unit_sheet, "unit-sheet.schema.json", UNIT_KEYS),
    "walkrounds": (read_walkround, "walkround.schema.json", WALKROUND_KEYS),
    "meters": (read_meter, "meter.schema.json", METER_KEYS),
    "mounts": (read_mount, "mount.schema.json", MOUNT_KEYS),
}
# what a schema cannot say: comparisons between values, and names that must agree or differ
READER_ONLY = {
    "job_sheets/wire-twice",
    "job_sheets/joint-twice",
    "job_sheets/input-twice",
    "job_sheets/photo-twice",
    "job_sheets/join-level-four-at-24",
    "mounts/place-twice",
    "mounts/chosen-not-there",
    "mounts/part-with-no-width",
    "mounts/part-upside-down",
    "walkrounds/photo-twice",
    "walkrounds/lamps-none-and-one",
    "unit_sheets/supply-upside-down",
    "unit_sheets/lead-twice",
    "unit_sheets/input-without-lead",
    "unit_sheets/input-on-the-supply-lead",
    "unit_sheets/thresholds-upside-down",
}
ALL = sorted(path for kind in KINDS for path in (SAMPLES / kind).glob("*.toml"))
ODD_VALUES = [
    *("", "  ", "word", " min ", "RD", "RDBU", "0.75 mm2", "18 AWG", "basic", "up", "supply"),
    *(0, 1, -1, 12, 12.0, 12.5, 24, 2019, 10**30, 1e300, True, False),
    *([], ["a"], ["a", 1], ["min"], {}, {"a": 1}, datetime.date(2026, 3, 31), datetime.time(7, 45)),
]


def validator(kind):
    """The validator of a kind's schema."""
    schema = json.loads((ROOT / "schemas" / KINDS[kind][1]).read_text(encoding="utf-8"))
    return jsonschema.Draft202012Validator(schema)


def reads(kind, text):
    """Whether the reader takes the text."""
    try:
        KINDS[kind][0](text, "sheet.toml")
    except UnreadableError:
        return False
    return True


def as_json(value, key=""):
    """A TOML value as JSON has it: the date as text; what JSON cannot hold as null, which no schema takes."""
    if isinstance(value, dict):
        return {name: as_json(entry, name) for name, entry in value.items()}
    if isinstance(value, list):
        return [as_json(entry) for entry in value]
    if isinstance(value, datetime.date):
        return value.isoformat() if key in ("date", "until") else None
    unheld = isinstance(value, datetime.time) or (isinstance(value, float) and not math.isfinite(value))
    return None if unheld else value


def as_toml(value):
    """A value as TOML has it, tables inline."""
    if isinstance(value, dict):
        return "{" + ", ".join(f"{json.dumps(key)} = {as_toml(entry)}" for key, entry in value.items()) + "}"
    if isinstance(value, list):
        return "[" + ", ".join(as_toml(entry) for entry in value) + "]"
    if isinstance(value, datetime.date | datetime.time):
        return value.isoformat()
    return json.dumps(value, ensure_ascii=False)


@pytest.mark.parametrize("path", ALL, ids=lambda path: f"{path.parent.name}/{path.stem}")
def test_good_samples_pass_both_and_defects_fail_both(path):
    """Samples called good-… are taken by reader and schema; all others, named for their defect, by neither."""
    kind, good = path.parent.name, path.stem.startswith("good-")
    text = path.read_text(encoding="utf-8-sig")
    assert reads(kind, text) == good
    try:
        values = as_json(tomllib.loads(text))
    except tomllib.TOMLDecodeError:
        assert not good
        return
    assert validator(kind).is_valid(values) == (good or f"{kind}/{path.stem}" in READER_ONLY)


def test_each_kind_has_good_and_bad_samples():
    """The test above is not empty."""
    for kind in KINDS:
        names = [path.stem for path in ALL if path.parent.name == kind]
        assert sum(name.startswith("good-") for name in names) >= 2
        assert sum(not name.startswith("good-") for name in names) >= 8


def places(kind):
    """Every key of a kind's good-full sample: (table, key), table '' for keys above all headers."""
    return [(table, key) for table, keys in KINDS[kind][2].items() for key in keys]


@pytest.mark.parametrize(
    ("kind", "table", "key"), [(kind, *place) for kind in KINDS for place in places(kind)], ids=str
)
def test_reader_and_schema_agree_on_every_odd_value(kind, table, key):
    """Each key in turn is given values of every kind, and left out: the reader takes what the schema takes."""
    full = tomllib.loads((SAMPLES / kind / "good-full.toml").read_text(encoding="utf-8"))
    schema = validator(kind)
    for value in [None, *ODD_VALUES]:
        sheet = copy.deepcopy(full)
        holder = held(sheet, table)
        holder.pop(key, None)
        if value is not None:
            holder[key] = value
        if compares_values(kind, sheet):
            continue
        text = "\n".join(f"{json.dumps(name)} = {as_toml(entry)}" for name, entry in sheet.items())
        assert reads(kind, text) == schema.is_valid(as_json(sheet)), (key, value)


def held(sheet, table):
    """The table of a sheet, '' for the sheet itself, 'a.b' for b in a; of a list of tables the first."""
    for name in table.split(".") if table else ():
        sheet = sheet[name][0] if isinstance(sheet[name], list) else sheet[name]
    return sheet


def compares_values(kind, sheet):
    """Whether a sheet breaks a rule that compares values, which a schema cannot say."""
    if kind == "mounts":
        return sheet.get("chosen", "") not in ("", *(place.get("name") for place in tables(sheet.get("place"))))
    if kind != "unit_sheets":
        return False
    leads, inputs = tables(sheet.get("lead")), tables(sheet.get("input"))
    pairs = [(entry.get("low_most_V"), entry.get("high_least_V")) for entry in inputs]
    pairs += [(entry.get("least_V"), entry.get("most_V")) for entry in tables([sheet.get("supply")])]
    crossed = any(isinstance(a, int | float) and isinstance(b, int | float) and a >= b for a, b in pairs)
    names = [lead.get("name") for lead in leads]
    fed = [lead.get("name") for lead in leads if lead.get("purpose") in ("ignition", "input")]
    unnamed = any(entry.get("name") not in fed for entry in inputs)
    return crossed or unnamed or any(names.count(name) > 1 for name in names)


def tables(value):
    """The tables in a list of them; none where it is no list."""
    return [entry for entry in value if isinstance(entry, dict)] if isinstance(value, list) else []
