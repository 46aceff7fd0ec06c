"""The server starts where it is safe, says why where it is not, and loses nothing when it is killed."""

from __future__ import annotations

import hashlib
import os
import signal
import socket
import ssl
import subprocess
import sys
import time
from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from datetime import UTC, datetime, timedelta
from ipaddress import ip_address
from pathlib import Path

import httpx
import pytest
from cryptography import x509
from cryptography.hazmat.primitives import hashes, serialization
from cryptography.hazmat.primitives.asymmetric import ec
from tests.samples.journals import Phone

from backprobe.cases.enrol import enrol, make_code
from backprobe.cases.login import add_lead
from backprobe.cases.may import Caller, Role
from backprobe.cases.tokens import fresh_id, now
from backprobe.cases.yard import open_yard
from backprobe.errors import OptionError
from backprobe.server.serving import must_be_safe, settings_from
from backprobe.server.settings import Settings
from backprobe.store.people import Person, add_person

START_S = 30.0


def test_settings_that_make_no_sense_are_said() -> None:
    """With the name of the setting."""
    with pytest.raises(OptionError, match="port"):
        settings_from({"port": 70_000})
    assert settings_from({"port": 80}).port == 80


def test_an_open_door_is_not_opened(tmp_path: Path) -> None:
    """Reached from elsewhere: not without HTTPS, not without a login; a certificate needs its key, and both a file."""
    pem = tmp_path / "a.pem"
    pem.write_text("x", encoding="utf-8")
    data = tmp_path / "data"
    must_be_safe(Settings(data=data))
    cases = [
        (Settings(data=data, host="0.0.0.0"), "phones need HTTPS"),
        (Settings(data=data, host="0.0.0.0", origin="http://yard.example"), "phones need HTTPS"),
        (Settings(data=data, certificate=pem), "go together"),
        (Settings(data=data, certificate=pem, key=tmp_path / "none"), "no such file"),
        (Settings(data=data, host="0.0.0.0", certificate=pem, key=pem), "nobody can log in yet"),
        (Settings(data=data, origin="https://yard.example"), "nobody can log in yet"),
    ]
    for settings, said in cases:
        with pytest.raises(OptionError, match=said):
            must_be_safe(settings)
    yard = open_yard(data)
    add_lead(yard, "ada", password="correct horse battery")
    yard.store.close()
    must_be_safe(Settings(data=data, origin="https://yard.example"))


