"""What the lens sees lands in the line it was scanned for, and is checked there and then, with no line."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest
import zxingcpp
from PIL import Image
from playwright.sync_api import Playwright, expect
from tests.journeys.conftest import CHROMIUM, PHONE, QUIET, Phone, Yard
from tests.journeys.test_probe import JOB
from tests.journeys.test_scan import FRAMES, SIZE, film
from tests.journeys.test_stages import unfold

from backprobe.stages.walkround.vin_number import check_digit

VIN = "5ZLDR7HV5KR200417"
MISREAD = "5ZLDR7HV5KR200477"  # one figure of the plate misprinted: position 9 no longer fits
ELSEWHERE = "LN2-00422"
REAL = ("code128-2_01", "code39-3_05", "datamatrix-3_dm-0", "qrcode-1_7")
GREY, NEAR, ASKEW_DEGREES = 190, 0.9, 5


class Labels:
    """What is held before the camera of a browser that was started with `options`."""

    def __init__(self, path: Path) -> None:
        self._path = path
        self.options = film(path, text=VIN, form=zxingcpp.BarcodeFormat.QRCode)

    def sees(self, text: str, form: zxingcpp.BarcodeFormat) -> None:
        """A label with this code is held before it, somewhat askew; the camera looks anew each time it is opened."""
        code = Image.fromarray(zxingcpp.create_barcode(text, form).to_image(scale=4, add_quiet_zones=True))
        turned = code.convert("L").rotate(ASKEW_DEGREES, expand=True, fillcolor=GREY, resample=Image.Resampling.BICUBIC)
        self._shows(turned)

    def sees_both(self, upper: str, lower: str) -> None:
        """A label with two codes, one above the other."""
        codes = [
            Image.fromarray(zxingcpp.create_barcode(text, zxingcpp.BarcodeFormat.Code128).to_image(scale=3))
            for text in (upper, lower)
        ]
        label = Image.new("L", (max(code.width for code in codes) + 40, sum(code.height for code in codes) + 120), 255)
        for code, top in zip(codes, (30, codes[0].height + 90), strict=True):
            label.paste(code, (20, top))
        self._shows(label)

    def sees_photo(self, photo: Path) -> None:
        """A photo of a real label is held before it."""
        self._shows(Image.open(photo))

    def _shows(self, picture: Image.Image) -> None:
        """As near as a hand would hold it: the picture fills most of what the lens sees."""
        scale = NEAR * min(SIZE[0] / picture.width, SIZE[1] / picture.height)
        near = picture.convert("RGB").resize((round(picture.width * scale), round(picture.height * scale)))
        scene = Image.new("RGB", SIZE, (GREY, GREY, GREY))
        scene.paste(near, ((SIZE[0] - near.width) // 2, (SIZE[1] - near.height) // 2))
        still = self._path.with_suffix(".jpg")
        scene.save(still, quality=90)
        self._path.write_bytes(still.read_bytes() * FRAMES)


class Lens(Labels):
    """The camera of a browser, and what is held before it."""

    def __init__(self, playwright_: Playwright, path: Path) -> None:
        super().__init__(path)
        self.browser = playwright_.chromium.launch(executable_path=CHROMIUM, args=[*QUIET, *self.options])


@pytest.fixture(scope="module")
def lens(playwright_: Playwright, tmp_path_factory: pytest.TempPathFactory) -> Iterator[Lens]:
    """A browser with a camera."""
    held = Lens(playwright_, tmp_path_factory.mktemp("lens") / "seen.mjpeg")
    yield held
    held.browser.close()


@pytest.fixture
def walking(lens: Lens, yard: Yard) -> Iterator[Phone]:
    """Ines's phone at the walkround, with no line; unit LN2-00422 is in truck LY 12 by the list of the day."""
    yard.desk.give("LY-2026-12", "LY 12", ELSEWHERE)
    context = lens.browser.new_context(**PHONE)
    phone = Phone(context, yard)
    phone.enrol()
    phone.offline()
    phone.page.goto(f"{yard.url}#/job/{JOB}/walkround")
    expect(phone.page.get_by_role("button", name="Scan: VIN")).to_be_visible()
    yield phone
    context.close()
    assert phone.faults == []


def scan(phone: Phone, line: str, expected: str) -> None:
    """Opens the camera at a line and waits for what it reads."""
    phone.page.get_by_role("button", name=f"Scan: {line}").click()
    expect(phone.page.get_by_label(line, exact=True)).to_have_value(expected)
    expect(phone.page.locator(".scanner")).to_have_count(0)


def test_vin_and_serial_are_scanned_into_their_lines(walking: Phone, lens: Lens) -> None:
    """A VIN as Code 39 and a serial number as Data Matrix: each in its own line, and both are found right."""
    lens.sees(VIN, zxingcpp.BarcodeFormat.Code39)
    scan(walking, "VIN", VIN)
    lens.sees("LN2-00417", zxingcpp.BarcodeFormat.DataMatrix)
    scan(walking, "Serial number", "LN2-00417")
    expect(walking.page.get_by_label("VIN", exact=True)).to_have_value(VIN)
    unfold(walking.page)  # what holds is folded away
    digit = walking.page.locator(".findings li", has_text="check digit of the VIN")
    expect(digit).to_contain_text("holds")
    expect(walking.page.get_by_role("alert")).to_have_count(0)


def test_a_wrong_check_digit_is_said_at_once(walking: Phone, lens: Lens) -> None:
    """A misprinted VIN, as Code 128, with no line: what is wrong stands beneath while the plate is still in sight."""
    assert check_digit(MISREAD) != MISREAD[8]
    lens.sees(MISREAD, zxingcpp.BarcodeFormat.Code128)
    scan(walking, "VIN", MISREAD)
    found = walking.page.locator(".findings li", has_text="Vehicle as on the job sheet")
    expect(found).to_contain_text("fails")
    expect(found).to_contain_text("the one on the sheet has the right check digit")


def test_a_unit_of_another_truck_is_caught_with_no_line(walking: Phone, lens: Lens) -> None:
    """Scanned off the label, in small letters as some print it: the truck that has the unit is named at once."""
    lens.sees(ELSEWHERE.lower(), zxingcpp.BarcodeFormat.Code128)
    scan(walking, "Serial number", ELSEWHERE.lower())
    expect(walking.page.get_by_role("alert")).to_contain_text("This unit is in LY 12 already")


def test_photos_of_real_labels_are_read(walking: Phone, lens: Lens, shared_data: Path) -> None:
    """Real photos of labels, with what is on them written beside them (../shared/data/README.md says whose)."""
    for name in REAL:
        lens.sees_photo(shared_data / "barcodes" / f"{name}.webp")
        expected = (shared_data / "barcodes" / f"{name}.txt").read_text(encoding="utf-8").strip()
        scan(walking, "Serial number", expected)


def test_a_label_with_two_codes(walking: Phone, lens: Lens) -> None:
    """The sheet's serial number is taken, whichever is read first; the other is offered, and taken by a touch."""
    other = "356938035643809"
    lens.sees_both(other, "LN2-00417")
    scan(walking, "Serial number", "LN2-00417")
    walking.page.get_by_role("button", name=other).click()
    expect(walking.page.get_by_label("Serial number", exact=True)).to_have_value(other)
    walking.page.get_by_role("button", name="LN2-00417").click()
    expect(walking.page.get_by_label("Serial number", exact=True)).to_have_value("LN2-00417")
