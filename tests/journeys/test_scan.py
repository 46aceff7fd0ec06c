"""Codes are scanned by the camera: a film that holds one still picture stands in for what the lens sees."""

from __future__ import annotations

from pathlib import Path

import zxingcpp
from PIL import Image
from playwright.sync_api import Playwright, expect
from tests.journeys.conftest import CHROMIUM, PHONE, QUIET, Phone, Yard
from tests.journeys.test_probe import JOB

FRAMES = 3
SIZE = (960, 720)


def film(path: Path, *, text: str, form: zxingcpp.BarcodeFormat) -> list[str]:
    """Options for a browser whose camera sees a label with this code, somewhat askew on grey."""
    code = Image.fromarray(zxingcpp.create_barcode(text, form).to_image(scale=4, add_quiet_zones=True)).convert("L")
    code = code.rotate(7, expand=True, fillcolor=190, resample=Image.Resampling.BICUBIC)
    scene = Image.new("RGB", SIZE, (190, 190, 190))
    scene.paste(code.convert("RGB"), ((SIZE[0] - code.width) // 2, (SIZE[1] - code.height) // 2))
    scene.save(path.with_suffix(".jpg"), quality=80)
    path.write_bytes(path.with_suffix(".jpg").read_bytes() * FRAMES)
    return [
        "--use-fake-ui-for-media-stream",
        "--use-fake-device-for-media-stream",
        f"--use-file-for-fake-video-capture={path}",
    ]


def test_a_phone_is_enrolled_by_the_code_on_the_desk(playwright_: Playwright, yard: Yard, tmp_path: Path) -> None:
    """The desk's QR in front of the camera: the code stands in its line, a touch enrols, the day is there."""
    seen = film(tmp_path / "desk.mjpeg", text=yard.enrolment(), form=zxingcpp.BarcodeFormat.QRCode)
    browser = playwright_.chromium.launch(executable_path=CHROMIUM, args=[*QUIET, *seen])
    phone = Phone(browser.new_context(**PHONE), yard)
    phone.page.goto(yard.url)
    phone.page.locator("main button.wide").first.click()
    expect(phone.page.locator("form input").first).not_to_have_value("")
    phone.page.locator("form button[type=submit]").click()
    expect(phone.page.locator(".jobs li")).to_have_count(1)
    browser.close()


def test_a_serial_is_scanned_off_the_unit(playwright_: Playwright, yard: Yard, tmp_path: Path) -> None:
    """The label of a unit, a bar code: its serial number stands in its line and is kept."""
    seen = film(tmp_path / "unit.mjpeg", text="LN2-00417", form=zxingcpp.BarcodeFormat.Code128)
    browser = playwright_.chromium.launch(executable_path=CHROMIUM, args=[*QUIET, *seen])
    phone = Phone(browser.new_context(**PHONE), yard)
    phone.enrol()
    phone.page.goto(f"{yard.url}#/job/{JOB}/walkround")
    phone.page.get_by_role("button", name="Scan: Serial number").click()
    expect(phone.page.get_by_label("Serial number", exact=True)).to_have_value("LN2-00417")
    expect(phone.page.locator(".unsent")).to_have_text("All sent")
    assert any("walkround" in text for text in yard.desk.entries(JOB))
    browser.close()


def test_without_a_camera_the_code_is_typed(phone: Phone) -> None:
    """No camera to be had: the page says so, and typing is always there."""
    context = phone.context.browser.new_context(**PHONE) if phone.context.browser else phone.context
    new = Phone(context, phone.yard)
    new.page.goto(phone.yard.url)
    new.page.locator("main button.wide").first.click()
    expect(new.page.get_by_role("alert")).to_contain_text("Type the code instead")
    new.page.locator("form input").first.fill(phone.yard.desk.server.code(phone.yard.desk.person))
    new.page.locator("form button[type=submit]").click()
    expect(new.page.locator(".jobs li")).to_have_count(1)
    context.close()
