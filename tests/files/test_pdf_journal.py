"""Attachments out of a PDF: those that everybody sees, or none."""

from __future__ import annotations

import io
import zlib
from collections.abc import Callable
from pathlib import Path

import pikepdf
import pypdf
import pytest
from pikepdf import Array, Dictionary, Name, Pdf, Stream, String

from backprobe.errors import UnreadableError
from backprobe.files import pdf_journal
from backprobe.files.pdf_journal import attachments

JOURNAL = b'{"v":1}\n'


def blank() -> Pdf:
    """A PDF of one empty page."""
    pdf = pikepdf.new()
    pdf.add_blank_page()
    return pdf


def spec(pdf: Pdf, name: str, content: bytes = JOURNAL) -> Dictionary:
    """A file specification with its file, as PDF 2.0 section 7.11 has it."""
    stream = pdf.make_indirect(Stream(pdf, content, Type=Name.EmbeddedFile))
    return Dictionary(Type=Name.Filespec, F=String(name), UF=String(name), EF=Dictionary(F=stream, UF=stream))


def listed(pdf: Pdf, *specs: tuple[str, Dictionary]) -> Pdf:
    """The PDF with a name tree of these."""
    names = Array([part for key, value in specs for part in (String(key), pdf.make_indirect(value))])
    pdf.Root.Names = Dictionary(EmbeddedFiles=Dictionary(Names=names))
    return pdf


def saved(pdf: Pdf, place: Path) -> Path:
    """The PDF as a file; how its streams are packed is left as it is."""
    path = place / "record.pdf"
    pdf.save(path, compress_streams=False, stream_decode_level=pikepdf.StreamDecodeLevel.none)
    return path


def one(pdf: Pdf, name: str = "journal.jsonl", content: bytes = JOURNAL) -> Pdf:
    """The PDF with one attachment."""
    return listed(pdf, (name, spec(pdf, name, content)))


def stream_of(pdf: Pdf) -> Stream:
    """The file of the first attachment."""
    return pdf.Root.Names.EmbeddedFiles.Names[1].EF.F


def test_attachments_come_back_byte_for_byte(tmp_path: Path):
    """Packed or not, with any bytes, and under any name, as another library (pypdf) reads them too."""
    files = {"journal.jsonl": JOURNAL, "beiläufig 漢.txt": bytes(range(256)), "leer.txt": b""}
    pdf = blank()
    listed(pdf, *((name, spec(pdf, name, content)) for name, content in files.items()))
    pdf.save(tmp_path / "packed.pdf", compress_streams=True)
    for path in (saved(pdf, tmp_path), tmp_path / "packed.pdf"):
        assert attachments(path) == files
        assert {k: v[0] for k, v in pypdf.PdfReader(path).attachments.items()} == files


def test_a_pdf_without_attachments(tmp_path: Path):
    """Nothing is nothing."""
    assert attachments(saved(blank(), tmp_path)) == {}


def annotated(pdf: Pdf, given: Dictionary) -> Pdf:
    """The PDF with a pin on its page that holds a file, which no list names."""
    pin = Dictionary(Type=Name.Annot, Subtype=Name.FileAttachment, Rect=Array([0, 0, 9, 9]), FS=given)
    pdf.pages[0].obj.Annots = Array([pdf.make_indirect(pin)])
    return pdf


def test_files_that_no_list_names_are_seen(tmp_path: Path):
    """Pinned to a page, or tied to the document only."""
    pdf = blank()
    assert attachments(saved(annotated(pdf, spec(pdf, "pinned.txt")), tmp_path)) == {"pinned.txt": JOURNAL}
    pdf = blank()
    pdf.Root.AF = Array([spec(pdf, "tied.txt")])
    assert attachments(saved(pdf, tmp_path)) == {"tied.txt": JOURNAL}


OTHER = b'{"v":2}\n'
TWICE: dict[str, Callable[[Pdf], Pdf]] = {
    "in the list": lambda pdf: listed(pdf, ("a", spec(pdf, "a")), ("b", spec(pdf, "a", OTHER))),
    "in the list and pinned": lambda pdf: annotated(one(pdf, "a"), spec(pdf, "a", OTHER)),
    "pinned indirectly": lambda pdf: annotated(one(pdf, "a"), pdf.make_indirect(spec(pdf, "a", OTHER))),
}


@pytest.mark.parametrize("where", TWICE)
def test_one_name_with_two_files_is_refused(tmp_path: Path, where: str):
    """Two programs could take two different ones for the journal."""
    with pytest.raises(UnreadableError, match="'a' is attached twice"):
        attachments(saved(TWICE[where](blank()), tmp_path))


def test_one_file_listed_and_pinned_is_one(tmp_path: Path):
    """The same file in two places."""
    pdf = one(blank(), "a")
    assert attachments(saved(annotated(pdf, pdf.Root.Names.EmbeddedFiles.Names[1]), tmp_path)) == {"a": JOURNAL}


def two_names(pdf: Pdf) -> Pdf:
    one(pdf)
    pdf.Root.Names.EmbeddedFiles.Names[1].UF = String("other.jsonl")
    return pdf


def two_streams(pdf: Pdf) -> Pdf:
    one(pdf)
    pdf.Root.Names.EmbeddedFiles.Names[1].EF.UF = pdf.make_indirect(Stream(pdf, OTHER))
    return pdf


def no_stream(pdf: Pdf) -> Pdf:
    one(pdf)
    pdf.Root.Names.EmbeddedFiles.Names[1].EF.F = String("text")
    return pdf


