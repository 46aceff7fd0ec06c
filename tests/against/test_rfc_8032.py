"""Signatures against the vectors of RFC 8032, "Edwards-Curve Digital Signature Algorithm (EdDSA)", January 2017.

Section 7.1, TEST 1 to TEST 3: secret key, public key, message and signature. The values were copied from two
independent projects that reproduce the section and agree in every digit; the RFC itself could not be fetched here.
"""

from __future__ import annotations

import pytest
from tests.samples.signing import private_pem

from backprobe.keys.ed25519 import public_key_of, sign, signature_holds

VECTORS = {
    "TEST 1": (
        "9d61b19deffd5a60ba844af492ec2cc44449c5697b326919703bac031cae7f60",
        "d75a980182b10ab7d54bfed3c964073a0ee172f3daa62325af021a68f707511a",
        "",
        (
            "e5564300c360ac729086e2cc806e828a84877f1eb8e5d974d873e06522490155"
            "5fb8821590a33bacc61e39701cf9b46bd25bf5f0595bbe24655141438e7a100b"
        ),
    ),
    "TEST 2": (
        "4ccd089b28ff96da9db6c346ec114e0f5b8a319f35aba624da8cf6ed4fb8a6fb",
        "3d4017c3e843895a92b70aa74d1b7ebc9c982ccf2ec4968cc0cd55f12af4660c",
        "72",
        (
            "92a009a9f0d4cab8720e820b5f642540a2b27b5416503f8fb3762223ebdb69da"
            "085ac1e43e15996e458f3613d0f11d8c387b2eaeb4302aeeb00d291612bb0c00"
        ),
    ),
    "TEST 3": (
        "c5aa8df43f9f837bedb7442f31dcb7b166d38535076f094b85ce3a2e0b4458f7",
        "fc51cd8e6218a1a38da47ed00230f0580816ed13ba3303ac5deb911548908025",
        "af82",
        (
            "6291d657deec24024827e69c3abe01a30ce548a284743a445e3680d7db5ac3ac"
            "18ff9b538d16f290ae67f760984dc6594a7c15e9716ed28dc027beceea1ec40a"
        ),
    ),
}
ORDER = 2**252 + 27742317777372353535851937790883648493  # of the base point, section 5.1


@pytest.mark.parametrize("name", VECTORS)
def test_public_key_and_signature_are_those_of_the_rfc(name: str):
    """The secret key, read from a file of the form RFC 8410 gives, makes this public key and this signature."""
    secret, public, message, signature = VECTORS[name]
    pem = private_pem(secret)
    assert public_key_of(pem) == public
    assert sign(pem, bytes.fromhex(message)) == signature
    assert signature_holds(public, signature, message=bytes.fromhex(message))


@pytest.mark.parametrize("name", VECTORS)
def test_nothing_else_holds(name: str):
    """Another message, another key, any single bit of the signature's first and last bytes of both halves."""
    _, public, message, signature = VECTORS[name]
    said = bytes.fromhex(message)
    other = next(vector[1] for key, vector in VECTORS.items() if key != name)
    assert not signature_holds(public, signature, message=said + b"\0")
    assert not signature_holds(other, signature, message=said)
    raw = bytes.fromhex(signature)
    for at in (0, 31, 32, 63):
        for bit in range(8):
            changed = raw[:at] + bytes([raw[at] ^ 1 << bit]) + raw[at + 1 :]
            assert not signature_holds(public, changed.hex(), message=said)


@pytest.mark.parametrize("name", VECTORS)
def test_a_signature_has_one_form(name: str):
    """Section 5.1.7: the second half must be below the order; with the order added it would say the same."""
    _, public, message, signature = VECTORS[name]
    raw = bytes.fromhex(signature)
    larger = int.from_bytes(raw[32:], "little") + ORDER
    assert not signature_holds(public, (raw[:32] + larger.to_bytes(32, "little")).hex(), message=bytes.fromhex(message))
