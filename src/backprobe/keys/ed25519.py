"""Ed25519 (RFC 8032): making keys, signing, and holding a signature against a message.

Public keys and signatures are hex in small letters, private keys PEM in the form PKCS #8 (RFC 8410), unencrypted. The
library is loaded when it is first needed.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from backprobe.errors import InputError

if TYPE_CHECKING:
    from cryptography.hazmat.primitives.asymmetric.ed25519 import Ed25519PrivateKey

KEY_BYTES, SIGNATURE_BYTES = 32, 64
# y of the points of order 1, 2, 4 and 8 on the curve, modulo its prime: with such a public key one signature fits any
# message. Derived in tests/keys/test_ed25519.py from the curve's equation (RFC 8032, section 5.1).
_PRIME = 2**255 - 19
_Y_OF_ORDER_8 = 0x05FC536D880238B13933C6D305ACDFD5F098EFF289F4C345B027B2C28F95E826
_SMALL_ORDER_Y = frozenset({0, 1, _PRIME - 1, _Y_OF_ORDER_8, _PRIME - _Y_OF_ORDER_8})


def new_private_key() -> bytes:
    """A new private key as PEM, from the system's source of randomness."""
    from cryptography.hazmat.primitives import serialization
    from cryptography.hazmat.primitives.asymmetric.ed25519 import Ed25519PrivateKey

    return Ed25519PrivateKey.generate().private_bytes(
        serialization.Encoding.PEM, serialization.PrivateFormat.PKCS8, serialization.NoEncryption()
    )


def public_key_of(private_pem: bytes) -> str:
    """The public key (hex) of a private one. Raises InputError where the PEM holds no such key."""
    return _private(private_pem).public_key().public_bytes_raw().hex()


def sign(private_pem: bytes, message: bytes) -> str:
    """The signature (hex) over `message`. Raises InputError where the PEM holds no private Ed25519 key."""
    return _private(private_pem).sign(message).hex()


def signature_holds(key: str, signature: str, *, message: bytes) -> bool:
    """Whether `signature` is that of `key` over `message`; False also for what is no key and no signature.

    A public key with which one signature would fit any message is refused.
    """
    from cryptography.exceptions import InvalidSignature
    from cryptography.hazmat.primitives.asymmetric.ed25519 import Ed25519PublicKey

    public, claimed = _bytes(key, KEY_BYTES), _bytes(signature, SIGNATURE_BYTES)
    if public is None or claimed is None or is_weak(key):
        return False
    try:
        Ed25519PublicKey.from_public_bytes(public).verify(claimed, message)
    except InvalidSignature:
        return False
    return True


def is_weak(key: str) -> bool:
    """Whether a public key (hex) is one of the few points that make a signature say nothing."""
    y = int.from_bytes(bytes.fromhex(key), "little") & (2**255 - 1)
    return y % _PRIME in _SMALL_ORDER_Y


def public_pem(key: str) -> bytes:
    """A public key (hex) as PEM."""
    from cryptography.hazmat.primitives import serialization
    from cryptography.hazmat.primitives.asymmetric.ed25519 import Ed25519PublicKey

    return Ed25519PublicKey.from_public_bytes(bytes.fromhex(key)).public_bytes(
        serialization.Encoding.PEM, serialization.PublicFormat.SubjectPublicKeyInfo
    )


def public_key_in(pem: bytes) -> str:
    """The public key (hex) in a PEM. Raises InputError where it holds none, or a private one."""
    from cryptography.exceptions import UnsupportedAlgorithm
    from cryptography.hazmat.primitives import serialization
    from cryptography.hazmat.primitives.asymmetric.ed25519 import Ed25519PublicKey

    if b"PRIVATE KEY" in pem:
        raise InputError("this is a private key: it stays with whoever signs\nexpected: a public key")
    try:
        found = serialization.load_pem_public_key(pem)
    except (ValueError, UnsupportedAlgorithm):
        raise InputError("no public key\nexpected: an Ed25519 public key as PEM, or its 64 hex digits") from None
    if not isinstance(found, Ed25519PublicKey):
        raise InputError("a public key of another kind\nexpected: an Ed25519 public key")
    return found.public_bytes_raw().hex()


def _private(pem: bytes) -> Ed25519PrivateKey:
    from cryptography.exceptions import UnsupportedAlgorithm
    from cryptography.hazmat.primitives import serialization
    from cryptography.hazmat.primitives.asymmetric.ed25519 import Ed25519PrivateKey

    try:
        found = serialization.load_pem_private_key(pem, password=None)
    except TypeError:
        raise InputError("the private key has a passphrase\nexpected: a key without one") from None
    except (ValueError, UnsupportedAlgorithm):
        raise InputError("no private key\nexpected: an Ed25519 private key as PEM (PKCS #8)") from None
    if not isinstance(found, Ed25519PrivateKey):
        raise InputError("a private key of another kind\nexpected: an Ed25519 private key")
    return found


def _bytes(text: str, count: int) -> bytes | None:
    """The bytes of `count` hex pairs in small letters, None for anything else."""
    small = len(text) == 2 * count and all(digit in "0123456789abcdef" for digit in text)
    return bytes.fromhex(text) if small else None
