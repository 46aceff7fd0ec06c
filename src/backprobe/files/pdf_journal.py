"""The files attached to a PDF, read so that no two programs can see different ones.

The PDF is taken as it stands: nothing in it is repaired, and an attachment that is there twice, under two names or
packed in an unusual way is refused rather than chosen from.
"""

from __future__ import annotations

import zlib
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import TYPE_CHECKING

from backprobe.errors import Place, UnreadableError

if TYPE_CHECKING:
    import pikepdf

MOST_PDF_BYTES = 512_000_000
MOST_ATTACHED_BYTES = 200_000_000
MAGIC = b"%PDF-"
DEEPEST = 50  # dictionaries and lists right in one another


def attachments(path: Path) -> dict[str, bytes]:
    """Every attached file of the PDF at `path` by its name. Raises UnreadableError in plain words.

    Refused: what is no PDF, is torn, damaged, encrypted or larger than 512 MB; attachments over 200 MB together; one
    name with two contents.
    """
    with _plain_words(path):
        if path.exists() and not path.is_file():
            raise _unreadable(path, "a file on disk; this is a folder, a pipe or a device")
        if path.stat().st_size > MOST_PDF_BYTES:
            raise _unreadable(path, f"a PDF of at most {MOST_PDF_BYTES // 1_000_000} MB")
        with path.open("rb") as file:
            if not file.read(len(MAGIC)).startswith(MAGIC):
                raise _unreadable(path, f"a PDF, which begins with {MAGIC.decode()}; this file does not")
    with _parsed(path) as pdf:
        return _contents(path, pdf)


def _contents(path: Path, pdf: pikepdf.Pdf) -> dict[str, bytes]:
    if pdf.is_encrypted:
        raise _unreadable(path, "a PDF that is not encrypted")
    found: dict[str, pikepdf.Object] = {}
    for name, stream in _file_streams(path, pdf):
        other = found.setdefault(name, stream)
        if other.objgen != stream.objgen:
            raise _unreadable(path, f"each attachment once; {name!r} is attached twice")
    contents: dict[str, bytes] = {}
    left = MOST_ATTACHED_BYTES
    for name, stream in found.items():
        contents[name] = _unpacked(path, name, stream=stream, most_bytes=left)
        left -= len(contents[name])
    return contents


def _file_streams(path: Path, pdf: pikepdf.Pdf) -> Iterator[tuple[str, pikepdf.Object]]:
    """Every attached file with each of its names, whether the PDF lists it or merely has it somewhere."""
    import pikepdf

    for spec in (part for thing in pdf.objects for part in _dictionaries(thing, depth=0)):
        if not isinstance(spec.get("/EF"), pikepdf.Dictionary):
            continue
        names = {str(spec[key]) for key in ("/F", "/UF") if key in spec}
        streams = [spec.EF[key] for key in ("/F", "/UF") if key in spec.EF]
        if not all(isinstance(stream, pikepdf.Stream) for stream in streams):
            raise _unreadable(path, "attachments that hold a file")
        if len(names) != 1 or len({stream.objgen for stream in streams}) != 1:
            raise _unreadable(path, f"each attachment under one name; found {sorted(names)}")
        yield names.pop(), streams[0]


def _dictionaries(thing: object, *, depth: int) -> Iterator[pikepdf.Dictionary]:
    """`thing`, where it is a dictionary, and those that stand right in it; what it only refers to is not followed."""
    import pikepdf

    if depth > DEEPEST or not isinstance(thing, pikepdf.Dictionary | pikepdf.Array):
        return
    if isinstance(thing, pikepdf.Dictionary):
        yield thing
    for part in thing.values() if isinstance(thing, pikepdf.Dictionary) else thing:
        if isinstance(part, pikepdf.Object) and not part.is_indirect:
            yield from _dictionaries(part, depth=depth + 1)


def _unpacked(path: Path, name: str, *, stream: pikepdf.Object, most_bytes: int) -> bytes:
    """The bytes of an attached file, never more than `most_bytes`."""
    raw = stream.read_raw_bytes()
    packing = stream.get("/Filter")
    if packing is None or not raw:  # nothing is packed as nothing, whatever the PDF says of it
        if len(raw) > most_bytes:
            raise _too_large(path, name)
        return raw
    if str(packing) != "/FlateDecode" or "/DecodeParms" in stream:
        raise _unreadable(path, f"attachments packed in the usual way; {name!r} is packed otherwise")
    unpack = zlib.decompressobj()
    try:
        content = unpack.decompress(raw, most_bytes + 1)
    except zlib.error:
        raise _unreadable(path, f"an attachment that can be unpacked; {name!r} is damaged") from None
    if len(content) > most_bytes:
        raise _too_large(path, name)
    if not unpack.eof or unpack.unused_data:
        raise _unreadable(path, f"an attachment that ends where it should; {name!r} is damaged")
    return content


def _too_large(path: Path, name: str) -> UnreadableError:
    return _unreadable(path, f"attachments of at most {MOST_ATTACHED_BYTES // 1_000_000} MB; {name!r} is larger")


def _unreadable(path: Path, expected: str) -> UnreadableError:
    return UnreadableError(Place(path.name), expected)


@contextmanager
def _parsed(path: Path) -> Iterator[pikepdf.Pdf]:
    """The PDF's structure; whatever does not fit together in it is one refusal."""
    import pikepdf

    faults = (AttributeError, IndexError, KeyError, RuntimeError, TypeError, ValueError)
    try:
        with pikepdf.open(path, attempt_recovery=False, suppress_warnings=True) as pdf:
            yield pdf
    except pikepdf.PasswordError:
        raise _unreadable(path, "a PDF that is not encrypted") from None
    except (pikepdf.PdfError, *faults):
        raise _unreadable(path, "a whole PDF; this one is torn or damaged: ask for it again") from None


@contextmanager
def _plain_words(path: Path) -> Iterator[None]:
    try:
        yield
    except (OSError, ValueError) as fault:
        raise _unreadable(path, f"a file that can be read; the system says: {fault}") from None
