"""The record as a PDF, read back with another library (pikepdf)."""

import hashlib
import io
import json
import subprocess
import sys
from collections.abc import Callable, Iterator
from dataclasses import replace
from typing import Any

import numpy as np
import pikepdf
import pytest
import typst
import zxingcpp
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from PIL import Image
from tests.samples.photos import as_file, four_corners

from backprobe.errors import JobError, JournalError
from backprobe.findings import Finding, Verdict
from backprobe.job.readings_grid import GridRow, ReadingsGrid
from backprobe.paper import record as paper
from backprobe.paper.content import (
    Attachment,
    ChoiceRow,
    IdentityRow,
    JoinedRow,
    Picture,
    RecordContent,
    ShownPhoto,
    SignOffBlock,
)
from backprobe.paper.record import write_record
from backprobe.paper.sheet import sheet

Build = Callable[..., RecordContent]
Shown = Callable[[pikepdf.Page], str]


def opened(content: RecordContent) -> pikepdf.Pdf:
    """The record, written and opened."""
    return pikepdf.open(io.BytesIO(write_record(content)))


def nodes(element: Any) -> Iterator[Any]:
    """The elements of a PDF's structure tree, from the top."""
    if isinstance(element, pikepdf.Array):
        for part in element:
            yield from nodes(part)
    elif isinstance(element, pikepdf.Dictionary):
        if "/S" in element:
            yield element
        if "/K" in element:
            yield from nodes(element.K)


def tags(pdf: pikepdf.Pdf) -> list[str]:
    """The names of all structure elements."""
    return [str(node.S) for node in nodes(pdf.Root.StructTreeRoot)]


def packed(text: str) -> str:
    """`text` without white space, to be looked for in what a page shows."""
    return "".join(text.split())


def test_the_standards_are_declared(record: Build) -> None:
    """PDF/A-3a (ISO 19005-3) and PDF/UA-1 (ISO 14289-1) stand in the metadata; an output intent is there."""
    with opened(record()) as pdf:
        metadata = pdf.open_metadata()
        assert metadata.pdfa_status == "3A"
        assert metadata.get("pdfuaid:part") == "1"
        assert "/OutputIntents" in pdf.Root


def test_it_is_tagged_named_and_in_a_language(record: Build) -> None:
    """Tagged, with its title shown, its language, a heading, a table with header cells and figures with words."""
    with opened(record()) as pdf:
        assert pdf.Root.MarkInfo.Marked
        assert pdf.Root.Lang == "en"
        assert pdf.Root.ViewerPreferences.DisplayDocTitle
        assert pdf.docinfo["/Title"] == "Wire finding record"
        found = tags(pdf)
        assert {"/H1", "/Table", "/TH", "/Figure"} <= set(found)
        figures = [node for node in nodes(pdf.Root.StructTreeRoot) if node.S == "/Figure" and "/Alt" in node]
        assert len(figures) == 11  # ten bars, one waveform


def test_the_language_is_that_of_the_content(record: Build) -> None:
    """A German record says so."""
    with opened(record(language="de")) as pdf:
        assert pdf.Root.Lang == "de"


def test_every_font_is_inside(record: Build) -> None:
    """No glyph depends on the machine that shows the page."""
    with opened(record()) as pdf:
        descriptors = [
            o for o in pdf.objects if isinstance(o, pikepdf.Dictionary) and o.get("/Type") == "/FontDescriptor"
        ]
        assert descriptors
        assert all("/FontFile2" in one or "/FontFile3" in one for one in descriptors)
        assert any("AtkinsonHyperlegible" in str(one.FontName) for one in descriptors)


@pytest.mark.parametrize(
    "journal", [b'{"v":1}\n', "µ 漢 🚚\r\n".encode(), b"\xff\x00\xfe broken", b"", bytes(range(256)) * 40]
)
def test_the_journal_comes_back_byte_for_byte(record: Build, journal: bytes) -> None:
    """What was attached is what is found inside, as an associated file of the document."""
    with opened(record(journal=journal)) as pdf:
        assert list(pdf.attachments) == ["journal.jsonl"]
        inside = pdf.attachments["journal.jsonl"]
        assert inside.get_file().read_bytes() == journal
        assert inside.obj.AFRelationship == "/Source"
        assert len(pdf.Root.AF) == 1


def test_a_wrong_digest_is_refused(record: Build) -> None:
    """A record never prints a digest that is not that of the journal inside it."""
    with pytest.raises(JournalError, match=hashlib.sha256(b"a").hexdigest()):
        write_record(record(journal=b"a", journal_digest="0" * 64))


