"""What a sign-off says, and that every byte of it is signed."""

from __future__ import annotations

import hashlib
import json

import pytest
from tests.samples.journals import GOOD, Phone
from tests.samples.signing import JUDGED, KEY, private_pem, signed_off, two_phones

from backprobe.errors import JournalError
from backprobe.job.entry import read_entry
from backprobe.job.sign_off import (
    ATTACHED,
    by_device,
    bytes_to_sign,
    digests_text,
    fingerprint,
    grouped,
    read_sign_off,
    signed,
    unsigned_body,
)
from backprobe.keys.ed25519 import sign, signature_holds


def sha256(content: bytes) -> str:
    return hashlib.sha256(content).hexdigest()


def test_it_holds_the_head_of_each_device():
    """Phone a's third and phone b's second entry, by their digests; the number of all, and what was judged."""
    said = two_phones()
    body = unsigned_body(said, JUDGED, key=KEY)
    assert body["heads"] == [["phone-a", 3, sha256(said[4].raw)], ["phone-b", 2, sha256(said[3].raw)]]
    assert (body["entries"], body["end"], body["verdict"], body["signature"]) == (5, "proven", "holds", "")


def test_the_digests_of_all_entries_are_summed_in_two_orders():
    """By device and number, whatever the order they stand in; and as they stand."""
    said = two_phones()
    by_number = [said[at] for at in (0, 2, 4, 1, 3)]
    body, turned = (unsigned_body(entries, JUDGED, key=KEY) for entries in (said, list(reversed(said))))
    fixed = "".join(f"{sha256(entry.raw)}\n" for entry in by_number).encode()
    assert by_device(reversed(said)) == by_number
    assert body["entries_sha256"] == turned["entries_sha256"] == sha256(fixed)
    assert body["order_sha256"] == sha256("".join(f"{sha256(e.raw)}\n" for e in said).encode())
    assert body["order_sha256"] != turned["order_sha256"]


def test_the_signature_is_over_the_entry_with_an_empty_signature():
    """The bytes of the line, with nothing between the signature's quotation marks."""
    entry = signed_off(two_phones())
    values = json.loads(entry.raw)
    signature = values["body"]["signature"]
    assert bytes_to_sign(entry) == entry.raw.replace(signature.encode(), b"")
    assert signature_holds(KEY, signature, message=bytes_to_sign(entry))
    assert signature == sign(private_pem(), bytes_to_sign(entry))


def test_a_sign_off_reads_back():
    """Everything that was put in."""
    said = two_phones()
    read = read_sign_off(read_entry(signed_off(said).raw))
    assert read.judged == JUDGED
    assert (read.entries, read.key, read.fingerprint) == (5, KEY, sha256(bytes.fromhex(KEY)))
    assert {device: head.seq for device, head in read.heads.items()} == {"phone-a": 3, "phone-b": 2}
    assert list(read.blobs) == list(ATTACHED)
    assert read.blobs["signed-entries.txt"] == sha256(digests_text(said))


def test_it_covers_what_stands_before_it_and_itself():
    """Nothing that a device says later, and no device that it does not know."""
    said = two_phones()
    entry = signed_off(said)
    read = read_sign_off(entry)
    later = Phone("phone-c").reads("Red", "on", "12.30")
    again = Phone("phone-b", ids=200)
    third = [again.reads("Blue", key, "0.02") for key in ("off", "on", "after")][-1]
    assert all(read.covers(one) for one in (*said, entry))
    assert not any(read.covers(one) for one in (later, third))


def test_every_byte_of_it_is_signed():
    """Any letter of the line but those of the signature itself, changed so that it still reads: no longer signed."""
    entry = signed_off(two_phones())
    at = entry.raw.index(b'"signature":"') + len(b'"signature":"')
    read = 0
    for place in (*range(at), *range(at + 128, len(entry.raw))):
        changed = entry.raw[:place] + bytes([entry.raw[place] ^ 1]) + entry.raw[place + 1 :]
        try:
            other = read_sign_off(read_entry(changed))
        except JournalError:
            continue
        read += 1
        assert not signature_holds(other.key, other.signature, message=bytes_to_sign(other.entry)), place
    assert read > 500  # of about 1,700 places: digits of digests, letters of words


def test_a_signature_is_written_in_one_way():
    """Capital hex letters would be the same signature in other bytes: refused, as is anything but 128 digits."""
    entry = signed_off(two_phones())
    signature = str(entry.body["signature"])
    for other in (signature.upper(), signature[:-1], signature + "0", "g" * 128, ""):
        with pytest.raises(JournalError, match="signature: expected signature"):
            read_sign_off(signed(entry, other))


def test_one_device_has_one_head():
    """Two heads of one device say two things."""
    body = GOOD["sign_off"] | {"heads": [["a", 1, "a" * 64], ["a", 2, "b" * 64]]}
    with pytest.raises(JournalError, match="one device is named twice"):
        read_sign_off(Phone().say("sign_off", body))


def test_another_kind_is_no_sign_off():
    """A reading; a sign-off without its parts."""
    for entry in (Phone().reads("Red", "on", "12.30"), Phone().say("sign_off", {})):
        with pytest.raises(JournalError):
            read_sign_off(entry)


def test_a_fingerprint_is_read_out_in_groups():
    """64 digits in 16 groups of four, of the key's 32 bytes."""
    shown = grouped(fingerprint(KEY))
    assert [len(group) for group in shown.split(" ")] == [4] * 16
    assert shown.replace(" ", "") == sha256(bytes.fromhex(KEY))
