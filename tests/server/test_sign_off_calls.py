"""A phone's key and the record on paper, over HTTP."""

from __future__ import annotations

from pathlib import Path

import httpx
from tests.samples.demo_jobs import demo_job
from tests.samples.served import Server
from tests.samples.signing import KEY, private_pem

from backprobe.cases.signing_keys import PROOF
from backprobe.keys.ed25519 import sign


def test_a_key_is_given_with_its_proof(phone: httpx.Client, desk: httpx.Client) -> None:
    """The desk then lists whose it is; a proof over another name is refused."""
    proof = sign(private_pem(), PROOF.format(device="phone-a").encode())
    done = phone.post("/api/key", json={"key": KEY, "proof": proof}).raise_for_status().json()
    [listed] = desk.get("/api/desk/keys").raise_for_status().json()["keys"]
    assert listed["fingerprint"] == done["fingerprint"]
    assert listed["person"]["name"] == "Ines Okafor"
    [row] = desk.get("/api/desk/phones").raise_for_status().json()["phones"]
    assert row["fingerprints"] == [done["fingerprint"]]
    odd = phone.post("/api/key", json={"key": KEY, "proof": "0" * 128})
    assert (odd.status_code, odd.json()["code"]) == (422, "request")


def test_a_phone_gets_the_record_of_its_own_jobs(server: Server, phone: httpx.Client, tmp_path: Path) -> None:
    """A PDF for Ines, whose job it is; for Marta's phone there is no such job."""
    job = demo_job(tmp_path, "truck-07")
    for sha256, content in job.files.items():
        phone.put(f"/api/blobs/{sha256}", content=content).raise_for_status()
    phone.post("/api/entries", json={"entries": job.texts}).raise_for_status()
    record = phone.get(f"/api/jobs/{job.id}/record.pdf").raise_for_status()
    assert record.headers["content-type"] == "application/pdf"
    assert record.content.startswith(b"%PDF")
    with server.phone("Marta", device="phone-b") as other:
        assert other.get(f"/api/jobs/{job.id}/record.pdf").json()["code"] == "not_found"
    assert phone.get("/api/jobs/none/record.pdf").json()["code"] == "not_found"
    with server.client() as nobody:
        assert nobody.get(f"/api/jobs/{job.id}/record.pdf").status_code == 401
