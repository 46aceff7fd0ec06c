"""The kinds of entries, and what the body of each holds.

A kind names what makes two entries the same row (`identity`) and what may change in that row (`content`). Whatever
else stands in a body, such as the line it was found on, may differ without the row having changed.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass

from backprobe.job.canonical import Body, Json
from backprobe.job.entry import is_sha256

CORRECTION = "correction"  # {replaces: id or ids, kind, body}: stands in the place of what it names
WITHDRAWN = "withdrawn"  # {entry: id or ids, why}: nothing stands in the place of what it names any more
ERASED = "erased"  # {blobs: digests, why}: these files were deleted on purpose
ROWS_MOVED = "rows_moved"  # {file, moved: [[id, place], …]}: rows stand elsewhere in their file, unchanged
SIGN_OFF = "sign_off"  # what somebody puts a name to; see job/sign_off.py
RECEPTION = "reception"  # what a receiver heard where it sits; see job/receptions.py
UNIT_CLAIMED = "unit_claimed"  # the server says: this job has the unit
UNIT_REFUSED = "unit_refused"  # the server says: it is in another vehicle

# the files of a job folder that a proof rests on
SCRIPT, REPORTS, LIGHTS = "key-script.csv", "reports.csv", "lights.csv"

BUS_LOG = "bus_log"  # a log of the vehicle's bus, and what it came to; see job/bus.py


@dataclass(frozen=True, slots=True)
class Kind:
    """`identity` and `content` name fields of the body; `fields` says what each must be (a key of `FIELD_TYPES`)."""

    identity: tuple[str, ...]
    content: tuple[str, ...]
    fields: Mapping[str, str]


_FILE = {"file": "text", "sha256": "sha256", "bytes": "whole"}
_ROW = {"file": "text or nothing", "line": "whole or nothing"}
_LISTED = {"file": "text or nothing", "order": "whole or nothing"}

KINDS: Mapping[str, Kind] = {
    "job": Kind((), ("file", "sha256"), _FILE | {"vin": "text or nothing", "serial": "text or nothing"}),
    "unit_sheet": Kind((), ("file", "sha256"), _FILE),
    "meter_sheet": Kind((), ("file", "sha256"), _FILE),
    "walkround": Kind((), ("file", "sha256"), _FILE),
    "mount": Kind((), ("file", "sha256"), _FILE),
    "policy": Kind((), ("file", "sha256"), _FILE),
    "readings_file": Kind(("file",), ("sha256",), _FILE),
    "recording": Kind(("file",), ("sha256",), _FILE | {"stored": "yes or no"}),
    "photo": Kind(("file",), ("sha256", "shows"), _FILE | {"stored": "yes or no", "shows": "text or nothing"}),
    "script_file": Kind(("file",), ("sha256",), _FILE),
    "lights_file": Kind(("file",), ("sha256",), _FILE),
    "reports": Kind(("file",), ("sha256",), _FILE | {"stored": "yes or no"}),
    RECEPTION: Kind(("file",), ("sha256",), _FILE | {"stored": "yes or no", "figures": "table"}),
    "person": Kind(("sha256",), (), {"sha256": "sha256"}),
    BUS_LOG: Kind(("file",), ("sha256",), _FILE | {"stored": "yes or no", "heard": "table"}),
    "claim": Kind(("slot",), ("value",), {"slot": "text", "value": "text"}),
    UNIT_CLAIMED: Kind(("serial",), ("vehicle",), {"serial": "text", "vehicle": "text or nothing"}),
    UNIT_REFUSED: Kind(
        ("serial",), ("held_by", "vehicle"), {"serial": "text", "held_by": "text", "vehicle": "text or nothing"}
    ),
    "reading": Kind(
        ("file", "wire", "key", "capture"),
        ("volts", "after_min", "load_A"),
        _ROW
        | {"wire": "text", "key": "text", "volts": "text", "capture": "text"}
        | {"after_min": "text or nothing", "load_A": "text or nothing"},
    ),
    # rows of a script have no name: the first that changed corrects the first that is left, whatever changed in it
    "key_turn": Kind(("file",), ("t", "key"), _ROW | {"t": "text", "key": "text"}),
    "light_seen": Kind(
        ("file", "light"),
        ("pattern", "after_s"),
        _ROW | {"light": "text", "pattern": "text", "after_s": "text or nothing"},
    ),
    "wire_declared": Kind(("file", "wire"), (), _LISTED | {"wire": "text"}),
    "circuit": Kind(
        ("file", "wire"),
        ("circuit", "marks"),
        _LISTED | {"wire": "text", "circuit": "text or nothing", "marks": "texts or nothing"},
    ),
    "absent_key": Kind(("file", "key"), (), {"file": "text or nothing", "key": "text"}),
    "unread": Kind(("file", "wire", "key"), (), _LISTED | {"wire": "text", "key": "text"}),
    "skipped_line": Kind(("file", "text"), (), _ROW | {"file": "text", "text": "text or nothing", "expected": "text"}),
}

_CONTROLS: Mapping[str, Mapping[str, str]] = {
    CORRECTION: {"replaces": "ids", "kind": "text", "body": "table"},
    WITHDRAWN: {"entry": "ids", "why": "text or nothing"},
    ERASED: {"blobs": "digests", "why": "text or nothing"},
    ROWS_MOVED: {"file": "text", "moved": "places"},
    SIGN_OFF: {"end": "text", "verdict": "text", "heads": "heads", "entries": "whole"}
    | dict.fromkeys(("entries_sha256", "order_sha256", "findings_sha256", "hand_over_sha256"), "sha256")
    | {"engine_sha256": "sha256 or nothing", "limits_sha256": "sha256", "unit_sheet_sha256": "sha256"}
    | {"key": "sha256", "fingerprint": "sha256", "signature": "signature"},
}
_SIGNATURE = re.compile(r"[0-9a-f]{128}", re.ASCII)  # small letters only: a signature is written in one way


def _is_place(value: Json) -> bool:
    return isinstance(value, list) and len(value) == 2 and isinstance(value[0], str) and isinstance(value[1], int)


def _is_head(value: Json) -> bool:
    """Whether `value` is a device's last entry: its name, number and digest."""
    if not isinstance(value, list) or len(value) != 3:
        return False
    device, seq, last = value
    return _is_text(device) and device != "" and _is_whole(seq) and seq != 0 and is_sha256(last)


