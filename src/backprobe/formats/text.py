"""Is it text, and in which encoding? Told from the first bytes of a file."""

from __future__ import annotations

import codecs

from backprobe.errors import Place, UnreadableError

HEAD_BYTES = 65_536  # how much of a file's beginning is worth looking at
NUL_WITHIN = 1024  # binary formats show a NUL here; later NULs are the damage that a power cut leaves in a text file

_BOMS = (
    (codecs.BOM_UTF32_LE, "utf-32"),  # before UTF-16, whose mark is the beginning of this one
    (codecs.BOM_UTF32_BE, "utf-32"),
    (codecs.BOM_UTF8, "utf-8-sig"),
    (codecs.BOM_UTF16_LE, "utf-16"),
    (codecs.BOM_UTF16_BE, "utf-16"),
)

# first bytes -> what it is, and what to do
_LOOKS = (
    (b"\xff\xd8\xff", "a photo (JPEG)"),
    (b"\x89PNG", "a picture (PNG)"),
    (b"GIF8", "a picture (GIF)"),
    (b"%PDF", "a PDF"),
    (b"PK\x03\x04", "a ZIP file or a spreadsheet workbook; save the sheet as CSV"),
    (b"\xd0\xcf\x11\xe0", "an old spreadsheet workbook; save the sheet as CSV"),
    (b"\x1f\x8b", "a compressed file; unpack it first"),
    (b"7z\xbc\xaf", "a compressed file; unpack it first"),
    (b"SQLite format 3", "a database"),
)


def encoding_of(head: bytes) -> str:
    r"""The name of the codec for a file that begins with `head`; the codec takes a byte order mark off.

    Byte order marks first, then UTF-16 without one (every other byte is NUL), then UTF-8, and where that does not
    fit, Windows' western code page.

    >>> encoding_of(b"wire,key,volts"), encoding_of(b"Gr\xfcn,on,12"), encoding_of("a,b".encode("utf-16-le"))
    ('utf-8', 'cp1252', 'utf-16-le')
    """
    for mark, name in _BOMS:
        if head.startswith(mark):
            return name
    wide = _wide(head)
    if wide:
        return wide
    try:
        codecs.getincrementaldecoder("utf-8")().decode(head, final=False)  # the last character may be cut in two
    except UnicodeDecodeError:
        return "cp1252"
    return "utf-8"


def refuse_binary(head: bytes, *, file: str) -> None:
    """Raise UnreadableError where a file that begins with `head` is no text, saying what it looks like."""
    refuse_known(head, file=file)
    if any(head.startswith(mark) for mark, _ in _BOMS) or _wide(head):
        return
    if head and not head.strip(b"\0"):
        raise UnreadableError(Place(file), "a text file; this holds nothing but zeros, as an interrupted copy does")
    if b"\0" in head[:NUL_WITHIN]:
        raise UnreadableError(Place(file), "a text file; this looks like a binary file")


def refuse_known(head: bytes, *, file: str) -> None:
    """Raise UnreadableError where a file that begins with `head` is of a kind that is known and is no text.

    Unlike `refuse_binary` this lets bytes of any other kind pass: receivers mix text with a protocol of their own.
    """
    for first, looks in _LOOKS:
        if head.startswith(first):
            raise UnreadableError(Place(file), f"a text file; this looks like {looks}")


def is_wide(head: bytes) -> bool:
    """Whether a file that begins with `head` is text in UTF-16 or UTF-32."""
    return encoding_of(head).startswith(("utf-16", "utf-32"))


def _wide(head: bytes) -> str | None:
    """'utf-16-le' or 'utf-16-be' where nearly every other byte is NUL and the bytes between hardly ever are."""
    start = head[:NUL_WITHIN]
    half = len(start) // 2
    even, odd = start[0::2].count(0), start[1::2].count(0)
    if half and odd >= 0.8 * half and even <= 0.05 * half:
        return "utf-16-le"
    if half and even >= 0.8 * half and odd <= 0.05 * half:
        return "utf-16-be"
    return None
