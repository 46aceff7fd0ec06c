"""What only this machine can give: the time, fresh ids, secrets. Everything below takes them as arguments."""

from __future__ import annotations

import hashlib
import secrets
import time
from datetime import UTC, datetime, timedelta

from backprobe.job.ids import timed_id

CODE_LETTERS = "23456789ABCDEFGHJKLMNPQRSTUVWXYZ"  # none that is taken for another when it is typed
CODE_LENGTH = 20  # 32 ** 20 is 2 ** 100: not to be guessed within its 15 minutes, nor in years


def now(later_s: float = 0) -> str:
    """The time as the store writes it, UTC in milliseconds; `later_s` seconds from now."""
    moment = datetime.now(UTC) + timedelta(seconds=later_s)
    return moment.isoformat(timespec="milliseconds").replace("+00:00", "Z")


def fresh_id() -> str:
    """A new id of version 7."""
    return timed_id(time.time_ns() // 1_000_000, secrets.token_bytes(10))


def secret() -> str:
    """A new token: 32 random bytes as text that fits into headers and cookies."""
    return secrets.token_urlsafe(32)


def code() -> str:
    """A new enrolment code, of letters and digits that can be typed where a camera fails."""
    return "".join(secrets.choice(CODE_LETTERS) for _ in range(CODE_LENGTH))


def hashed(plain: str) -> str:
    """The sha256 of a token or code in hex: enough for secrets of 100 random bits and more; passwords need argon2.

    >>> hashed("abc")[:16]
    'ba7816bf8f01cfea'
    """
    return hashlib.sha256(plain.encode("utf-8", "surrogatepass")).hexdigest()