def nameless(pdf: Pdf) -> Pdf:
    one(pdf)
    for key in ("/F", "/UF"):
        del pdf.Root.Names.EmbeddedFiles.Names[1][key]
    return pdf


def fileless(pdf: Pdf) -> Pdf:
    one(pdf)
    pdf.Root.Names.EmbeddedFiles.Names[1].EF = Dictionary()
    return pdf


@pytest.mark.parametrize("broken", [two_names, two_streams, no_stream, nameless, fileless])
def test_an_attachment_that_is_not_one_thing_is_refused(tmp_path: Path, broken: Callable[[Pdf], Pdf]):
    """Two names, two files, no file, no name."""
    with pytest.raises(UnreadableError):
        attachments(saved(broken(blank()), tmp_path))


def packed(pdf: Pdf, raw: bytes, **how: object) -> Pdf:
    """The PDF whose attachment stands in the file as `raw`, said to be packed in some way."""
    one(pdf)
    stream_of(pdf).write(raw, filter=how.get("filter", Name.FlateDecode), decode_parms=how.get("parms"))
    return pdf


@pytest.mark.parametrize(
    ("raw", "how", "words"),
    [
        (zlib.compress(JOURNAL)[:-1], {}, "ends where it should"),
        (zlib.compress(JOURNAL) + b"x", {}, "ends where it should"),
        (zlib.compress(JOURNAL)[:-4] + b"\0\0\0\0", {}, "can be unpacked"),
        (b"no such thing", {}, "can be unpacked"),
        (b"7b7d>", {"filter": Name.ASCIIHexDecode}, "packed otherwise"),
        (zlib.compress(zlib.compress(JOURNAL)), {"filter": Array([Name.FlateDecode] * 2)}, "packed otherwise"),
        (zlib.compress(JOURNAL), {"parms": Dictionary(Predictor=12, Columns=8)}, "packed otherwise"),
    ],
)
def test_a_damaged_or_oddly_packed_attachment_is_refused(
    tmp_path: Path, raw: bytes, how: dict[str, object], words: str
):
    """Torn, too long, with a wrong sum, no packing at all; packed as no record is."""
    with pytest.raises(UnreadableError, match=words):
        attachments(saved(packed(blank(), raw, **how), tmp_path))


def test_a_bomb_is_not_unpacked(tmp_path: Path, monkeypatch: pytest.MonkeyPatch):
    """A small file that unpacks to far more than is allowed; also in two parts, and unpacked as it stands."""
    monkeypatch.setattr(pdf_journal, "MOST_ATTACHED_BYTES", 100_000)
    path = saved(packed(blank(), zlib.compress(b"\0" * 1_000_000_0)), tmp_path)
    assert path.stat().st_size < 20_000
    with pytest.raises(UnreadableError, match=r"'journal\.jsonl' is larger"):
        attachments(path)
    with pytest.raises(UnreadableError, match=r"'journal\.jsonl' is larger"):
        attachments(saved(one(blank(), content=b"\0" * 100_001), tmp_path))
    pdf = blank()
    half = b"\0" * 60_000
    with pytest.raises(UnreadableError, match="'b' is larger"):
        attachments(saved(listed(pdf, ("a", spec(pdf, "a", half)), ("b", spec(pdf, "b", half))), tmp_path))


def test_a_pdf_that_is_far_too_large_is_not_opened(tmp_path: Path, monkeypatch: pytest.MonkeyPatch):
    """Said before anything of it is read."""
    monkeypatch.setattr(pdf_journal, "MOST_PDF_BYTES", 1_000_000)
    path = tmp_path / "large.pdf"
    with path.open("wb") as file:
        file.truncate(1_000_001)
    with pytest.raises(UnreadableError, match="at most 1 MB"):
        attachments(path)
    assert pdf_journal.MOST_ATTACHED_BYTES == 200_000_000


@pytest.mark.parametrize("user", ["", "secret"])
def test_an_encrypted_pdf_is_refused(tmp_path: Path, user: str):
    """With a password to read it, and with one that only forbids changes."""
    pdf = one(blank())
    path = tmp_path / "locked.pdf"
    pdf.save(path, encryption=pikepdf.Encryption(owner="owner", user=user, R=6))
    with pytest.raises(UnreadableError, match="not encrypted"):
        attachments(path)


def test_what_is_no_pdf_is_refused(tmp_path: Path):
    """Other files, nothing, a folder, no file, a name that is none."""
    (tmp_path / "a.pdf").write_bytes(b"PK\x03\x04 a workbook")
    (tmp_path / "b.pdf").write_bytes(b"")
    (tmp_path / "c.pdf").write_bytes(b"%PDF-1.7\nand nothing else")
    (tmp_path / "d").mkdir()
    for name in ("a.pdf", "b.pdf", "c.pdf", "d", "none.pdf", "bad\0.pdf"):
        with pytest.raises(UnreadableError):
            attachments(tmp_path / name)


def test_nothing_is_repaired(tmp_path: Path):
    """A PDF whose table of objects is gone could be pieced together; it is refused instead."""
    path = saved(one(blank()), tmp_path)
    content = path.read_bytes()
    path.write_bytes(content[: content.rindex(b"xref")])
    with pikepdf.open(io.BytesIO(path.read_bytes())) as mended:
        assert "journal.jsonl" in mended.attachments
    with pytest.raises(UnreadableError, match="torn or damaged"):
        attachments(path)