def test_a_normal_job_is_one_page(record: Build) -> None:
    """Ten findings, a waveform, identity and choice fit on one side of A4 (210 mm × 297 mm in points)."""
    with opened(record()) as pdf:
        assert len(pdf.pages) == 1
        assert [round(float(edge)) for edge in pdf.pages[0].MediaBox] == [0, 0, 595, 842]


def test_many_findings_flow_on(record: Build, findings: Callable[[int], tuple[Finding, ...]]) -> None:
    """Two hundred findings take several pages; all of them are there."""
    with opened(record(findings=findings(200))) as pdf:
        assert 10 <= len(pdf.pages) <= 20
        figures = [node for node in nodes(pdf.Root.StructTreeRoot) if node.S == "/Figure" and "/Alt" in node]
        assert len(figures) == 201


def test_every_further_page_says_whose_it_is(
    record: Build, findings: Callable[[int], tuple[Finding, ...]], shown: Shown
) -> None:
    """The head of each further page names vehicle and unit, its foot the page of how many."""
    with opened(record(findings=findings(40))) as pdf:
        assert len(pdf.pages) > 2
        for number, page in enumerate(pdf.pages, start=1):
            assert packed(f"page {number} of {len(pdf.pages)}") in shown(page)
            assert packed("Harrow & Vale Linnet 18 t, fleet no. 17") in shown(page)


@pytest.mark.parametrize("verdict", Verdict)
def test_the_verdict_at_a_glance(record: Build, verdict: Verdict, shown: Shown) -> None:
    """Each of the four verdicts makes a page on which it stands first."""
    with opened(record(verdict=verdict, findings=(), pictures=())) as pdf:
        assert packed(f"+02:00{verdict}Red 2.5 is") in shown(pdf.pages[0])


def test_a_record_of_nothing_is_still_a_record(record: Build) -> None:
    """No findings, no pictures, no choice, no notes, no identity, no time."""
    empty = record(findings=(), pictures=(), choices=(), notes=(), identity=(), next_step=None, made_at=None)
    with opened(empty) as pdf:
        assert len(pdf.pages) == 1
        assert list(pdf.attachments) == ["journal.jsonl"]


def test_equal_content_gives_equal_bytes(record: Build) -> None:
    """Two runs agree to the byte; another time of making does not."""
    first = write_record(record())
    assert write_record(record()) == first
    assert write_record(record(), timestamp=1) != first


def test_another_process_gives_the_same_bytes(record: Build) -> None:
    """Nothing hangs on the order in which a process happens to hold things."""
    script = (
        "import hashlib; from backprobe.findings import Verdict; from backprobe.paper.content import RecordContent;"
        "from backprobe.paper.record import write_record;"
        "c = RecordContent(title='t', verdict=Verdict.HOLDS, sentence='s', journal=b'j', journal_name='journal.jsonl',"
        "journal_digest=hashlib.sha256(b'j').hexdigest(), engine_version='0');"
        "print(hashlib.sha256(write_record(c)).hexdigest())"
    )
    command = [sys.executable, "-c", script]
    runs = {
        subprocess.run(
            command, env={"PYTHONPATH": ":".join(sys.path), "PYTHONHASHSEED": seed}, capture_output=True, check=True
        ).stdout
        for seed in ("1", "2")
    }
    assert len(runs) == 1


@pytest.mark.parametrize(
    ("made_at", "date"),
    [
        ("2026-03-04T11:20:00+02:00", "20260304092000"),  # 11:20 two hours east of Greenwich is 09:20 there
        ("2026-03-04T11:20:00", "19700101000000"),
        (None, "19700101000000"),
        ("yesterday", "19700101000000"),
    ],
)
def test_the_creation_time_is_that_of_the_content(record: Build, made_at: str | None, date: str) -> None:
    """An instant is taken over; what names none gives the start of 1970, not the clock of this machine."""
    with opened(record(made_at=made_at)) as pdf:
        assert date in str(pdf.docinfo["/CreationDate"])


