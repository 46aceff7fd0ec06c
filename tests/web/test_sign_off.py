"""What a browser signs, Python verifies; and the private key cannot be taken out."""

from __future__ import annotations

import json
import subprocess
from pathlib import Path
from typing import Any

import pytest
from tests.samples.signing import KEY, private_pem, signed_off, two_phones
from tests.web.test_core import CORE, HERE, Call, call, phone

from backprobe.cases.signing_keys import PROOF
from backprobe.job.entry import read_entry
from backprobe.job.sign_off import bytes_to_sign, signed
from backprobe.keys.ed25519 import sign, signature_holds

__all__ = ["phone"]

ENTRY = signed_off(two_phones())
UNSIGNED = bytes_to_sign(ENTRY).decode()


@pytest.fixture(scope="module")
def done(node: Path) -> dict[str, Any]:
    """A sign-off signed with a fresh key of the browser's kind, in Node's WebCrypto."""
    given = json.dumps({"core": str(CORE), "device": "phone-5f2c", "unsigned": UNSIGNED})
    ran = subprocess.run([node, HERE / "sign_off_run.mjs"], input=given, capture_output=True, text=True, check=False)
    assert ran.returncode == 0, ran.stderr
    return dict(json.loads(ran.stdout))


def test_python_verifies_what_typescript_signs(done: dict[str, Any]) -> None:
    """The signature in the entry holds over the bytes that the engine gave; the entry is in its one form."""
    entry = read_entry(done["raw"].encode())
    assert bytes_to_sign(entry).decode() == UNSIGNED
    assert signature_holds(done["key"], str(entry.body["signature"]), message=UNSIGNED.encode())
    proof = PROOF.format(device="phone-5f2c").encode()
    assert signature_holds(done["key"], done["proof"], message=proof)


def test_the_private_key_stays(done: dict[str, Any]) -> None:
    """WebCrypto refuses to hand it out."""
    assert done["taken"] == "InvalidAccessError"


def test_what_is_signed_already_is_not_signed_again(done: dict[str, Any]) -> None:
    """Only an entry whose signature is empty waits for one."""
    assert done["twice"] == "this is no sign-off that waits for its signature"


def test_typescript_verifies_what_python_signs(phone: Call) -> None:
    """RFC 8032's first key: it holds; not with another text or signature, nor with a key that fits any text."""
    good = {"key": KEY, "signature": sign(private_pem(), UNSIGNED.encode()), "text": UNSIGNED}
    wrong = [
        good,
        {**good, "text": UNSIGNED.replace("proven", "broken")},
        {**good, "signature": "00" * 64},
        {**good, "key": "01" + "00" * 31, "signature": "01" + "00" * 63},
        {**good, "key": "zz"},
    ]
    answers = phone([call("sign-off.ts", "signatureHolds", each) for each in wrong])
    assert [each["value"] for each in answers] == [True, False, False, False, False]


def test_a_browser_reads_out_what_was_signed(phone: Call) -> None:
    """Of an entry that Python signed: key, signature, and the bytes that were signed."""
    entry = signed(ENTRY, sign(private_pem(), UNSIGNED.encode()))
    found = phone([call("sign-off.ts", "signedIn", entry.raw.decode())])[0]["value"]
    assert found == {"key": KEY, "signature": entry.body["signature"], "text": UNSIGNED}
    assert phone([call("sign-off.ts", "grouped", "0123456789abcdef")])[0]["value"] == "0123 4567 89ab cdef"