@contextmanager
def process(data: Path, port: int, *, more: Sequence[str] = ()) -> Iterator[subprocess.Popen[bytes]]:
    """A server in a process of its own, which answers; killed at the end if it still runs."""
    run = "import sys; from backprobe.cli.main import main; sys.exit(main())"
    command = [sys.executable, "-c", run, "serve", "--data", str(data), "--listen", f"127.0.0.1:{port}", *more]
    found = subprocess.Popen(command, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
    try:
        give_up = time.monotonic() + START_S
        while time.monotonic() < give_up and found.poll() is None:
            try:
                socket.create_connection(("127.0.0.1", port), 2.0).close()
                break
            except OSError:
                time.sleep(0.05)
        yield found
    finally:
        found.kill()
        found.wait()


def free_port() -> int:
    """A port on loopback that nobody listens on."""
    with socket.socket() as probe:
        probe.bind(("127.0.0.1", 0))
        return int(probe.getsockname()[1])


def token_of(data: Path) -> str:
    """The token of a phone that was enrolled in the yard at `data`."""
    yard = open_yard(data)
    ines = Person(
        id=fresh_id(), organisation=yard.organisation, name="Ines", language="en", units="metric", role="installer"
    )
    with yard.store.writing() as connection:
        add_person(connection, ines, made_at=now())
    lead = Caller(role=Role.LEAD, organisation=yard.organisation)
    code = make_code(yard, lead, person_id=ines.id, origin="http://localhost").code
    token = enrol(yard, code, device="phone-a", label="").token
    yard.store.close()
    return token


def fetched(client: httpx.Client) -> set[str]:
    """All entries that the server has, read page by page."""
    found: set[str] = set()
    after, more = 0, True
    while more:
        page = client.get("/api/entries", params={"after": after}).json()
        found |= {each["text"] for each in page["entries"]}
        after, more = page["cursor"], page["more"]
    return found


def test_a_killed_server_has_lost_nothing_that_it_acknowledged(tmp_path: Path) -> None:
    """Killed (SIGKILL) amid batches and pieces of a file, three times: what was kept is there, the rest goes in."""
    data, port = tmp_path / "data", free_port()
    headers = {"Authorization": f"Bearer {token_of(data)}"}
    device = Phone()
    texts = [device.reads("Red", "on", f"12.{n}").raw.decode() for n in range(600)]
    log = b"0.001,12.61\n" * 400_000
    path, step = f"/api/blobs/{hashlib.sha256(log).hexdigest()}", 262_144
    kept: set[str] = set()
    offset, kills = 0, 0
    while len(kept) < len(texts) or offset < len(log):
        with (
            process(data, port) as server,
            httpx.Client(base_url=f"http://127.0.0.1:{port}", headers=headers, timeout=10.0) as client,
        ):
            assert kept <= fetched(client)
            held = client.head(path)
            stands = len(log) if held.status_code == 200 else int(held.headers["upload-offset"])
            assert stands >= offset
            offset = stands
            for number in range(10_000):
                if kills < 3 and number == 6:
                    os.kill(server.pid, signal.SIGKILL)
                    kills += 1
                try:
                    batch = [text for text in texts if text not in kept][:40]
                    results = client.post("/api/entries", json={"entries": batch}).json()["results"]
                    kept |= {text for text, r in zip(batch, results, strict=True) if r["state"] in ("kept", "known")}
                    piece = log[offset : offset + step]
                    span = {"Content-Range": f"bytes {offset}-{offset + len(piece) - 1}/{len(log)}"}
                    if piece and client.put(path, content=piece, headers=span).status_code in (201, 202):
                        offset += len(piece)
                except httpx.TransportError:
                    break
                if len(kept) == len(texts) and offset == len(log):
                    assert fetched(client) == set(texts)
                    break
    assert kills == 3
    yard = open_yard(data)
    found = yard.blobs.path(hashlib.sha256(log).hexdigest())
    yard.store.close()
    assert found is not None
    assert found.read_bytes() == log


def certificate(folder: Path) -> tuple[Path, Path]:
    """A certificate for 127.0.0.1 that signs itself, and its key, as PEM."""
    key = ec.generate_private_key(ec.SECP256R1())
    name = x509.Name([x509.NameAttribute(x509.NameOID.COMMON_NAME, "laptop")])
    today = datetime.now(UTC)
    made = (
        x509.CertificateBuilder()
        .subject_name(name)
        .issuer_name(name)
        .public_key(key.public_key())
        .serial_number(x509.random_serial_number())
        .not_valid_before(today - timedelta(days=1))
        .not_valid_after(today + timedelta(days=1))
        .add_extension(x509.SubjectAlternativeName([x509.IPAddress(ip_address("127.0.0.1"))]), critical=False)
        .sign(key, hashes.SHA256())
    )
    pem = serialization.Encoding.PEM
    plain = serialization.NoEncryption()
    (folder / "laptop.pem").write_bytes(made.public_bytes(pem))
    (folder / "laptop.key").write_bytes(key.private_bytes(pem, serialization.PrivateFormat.PKCS8, plain))
    return folder / "laptop.pem", folder / "laptop.key"


def test_over_https_the_session_s_cookie_is_for_https_alone(tmp_path: Path) -> None:
    """The server's own certificate; the cookie is Secure, bound to this host, and opens the desk."""
    pem, key = certificate(tmp_path)
    data, port = tmp_path / "data", free_port()
    yard = open_yard(data)
    add_lead(yard, "ada", password="correct horse battery")
    yard.store.close()
    origin = f"https://127.0.0.1:{port}"
    more = ["--certificate", str(pem), "--key", str(key), "--origin", origin]
    trusted = ssl.create_default_context(cafile=str(pem))
    with process(data, port, more=more), httpx.Client(base_url=origin, verify=trusted, timeout=20.0) as client:
        assert client.get("/api/desk/jobs").json()["code"] == "not_logged_in"
        answer = client.post("/api/login", json={"login": "ada", "password": "correct horse battery"})
        said = answer.headers["set-cookie"]
        assert said.startswith("__Host-backprobe-session=")
        assert "; Secure" in said
        assert "strict-transport-security" in answer.headers
        assert client.get("/api/desk/jobs").status_code == 200
        with pytest.raises(httpx.TransportError):
            httpx.get(f"http://127.0.0.1:{port}/api/session", timeout=5.0)