def test_letters_without_a_glyph_are_shown_by_their_code(record: Build, a_waveform: Any, shown: Shown) -> None:
    """An emoji and a Chinese sign never cost the record: their codes are on the page, and a note says why."""
    content = record(
        title="Cab 🚚",
        choices=(ChoiceRow(lead="Supply", wire="漢字 2.5"),),
        pictures=(a_waveform("wire 漢"),),
        findings=(),
    )
    with opened(content) as pdf:
        assert pdf.open_metadata().pdfa_status == "3A"
        assert pdf.docinfo["/Title"] == "Cab 🚚"
        text = shown(pdf.pages[0])
        assert "U+1F69A" in text
        assert packed("U+6F22 U+5B57") in text
        assert packed("wire □") in text
        assert packed("the journal inside this PDF keeps the originals") in text


def test_other_scripts_are_printed_where_there_are_glyphs(record: Build, shown: Shown) -> None:
    """A Cyrillic and a Greek name are read as they are, and bring no note."""
    with opened(record(identity=(IdentityRow("Fitter", "Олена Ковальчук, Νίκος"),))) as pdf:
        text = shown(pdf.pages[0])
        assert packed("Олена Ковальчук, Νίκος") in text
        assert "originals" not in text


@pytest.mark.parametrize(
    "text",
    ["#let x = 1", "*bold* _it_ $x$ @ref <label>", "#panic()", "\\ [ ] { } // /* ", '"]) #import "a"', "= h", "a\x00b"],
)
def test_what_people_type_is_never_markup(record: Build, text: str, shown: Shown) -> None:
    """Signs that mean something to the typesetter are printed as they are, wherever they stand."""
    content = record(
        title=text,
        sentence=text,
        identity=(IdentityRow(text, text),),
        choices=(ChoiceRow(lead=text, wire=text, place=text, note=text),),
        notes=(text,),
        findings=(),
        engine_version=text,
    )
    with opened(content) as pdf:
        # title, sentence, label, value, lead, wire, place, note, caution, engine
        assert shown(pdf.pages[0]).count(packed(text.replace("\x00", "U+0000"))) == 10