def _are(test: Callable[[Json], bool]) -> Callable[[Json], bool]:
    return lambda value: isinstance(value, list) and all(test(item) for item in value)


def _is_text(value: Json) -> bool:
    return isinstance(value, str)


def _is_whole(value: Json) -> bool:
    return isinstance(value, int) and not isinstance(value, bool) and value >= 0


FIELD_TYPES: Mapping[str, Callable[[Json], bool]] = {
    "text": lambda value: isinstance(value, str) and value != "",
    "text or nothing": lambda value: value is None or isinstance(value, str),
    "texts or nothing": lambda value: value is None or _are(_is_text)(value),
    "whole": _is_whole,
    "whole or nothing": lambda value: value is None or _is_whole(value),
    "yes or no": lambda value: value is None or isinstance(value, bool),
    "sha256": is_sha256,
    "sha256 or nothing": lambda value: value is None or is_sha256(value),
    "signature": lambda value: isinstance(value, str) and _SIGNATURE.fullmatch(value) is not None,
    "heads": lambda value: value != [] and _are(_is_head)(value),
    "digests": _are(is_sha256),
    "ids": lambda value: (isinstance(value, str) and value != "") or (value != [] and _are(_is_text)(value)),
    "table": lambda value: isinstance(value, dict),
    "places": _are(_is_place),
}


def misfit(kind: str, body: Body) -> str | None:
    """Why `body` cannot be understood as a body of `kind`; None where it can.

    >>> misfit("claim", {"slot": "vin"})
    'value: expected text'
    >>> misfit("claim", {"slot": "vin", "value": "1M8GDM9AXKP042788"}) is None
    True
    """
    known = KINDS.get(kind)
    fields = known.fields if known else _CONTROLS.get(kind)
    if fields is None:
        return f"the kind {kind!r} is not known to this version"
    wrong = (
        f"{name}: expected {expected}" for name, expected in fields.items() if not FIELD_TYPES[expected](body.get(name))
    )
    return next(wrong, None)


def text(body: Body, name: str) -> str | None:
    """The text that `body` holds under `name`, None where it holds none."""
    value = body.get(name)
    return value if isinstance(value, str) else None


def texts(body: Body, name: str) -> tuple[str, ...]:
    """The texts that `body` holds under `name`; one text counts as a list of one."""
    value = body.get(name)
    items = value if isinstance(value, list) else [value]
    return tuple(item for item in items if isinstance(item, str))


def whole(body: Body, name: str) -> int | None:
    """The whole number that `body` holds under `name`, None where it holds none."""
    value = body.get(name)
    return value if isinstance(value, int) and not isinstance(value, bool) else None


def table(body: Body, name: str) -> Body:
    """The table that `body` holds under `name`, empty where it holds none."""
    value = body.get(name)
    return value if isinstance(value, dict) else {}


def identity(kind: str, body: Body) -> tuple[str, ...]:
    """What makes a row of a known `kind` that row: its kind and the fields that name it."""
    return (kind, *(str(body.get(name) or "") for name in KINDS[kind].identity))


def content(kind: str, body: Body) -> Body:
    """What a row says, without where it stands; equal contents say the same. Unknown kinds: the whole body."""
    known = KINDS.get(kind)
    if known is None:
        return body
    return {name: body[name] for name in (*known.identity, *known.content) if body.get(name) not in (None, "", [])}
