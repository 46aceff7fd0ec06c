"""Jobs for journeys: an invented truck, as the desk would give it to an installer."""

from __future__ import annotations

import hashlib
from dataclasses import dataclass, field

import httpx
from tests.samples.demo_jobs import DEMO
from tests.samples.served import Server

from backprobe.cases.enrol import enrol
from backprobe.job.entry import Entry
from backprobe.job.ids import folder_id
from backprobe.store.people import Person

SHEET = """
[vehicle]
vin = "5ZLDR7HV5KR200417"
plate = "{plate}"
maker = "Harrow & Vale"
model = "Drover 7"
model_year = 2019
heavy = true
system_V = 12
cylinders = 6
battery_switch = false

[unit]
sheet = "unit.toml"
serial = "{serial}"

[job]
id = "{job}"
yard = "Linden Yard, bay 3"
date = 2026-03-31
"""


@dataclass
class Desk:
    """What gives out jobs: a tablet of the same person, which writes the sheets into the journal."""

    server: Server
    person: Person
    client: httpx.Client
    device: str = "desk-tablet"
    given: list[str] = field(default_factory=list)

    @classmethod
    def of(cls, server: Server, person: Person) -> Desk:
        """A desk for somebody's jobs."""
        token = enrol(server.yard, server.code(person), device=cls.device, label="").token
        return cls(server, person, server.client(Authorization=f"Bearer {token}"))

    def give(self, job: str, plate: str, serial: str = "LN2-00417", *, more: str = "") -> None:
        """Gives the person a job of a truck with nothing done yet, or with what `more` of its sheet says."""
        sheet = SHEET.format(plate=plate, serial=serial, job=job) + more
        unit = (DEMO / "unit.toml").read_text(encoding="utf-8")
        prev, texts = None, []
        claims = {"vin": "5ZLDR7HV5KR200417", "serial": serial}
        for seq, (kind, file, text, more) in enumerate(
            [("job", "job.toml", sheet, claims), ("unit_sheet", "unit.toml", unit, {})], 1
        ):
            content = text.encode()
            sha256 = hashlib.sha256(content).hexdigest()
            self.client.put(f"/api/blobs/{sha256}", content=content).raise_for_status()
            entry = Entry(
                id=folder_id(job, kind), job=job, kind=kind, device=self.device, seq=seq, prev=prev, engine="0.1.0",
                body={"file": file, "sha256": sha256, "bytes": len(content), **more}, blobs=(sha256,),
            )  # fmt: skip
            prev = entry.digest
            texts.append(entry.raw.decode())
        said = self.client.post("/api/entries", json={"entries": texts}).raise_for_status().json()
        assert [result["state"] for result in said["results"]] == ["kept", "kept"], said
        self.given.append(job)

    def entries(self, job: str) -> list[str]:
        """The job's entries as the server has them."""
        found, after, more = [], 0, True
        while more:
            page = self.client.get("/api/entries", params={"job": job, "after": after}).raise_for_status().json()
            found += [entry["text"] for entry in page["entries"]]
            after, more = page["cursor"], page["more"]
        return found