@settings(max_examples=40, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(text=st.text(max_size=60), journal=st.binary(max_size=200))
def test_no_text_costs_the_record(record: Build, text: str, journal: bytes) -> None:
    """Any text anywhere, any journal: a declared PDF/A comes out with the journal inside."""
    findings = tuple(
        Finding(
            id="x",
            stage=record().findings[0].stage,
            what=text,
            verdict=Verdict.OPEN,
            because=text,
            next=text,
            unit=text,
        )
        for _ in range(2)
    )
    content = record(
        title=text,
        sentence=text,
        next_step=text,
        notes=(text,),
        made_at=text,
        findings=findings,
        pictures=(),
        journal=journal,
    )
    with opened(content) as pdf:
        assert pdf.open_metadata().pdfa_status == "3A"
        assert pdf.attachments["journal.jsonl"].get_file().read_bytes() == journal


def test_a_page_that_cannot_be_set_is_refused_in_words(record: Build) -> None:
    """What is wrong for another reason than a glyph comes out as the project's own error."""
    with pytest.raises(JobError, match="cannot be set on paper"):
        write_record(record(pictures=(Picture(svg="<svg", caption="c", alt="a"),)))
    with pytest.raises(JobError, match="cannot be set on paper"):
        write_record(record(language="klingon"))


def test_importing_it_loads_no_typesetter() -> None:
    """The command line starts quickly: the large library is loaded by the first record, not by the import."""
    script = "import sys, backprobe.paper.record; print('typst' in sys.modules)"
    environment = {"PYTHONPATH": ":".join(sys.path)}
    found = subprocess.run([sys.executable, "-c", script], env=environment, capture_output=True, text=True, check=True)
    assert found.stdout.strip() == "False"


SIGNED = SignOffBlock(
    end="provisional",
    lines=("missing: one parked night (owed by the yard until 2026-04-07)", "the driver was told: call the yard"),
    signed="Signed by Інес Окафор, 2026-04-01 08:15 UTC by the signing device's clock, over 21 entries.",
    key="4a80 17e4 e4a7 0f2f",
)


def test_a_sign_off_stands_on_the_page(record: Build, shown: Shown) -> None:
    """How it ended, what is missing, who signed, when, over what, with which key; without one nothing of that."""
    with opened(record(sign_off=SIGNED)) as pdf:
        text = "".join(shown(page) for page in pdf.pages)
    for words in ("Handed over as provisional", *SIGNED.lines, SIGNED.signed, f"Key {SIGNED.key}"):
        assert packed(words) in text
    with opened(record()) as pdf:
        assert "Handedover" not in "".join(shown(page) for page in pdf.pages)


def test_the_journal_s_digest_stands_there_as_a_code(record: Build) -> None:
    """Read off the printed page by a reader of codes: the sha256 of the journal inside."""
    content = record(sign_off=SIGNED)
    data = json.dumps(sheet(content, frozenset()))
    setter = typst.Compiler(paper._template(), font_paths=paper._fonts(), sys_inputs={"data": data})
    pages = setter.compile(format="png", ppi=150)
    pictures = [Image.open(io.BytesIO(page)).convert("L") for page in (pages if isinstance(pages, list) else [pages])]
    found = [code.text for picture in pictures for code in zxingcpp.read_barcodes(np.asarray(picture))]
    assert found == [f"sha256:{hashlib.sha256(content.journal).hexdigest()}"]


@pytest.mark.parametrize("content", [b"{}", b"", b"\xff\x00", "漢 🚚".encode()])
def test_what_was_signed_is_attached(record: Build, content: bytes) -> None:
    """Beside the journal, byte for byte, with what it is; a letter that no page could show does no harm there."""
    made = record(attached=(Attachment("signed-findings.json", content, "The findings that were signed"),))
    with opened(made) as pdf:
        assert sorted(pdf.attachments) == ["journal.jsonl", "signed-findings.json"]
        inside = pdf.attachments["signed-findings.json"]
        assert inside.get_file().read_bytes() == content
        assert inside.description == "The findings that were signed"
        assert inside.relationship == "/Supplement"
        assert pdf.open_metadata().pdfa_status == "3A"


FULL = {
    "wiring": Picture(svg="<svg xmlns='http://www.w3.org/2000/svg' width='10' height='10'/>", caption="w", alt="words"),
    "readings": ReadingsGrid(("off", "on"), (GridRow("red 2.5", (("12.62 V",), ("12.40 V", "12.29 V at 1.5 A"))),)),
    "joined": (JoinedRow(lead="power", joined="to red 2.5, soldered sleeve", undo="cut the sleeve out"),),
    "driver_told": ("call the yard before the batteries are changed",),
    "sign_off": SIGNED,
}


def a_photo(number: int, size: tuple[int, int] = (720, 540)) -> ShownPhoto:
    """One of many photos."""
    return ShownPhoto(
        jpeg=as_file(four_corners(*size)),
        width_px=size[0],
        height_px=size[1],
        shows=f"Shown {number}",
        note=f"note {number}",
        source=f"photos/{number}.jpg",
        alt=f"words of photo {number}",
    )


def pages_with(pdf: pikepdf.Pdf, shown: Shown, words: str) -> list[int]:
    """The pages, from 1, on which the words stand."""
    return [number for number, page in enumerate(pdf.pages, start=1) if packed(words) in shown(page)]


def test_the_parts_stand_in_their_order(record: Build, shown: Shown) -> None:
    """Findings, drawing, readings, crank, photos, undoing, driver, cautions, sign-off; each with a heading."""
    parts = (
        *("Findings", "As built", "Readings, as they were written down", "The crank, as it was recorded", "Photos"),
        *("What was joined, and how to undo it", "What the driver was told", "To bear in mind"),
        "Handed over as provisional",
    )
    with opened(record(**FULL, photos=(a_photo(1), a_photo(2)))) as pdf:
        text = "".join(shown(page) for page in pdf.pages)
        places = [text.index(packed(part)) for part in parts]
        assert places == sorted(places)
        assert {"/H1", "/Table", "/TH", "/Figure"} <= set(tags(pdf))
        assert tags(pdf).count("/H1") >= len(parts)
        assert 2 <= len(pdf.pages) <= 4


def test_readings_are_a_table_with_heads(record: Build, shown: Shown) -> None:
    """Key positions are header cells; each figure stands there with its load."""
    with opened(record(readings=FULL["readings"], findings=(), pictures=())) as pdf:
        heads = [node for node in nodes(pdf.Root.StructTreeRoot) if node.S == "/TH"]
        assert len(heads) == 3
        assert packed("12.29 V at 1.5 A") in "".join(shown(page) for page in pdf.pages)


@pytest.mark.parametrize(("count", "pages"), [(1, 1), (3, 1), (6, 1), (7, 2), (12, 2)])
def test_at_most_six_photos_stand_on_a_page(record: Build, shown: Shown, count: int, pages: int) -> None:
    """Each with its caption and its alternative text; the seventh begins a new page."""
    photos = tuple(a_photo(number) for number in range(count))
    with opened(record(photos=photos)) as pdf:
        on = [pages_with(pdf, shown, f"Shown {number}note {number}photos/{number}.jpg") for number in range(count)]
        assert all(len(places) == 1 for places in on)
        per_page = [sum(1 for places in on if places == [page]) for page in range(1, len(pdf.pages) + 1)]
        assert max(per_page) <= 6
        assert sum(1 for many in per_page if many) == pages
        alts = {str(node.Alt) for node in nodes(pdf.Root.StructTreeRoot) if node.S == "/Figure" and "/Alt" in node}
        assert {f"words of photo {number}" for number in range(count)} <= alts


def test_photos_of_any_shape_are_set(record: Build) -> None:
    """A point, a line across, a line down, a square: within the page, as JPEG as they came."""
    shapes = ((1, 1), (720, 1), (1, 720), (720, 720), (3, 5))
    with opened(record(photos=tuple(a_photo(number, size) for number, size in enumerate(shapes)))) as pdf:
        assert pdf.open_metadata().pdfa_status == "3A"
        images = [o for o in pdf.objects if isinstance(o, pikepdf.Stream) and o.get("/Subtype") == "/Image"]
        assert {(int(image.Width), int(image.Height)) for image in images} >= set(shapes)
        assert all(image.get("/Filter") == "/DCTDecode" for image in images)


def test_two_hundred_findings_of_either_kind_cost_nothing(record: Build, findings: Any) -> None:
    """With bars and without, and all other parts behind them: the record comes, and says all of them."""
    bare = tuple(replace(each, value=None, low=None, high=None, limit=None) for each in findings(200))
    with opened(record(**FULL, photos=(a_photo(1),), findings=(*findings(200), *bare))) as pdf:
        assert pdf.open_metadata().pdfa_status == "3A"
        assert 15 <= len(pdf.pages) <= 40


def test_letters_without_a_glyph_anywhere_cost_nothing(record: Build, shown: Shown) -> None:
    """In drawing, table, captions, undoing, what the driver was told: codes on the page, and PDF/A as before."""
    svg = "<svg xmlns='http://www.w3.org/2000/svg' width='90' height='20'><text y='12'>漢</text></svg>"
    odd = record(
        wiring=Picture(svg=svg, caption="漢", alt="漢"),
        readings=ReadingsGrid(("漢",), (GridRow("漢", (("漢 V",),)),)),
        photos=(replace(a_photo(1), shows="漢", note="🚚", source="漢.jpg", alt="漢"),),
        joined=(JoinedRow(lead="漢", joined="🚚", undo="漢"),),
        driver_told=("漢",),
    )
    with opened(odd) as pdf:
        assert pdf.open_metadata().pdfa_status == "3A"
        text = "".join(shown(page) for page in pdf.pages)
        assert text.count("U+6F22") >= 8
        assert text.count("U+1F69A") >= 2


@settings(max_examples=25, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(text=st.text(max_size=60))
def test_no_text_in_the_further_parts_costs_the_record(record: Build, text: str) -> None:
    """Any text in any of them: a declared PDF/A comes out."""
    content = record(
        findings=(),
        pictures=(),
        readings=ReadingsGrid((text,), (GridRow(text, ((text, text),)),)),
        photos=(replace(a_photo(1, (4, 3)), shows=text, note=text, source=text, alt=text or "a"),),
        joined=(JoinedRow(lead=text, joined=text, undo=text),),
        driver_told=(text,),
    )
    with opened(content) as pdf:
        assert pdf.open_metadata().pdfa_status == "3A"


def test_names_without_end_leave_the_figures_their_room(record: Build, shown: Shown) -> None:
    """A wire's name of 1,500 letters and no space: it is broken, and the figures beside it stand on their lines."""
    rows = (GridRow("x" * 1500, (("12.62 V",),) * 6), GridRow("Red", (("12.29 V at 1.5 A",),) * 6))
    grid = ReadingsGrid(tuple("abcdef"), rows)
    joined = (JoinedRow(lead="y" * 300, joined="z" * 900, undo="w" * 900),)
    with opened(record(readings=grid, joined=joined, findings=(), pictures=())) as pdf:
        assert pdf.open_metadata().pdfa_status == "3A"
        assert len(pdf.pages) <= 4
        text = "".join(shown(page) for page in pdf.pages)
        assert text.replace("\u200b", "").count("x" * 40) >= 1
        assert text.count(packed("12.29 V at 1.5 A")) == 6
