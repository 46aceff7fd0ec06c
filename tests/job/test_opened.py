"""A file opened at a job: told by what it holds, and kept as a folder's import keeps it."""

from __future__ import annotations

import json
import shutil
from pathlib import Path

import pytest
from tests.samples.bus_frames import aligned, key_cycle
from tests.samples.demo_jobs import DEMO
from tests.samples.receiver_world import World, log_lines

from backprobe.cases.import_folder import import_folder
from backprobe.errors import UnreadableError
from backprobe.evidence.report import ReportNames
from backprobe.job.opened import Opened, opened

TRUCK = DEMO / "truck-07"
NMEA = "\r\n".join(log_lines(World(seed=7, minutes=5))).encode()
CANDUMP = "\n".join(aligned(key_cycle())).encode()
ENGINE = b"time_s,ENGINE_RPM (),CONTROL_MODULE_VOLTAGE ()\n0,0,12.4\n1,0,12.3\n2,800,14.1\n"


def truck(name: str) -> bytes:
    """A file of the demo's truck 7."""
    return (TRUCK / name).read_bytes()


@pytest.mark.parametrize(
    ("content", "name", "kind", "file"),
    [
        (truck("recordings/crank.csv"), "a.csv", "recording", "recordings/a.csv"),
        (truck("reports.csv"), "export 7.csv", "reports", "reports.csv"),
        (truck("lights.csv"), "seen.txt", "lights_file", "lights.csv"),
        (NMEA, "track.txt", "reception", "nmea/track.txt"),
        (NMEA.decode().encode("utf-16"), "wide.txt", "reception", "nmea/wide.txt"),
        (CANDUMP, "C:\\logs\\start.txt", "bus_log", "bus/start.txt"),
        (ENGINE, "drive.csv", "bus_log", "bus/drive.csv"),
    ],
    ids=["recording", "reports", "lights", "nmea", "wide nmea", "candump", "engine data"],
)
def test_a_file_is_told_by_what_it_holds(content: bytes, name: str, kind: str, file: str) -> None:
    """Whatever it is called; a path before its name is left out."""
    found = opened(content, file=name)
    assert (found.kind, found.file) == (kind, file)
    assert found.counted


def test_it_is_kept_as_the_import_of_a_folder_keeps_it(tmp_path: Path) -> None:
    """Of a folder with a receiver's log, a bus log, reports, lights and a recording: the same bodies, the same rows."""
    shutil.copytree(DEMO, tmp_path / "yard", ignore=shutil.ignore_patterns("*journal*", "blobs"))
    folder = tmp_path / "yard" / "truck-07"
    for name, content in (("nmea/first.nmea", NMEA), ("nmea/second.nmea", NMEA[:2000]), ("bus/start.log", CANDUMP)):
        (folder / name).parent.mkdir(exist_ok=True)
        (folder / name).write_bytes(content)
    kept = list(import_folder(folder).journal.entries)
    for name in ("nmea/first.nmea", "bus/start.log", "reports.csv", "lights.csv", "recordings/crank.csv"):
        found = opened((folder / name).read_bytes(), file=Path(name).name)
        [body] = [entry.body for entry in kept if entry.body.get("file") == name and entry.kind == found.kind]
        assert body == {"file": name, "sha256": body["sha256"], "bytes": body["bytes"], **found.more}
        rows = [
            (entry.kind, entry.body) for entry in kept if entry.body.get("file") == name and entry.kind != found.kind
        ]
        assert rows == [(row.kind, row.body) for row in found.rows]
        json.dumps(found.more)


def test_reports_are_known_by_their_own_servers_names() -> None:
    """A column map of the job sheet says that 'Sent' is the time and 'Box' the unit."""
    content = b"Box,Sent,Key\nL1,2026-03-31T08:05:00Z,1\n"
    names = ReportNames({"unit_id": "Box", "t": "Sent", "ignition": "Key"})
    assert opened(content, file="a.csv", names=names).kind == "reports"
    with pytest.raises(UnreadableError):
        opened(content, file="a.csv")
    with pytest.raises(UnreadableError, match="a column 'Box' for unit_id, as the column map says"):
        opened(truck("reports.csv"), file="a.csv", names=names)  # the job's judgement would refuse it


def test_a_recording_with_an_ignition_column_is_no_table_of_reports() -> None:
    """A time and 'ignition' alone are those of a recording: volts of a wire against seconds."""
    found = opened(b"t,ignition\n0,0.0\n0.1,12.4\n0.2,12.4\n", file="a.csv")
    assert found.kind == "recording"


def test_lights_are_rows_of_their_own() -> None:
    """Each light that was seen is an entry; a row that cannot be read is kept as passed over."""
    found = opened(b"light,pattern,after_s\nnetwork,steady,41\nnetwork,steady,soon\n", file="l.csv")
    assert [(row.kind, row.body.get("light")) for row in found.rows] == [
        ("light_seen", "network"),
        ("skipped_line", None),
    ]


@pytest.mark.parametrize(
    ("content", "says"),
    [
        (b"", "this one is empty"),
        (b"\0" * 64, "nothing but zeros"),
        (b"\xff\xd8\xff\xe0 photo", "a photo (JPEG)"),
        (b"PK\x03\x04 book", "spreadsheet"),
        (b"LOGG\x90\0\0\0", "form BLF: give it to the desk"),
        (b"MDF     4.10    ", "form MDF: give it to the desk"),
        (b";$FILEVERSION=1.1\n;$STARTTIME=41123.4\n", "form TRC: give it to the desk"),
        (b"date Mon Nov 02 10:00:00 2026\nbase hex  timestamps absolute\n", "form ASC: give it to the desk"),
        (b"dear all,\nsee you on Monday\n", "this is none of them"),
        (truck("key-script.csv"), "this is none of them"),
        (truck("job.toml"), "this is none of them"),
    ],
)
def test_what_cannot_be_kept_is_refused_in_words(content: bytes, says: str) -> None:
    """With its name and what was expected."""
    with pytest.raises(UnreadableError) as caught:
        opened(content, file="thing.dat")
    assert caught.value.message.startswith("thing.dat")
    assert says in caught.value.message


def test_a_receivers_own_bytes_between_sentences_do_no_harm() -> None:
    """A binary protocol before and between the sentences: counted as a folder's import counts them."""
    found: Opened = opened(b"\xb5\x62\x01\x07\x00\n" + NMEA, file="mixed.ubx")
    assert found.kind == "reception"
