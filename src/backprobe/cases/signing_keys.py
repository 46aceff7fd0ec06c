"""The keys that phones sign with: a phone gives the public half and shows that it has the private one."""

from __future__ import annotations

from collections.abc import Mapping

from sqlalchemy import Connection

from backprobe.cases.may import Caller, Deed
from backprobe.cases.tokens import now
from backprobe.cases.yard import Yard
from backprobe.errors import RefusedError
from backprobe.job.entry import is_sha256
from backprobe.job.sign_off import fingerprint
from backprobe.keys.ed25519 import signature_holds
from backprobe.store import signing_keys

PROOF = "backprobe: the key of {device}"  # what the phone signs to show that it has the key


def give_key(yard: Yard, caller: Caller, *, key: str, proof: str) -> str:
    """Note that a key (hex) is the calling phone's; its fingerprint. `proof` is its signature over `PROOF`.

    Raises RefusedError: `request` where the proof does not hold, `key_taken` where the key is another phone's.
    """
    caller.must(Deed.GIVE_KEY)
    phone = caller.phone
    if phone is None or not is_sha256(key):
        raise RefusedError("key: an Ed25519 public key is expected, 64 hex digits", code="request")
    if not signature_holds(key, proof, message=PROOF.format(device=phone.device).encode()):
        raise RefusedError(
            "proof: a signature by this key over the phone's name is expected; this one does not hold", code="request"
        )
    with yard.store.writing() as connection:
        owner = signing_keys.add_key(connection, caller.organisation, key=key, phone_id=phone.id, at=now())
    if owner != phone.id:
        raise RefusedError("another phone signs with this key", code="key_taken")
    return fingerprint(key)


def list_keys(yard: Yard, caller: Caller) -> list[dict[str, object]]:
    """All keys of phones, and whose they are. Raises RefusedError."""
    caller.must(Deed.READ_ALL_JOBS)
    with yard.store.reading() as connection:
        rows = signing_keys.listed(connection, caller.organisation)
    plain = ("key", "given_at", "phone", "device", "label", "withdrawn_at")
    return [
        {
            **{name: row[name] for name in plain},
            "fingerprint": fingerprint(row["key"]),
            "person": {"id": row["person"], "name": row["person_name"]},
        }
        for row in rows
    ]


def signers(connection: Connection, organisation_id: str) -> Mapping[str, str]:
    """Whose phone signs with each key (hex) that is known here, by name."""
    return {row["key"]: row["person_name"] for row in signing_keys.listed(connection, organisation_id)}
