"""A job is handed over on the phone: a few touches and a drawing, signed with the phone's own key, seen by `verify`."""

from __future__ import annotations

import json
import tomllib
from pathlib import Path
from typing import Any

from playwright.sync_api import Page, expect
from tests.journeys.conftest import Phone
from tests.journeys.counted import Counted
from tests.journeys.test_probe import JOB
from tests.journeys.test_reach import must_be_reachable
from tests.journeys.test_stages import answer, corrected, held_by_server, touch
from tests.samples.demo_jobs import DEMO

from backprobe.cases.at_hand import engine_sha256, limits_sha256
from backprobe.cases.verify import verify
from backprobe.cli.verify_text import as_text
from backprobe.job.entry import read_entry
from backprobe.job.sign_off import bytes_to_sign, grouped
from backprobe.job.sign_off_door import sign_off_text
from backprobe.job.verified import Result
from backprobe.keys.folder import KeyFolder

MOST_TOUCHES = 5
END = "End as provisional, with this owed"
NO_ED25519 = """
const whole = crypto.subtle.generateKey.bind(crypto.subtle);
crypto.subtle.generateKey = (algorithm, ...rest) =>
  algorithm === "Ed25519"
    ? Promise.reject(new DOMException("unknown", "NotSupportedError"))
    : whole(algorithm, ...rest);
"""


MOST_RECORDS = 8
OLD_RECORDS = """
count => new Promise((done) => {
  const asked = indexedDB.open("backprobe");
  asked.onsuccess = () => {
    const changed = asked.result.transaction("settings", "readwrite");
    for (let at = 0; at < count; at += 1) {
      const record = { job: `old ${at}`, at: `2026-01-0${at + 1}T08:00Z`, entries: 1, bytes: new ArrayBuffer(1) };
      changed.objectStore("settings").put(record, ["record", record.job]);
    }
    changed.oncomplete = () => { asked.result.close(); done(); };
  };
})
"""
RECORDS = """
() => new Promise((done) => {
  const asked = indexedDB.open("backprobe");
  asked.onsuccess = () => {
    const got = asked.result.transaction("settings").objectStore("settings").getAllKeys();
    const isRecord = (key) => Array.isArray(key) && key[0] === "record";
    got.onsuccess = () => { asked.result.close(); done(got.result.filter(isRecord).map((key) => key[1])); };
  };
})
"""
FORGET_KEY = """
() => new Promise((done) => {
  const asked = indexedDB.open("backprobe");
  asked.onsuccess = () => {
    const changed = asked.result.transaction("settings", "readwrite");
    for (const name of ["signing keys", "signing key given"]) changed.objectStore("settings").delete(name);
    changed.oncomplete = () => { asked.result.close(); done(); };
  };
})
"""
KEPT_RECORD = """
job => new Promise((done) => {
  const asked = indexedDB.open("backprobe");
  asked.onsuccess = () => {
    const got = asked.result.transaction("settings").objectStore("settings").get(["record", job]);
    got.onsuccess = () => { asked.result.close(); done(new TextDecoder().decode(got.result.bytes.slice(0, 5))); };
  };
})
"""


def to_hand_over(phone: Phone) -> Page:
    """The page on which the truck is given back, once the engine has spoken."""
    phone.page.goto(f"{phone.yard.url}#/job/{JOB}/hand_over")
    expect(phone.page.locator(".ending .say")).to_have_count(0)
    return phone.page


def draw(page: Page) -> None:
    """Draws with a finger; once more where the page moved beneath it, as it does while findings still come in."""
    pad = page.locator(".signature canvas")
    clear = page.locator(".signature .clear")
    for _ in range(10):
        pad.hover(position={"x": 40, "y": 60})
        page.mouse.down()
        pad.hover(position={"x": 200, "y": 30})
        page.mouse.up()
        if clear.count() == 1:
            return
    expect(clear).to_be_visible()


def sign_and_finish(page: Page) -> None:
    """Draws, and lets the technician sign."""
    draw(page)
    page.get_by_role("button", name="Sign and finish").click()
    expect(page.locator(".signed h2")).to_contain_text("by Ines Okafor")


def kept(phone: Phone) -> list[dict[str, Any]]:
    """The entries that the server has."""
    return [json.loads(text) for text in phone.yard.desk.entries(JOB)]


def at_desk(phone: Phone, path: str) -> Any:
    """What the desk is told."""
    return phone.yard.desk.client.get(f"/api/desk/{path}").raise_for_status()


def finding(phone: Phone) -> dict[str, Any]:
    """What the server finds of the sign-off."""
    found = at_desk(phone, f"jobs/{JOB}").json()["answer"]["findings"]
    return next(dict(each) for each in found if each["id"] == "sign_off")


def keys_of(phone: Phone, place: Path) -> KeyFolder:
    """A folder of keys in which the keys that the desk lists are known by the names of those who carry the phones."""
    folder = KeyFolder(place)
    for each in at_desk(phone, "keys").json()["keys"]:
        folder.know(each["person"]["name"], each["key"])
    return folder


def as_folder(phone: Phone, place: Path) -> Path:
    """The job's journal and files as the server has them, as a job folder."""
    texts, blobs = held_by_server(phone)
    texts.sort(key=lambda text: ((entry := json.loads(text))["device"], entry["seq"]))  # as journals are merged
    (place / "blobs").mkdir(parents=True)
    (place / "journal.jsonl").write_text("".join(f"{text}\n" for text in texts), encoding="utf-8")
    for name, content in blobs.items():
        (place / "blobs" / name).write_bytes(content)
    return place


def signed_here(phone: Phone, sign_off: dict[str, Any]) -> str:
    """What the engine in this Python gives to be signed over the same entries, by the same person at the same time."""
    texts, blobs = held_by_server(phone)
    before = [text for text in texts if json.loads(text)["kind"] != "sign_off"]
    readable = {name: content.decode() for name, content in blobs.items() if not content.startswith(b"\xff\xd8")}
    sign = {name: sign_off[name] for name in ("id", "at", "by", "device", "engine")}
    sign |= {name: sign_off["body"][name] for name in ("key", "engine_sha256", "limits_sha256")}
    assert sign["engine_sha256"] == engine_sha256()
    assert sign["limits_sha256"] == limits_sha256()
    return str(json.loads(sign_off_text(json.dumps({"entries": before, "blobs": readable, "sign": sign})))["entry"])


def test_signed_with_no_line_it_verifies_by_name(phone: Phone, tmp_path: Path) -> None:
    """Offline: one touch ends it, one signs it. Then the server names the key's owner, and so does `verify`."""
    phone.offline()
    page = to_hand_over(phone)
    page.get_by_role("button", name=END).click()
    expect(page.locator(".ending")).to_contain_text("It ends: provisional.")
    must_be_reachable(phone)
    sign_and_finish(page)
    expect(page.locator(".signature img")).to_be_visible()
    must_be_reachable(phone)
    phone.online()
    expect(page.locator(".unsent")).to_have_text("All sent")
    *before, photo, sign_off = [each for each in kept(phone) if each["device"].startswith("phone-")]
    assert (photo["kind"], photo["body"]["shows"], sign_off["kind"]) == ("photo", "signature", "sign_off")
    assert before[0]["kind"] == "person"
    assert "Ines Okafor" not in "".join(phone.yard.desk.entries(JOB))
    assert signed_here(phone, sign_off) == bytes_to_sign(read_entry(phone.yard.desk.entries(JOB)[-1].encode())).decode()
    said = finding(phone)
    assert said["verdict"] == "holds"
    assert ", with Ines Okafor's key " in said["because"]
    record = tmp_path / "record.pdf"
    record.write_bytes(at_desk(phone, f"jobs/{JOB}/record.pdf").content)
    keys = keys_of(phone, tmp_path / "keys")
    done = verify(record, keys.names())
    assert done.verified.result is Result.INTACT
    assert "by Ines Okafor: " in as_text(done)
    folder = as_folder(phone, tmp_path / "job")
    assert verify(folder, keys.names()).verified.result is Result.INTACT


def test_a_changed_entry_is_found_afterwards(phone: Phone, tmp_path: Path) -> None:
    """A figure of the phone's, altered in the exported journal by one digit: `verify` names that entry."""
    phone.to_wires()
    phone.choose_meter()
    phone.add_wire("X12", "4", "RD")
    phone.measure("X12/4 RD", "off", "12.62")
    page = to_hand_over(phone)
    page.get_by_role("button", name=END).click()
    sign_and_finish(page)
    expect(page.locator(".unsent")).to_have_text("All sent")
    folder, keys = as_folder(phone, tmp_path / "job"), keys_of(phone, tmp_path / "keys")
    journal = folder / "journal.jsonl"
    whole = journal.read_text(encoding="utf-8")
    assert verify(folder, keys.names()).verified.result is Result.INTACT
    journal.write_text(whole.replace('"volts":"12.62"', '"volts":"12.82"'), encoding="utf-8")
    done = verify(folder, keys.names()).verified
    altered = next(each["id"] for each in kept(phone) if each["kind"] == "reading")
    assert done.result is Result.ALTERED
    assert done.faults[0].entry == altered


def test_proven_is_refused_and_provisional_offered(phone: Phone) -> None:
    """Chosen by hand, 'proven' shows why not, and nothing can be signed; one touch names all that is owed instead."""
    page = to_hand_over(phone)
    page.get_by_text("Another end, or who owes it").click()
    touch(page.get_by_role("group", name="It ends").get_by_label("proven", exact=True))
    refusal = page.locator(".ending [role=alert]")
    expect(refusal).to_contain_text("It cannot be signed as proven yet:")
    expect(refusal).to_contain_text("Whether the unit works in the vehicle: open: ")
    draw(page)
    expect(page.get_by_role("button", name="Sign and finish")).to_be_disabled()
    page.get_by_role("button", name=END).click()
    expect(refusal).to_have_count(0)
    expect(page.get_by_role("button", name="Sign and finish")).to_be_enabled()
    must_be_reachable(phone)
    expect(page.locator(".unsent")).to_have_text("All sent")
    said = tomllib.loads(corrected(*held_by_server(phone)))["hand_over"]
    assert said["end"] == "provisional"
    assert {each["owed_by"] for each in said["missing"]} == {"Linden Yard, bay 3"}
    days = page.evaluate("new Date(Date.now() + 86400000).toLocaleDateString('sv-SE')")
    assert {each["until"] for each in said["missing"]} == {days}


def test_what_comes_after_the_signature_demands_a_new_one(phone: Phone) -> None:
    """Signed; then what the driver was told: the page says that it has to be signed again, and it can be."""
    page = to_hand_over(phone)
    page.get_by_role("button", name=END).click()
    sign_and_finish(page)
    driver = page.locator("section", has=page.get_by_role("heading", name="The driver"))
    touch(driver.get_by_role("group", name="What the driver was told").get_by_label("none", exact=True))
    expect(page.get_by_role("alert")).to_contain_text("1 entry came after the signature: sign again.")
    page.get_by_role("button", name="Sign and finish").click()
    expect(page.get_by_role("alert")).to_have_count(0)
    expect(page.locator(".unsent")).to_have_text("All sent")
    assert [each["kind"] for each in kept(phone)].count("sign_off") == 2
    assert finding(phone)["verdict"] == "holds"


def test_a_browser_without_ed25519_says_so(phone: Phone) -> None:
    """No key can be made: the drawing is kept, the job stays unsigned, and the server says that too."""
    phone.page.add_init_script(NO_ED25519)
    phone.page.evaluate(FORGET_KEY)
    phone.page.reload()
    page = to_hand_over(phone)
    expect(page.locator(".signs")).to_contain_text("This browser has no Ed25519")
    page.get_by_role("button", name=END).click()
    draw(page)
    must_be_reachable(phone)
    page.get_by_role("button", name="Keep the drawing, hand over unsigned").click()
    expect(page.locator(".signature img")).to_be_visible()
    expect(page.locator(".unsent")).to_have_text("All sent")
    assert [each["kind"] for each in kept(phone)].count("sign_off") == 0
    assert finding(phone)["because"] == "nobody has signed this job off yet"


def test_a_job_is_abandoned_with_nobody_there(phone: Phone) -> None:
    """What was undone, restored and why is asked for first; then the key signs alone, and that is shown."""
    page = to_hand_over(phone)
    page.get_by_text("Another end, or who owes it").click()
    touch(page.get_by_role("group", name="It ends").get_by_label("abandoned", exact=True))
    expect(page.locator(".ending [role=alert]")).to_contain_text("why the job was abandoned is not said")
    answer(page, "Why", "the owner said no")
    for question in ("What was taken out again", "What was put back and tested"):
        touch(page.get_by_role("group", name=question).get_by_label("there are", exact=True))
        line = page.get_by_role("textbox", name="Several: with a comma between").last
        line.fill("nothing had been touched")
        line.blur()
    expect(page.locator(".ending [role=alert]")).to_have_count(0)
    page.get_by_role("button", name="Nobody is there to draw: sign without").click()
    expect(page.locator(".signed h2")).to_contain_text("Signed off as abandoned, by Ines Okafor")
    expect(page.locator(".unsent")).to_have_text("All sent")
    assert at_desk(phone, f"jobs/{JOB}").json()["job"]["state"] == "abandoned"
    assert [each["kind"] for each in kept(phone)].count("photo") == 0


def test_a_phone_that_was_enrolled_before_gives_its_key_later(phone: Phone) -> None:
    """Without a key, as a phone of an earlier version: the next round makes one, and the desk lists both."""
    phone.page.evaluate(FORGET_KEY)
    phone.page.reload()
    to_hand_over(phone)
    key = phone.page.locator(".signs .key")
    expect(key).to_contain_text("Key ")
    expect(phone.page.locator(".unsent")).to_have_text("All sent")
    phone.page.get_by_role("button", name="Record (PDF)").click()  # a round of sending and fetching comes first
    expect(phone.page.get_by_role("link", name="Open the record of")).to_be_visible()
    mine = [each for each in at_desk(phone, "keys").json()["keys"] if each["device"].startswith("phone-")]
    assert len({each["key"] for each in mine}) == 2
    assert grouped(mine[-1]["fingerprint"]) in (key.text_content() or "")


def test_the_record_is_kept_for_where_there_is_no_line(phone: Phone) -> None:
    """With a line the server makes it; without one it is shown as it was kept, and a fresh one is refused plainly."""
    page = to_hand_over(phone)
    page.evaluate(OLD_RECORDS, MOST_RECORDS)
    page.get_by_role("button", name="Record (PDF)").click()
    shown = page.get_by_role("link", name="Open the record of")
    expect(shown).to_be_visible()
    must_be_reachable(phone)
    phone.offline()
    page.reload()
    expect(shown).to_be_visible()
    with page.context.expect_page() as opened:
        shown.click()
    assert opened.value.url.startswith("blob:")
    opened.value.close()
    assert page.evaluate(KEPT_RECORD, JOB) == "%PDF-"
    names = page.evaluate(RECORDS)
    assert sorted(names) == sorted([JOB, *(f"old {number}" for number in range(1, MOST_RECORDS))])  # the oldest went
    page.get_by_role("button", name="Record (PDF)").click()
    expect(page.locator(".record [role=status]")).to_contain_text("No line: only the server makes the record.")
    answer(page, "Odometer [km]", "184220")
    expect(page.locator(".record")).to_contain_text("More was entered since that record was made.")


def test_as_before_is_one_touch(phone: Phone) -> None:
    """What the walkround wrote down before the work is said of the time after it, each thing named on the screen."""
    page = phone.page
    page.goto(f"{phone.yard.url}#/job/{JOB}/walkround")
    before = page.locator("section", has=page.get_by_role("heading", name="The vehicle before the work"))
    before.get_by_role("button", name="No lamp burns, no code stands").click()
    answer(before, "Odometer [km]", "184220")
    expect(page.locator(".unsent")).to_have_text("All sent")
    page = to_hand_over(phone)
    after = page.locator("section", has=page.get_by_role("heading", name="The vehicle after the work"))
    expect(after.locator(".given")).to_contain_text("184220 km")
    page.get_by_role("button", name="All as before the work").click()
    expect(after.locator(".answered")).to_contain_text("184220 km")
    expect(page.locator(".unsent")).to_have_text("All sent")
    written = tomllib.loads(corrected(*held_by_server(phone)))
    assert written["after"] == written["before"] == {"odometer_km": 184220, "lamps": "none", "codes": "none"}


def test_a_truck_is_given_back_in_a_few_touches(phone: Phone) -> None:
    """As before, as the driver of the last truck was told, the end that is possible, signed: nothing is typed."""
    whole = (DEMO / "truck-07" / "job.toml").read_text(encoding="utf-8")
    last = whole[whole.index("[[joint]]") : whole.index("[mount]")] + whole[whole.index("[hand_over]") :]
    phone.yard.desk.give("LY-2026-03", "LY 03", "LN2-00431", more=last)
    counted = Counted(phone.context)
    phone.page.goto(f"{phone.yard.url}#/job/{JOB}/walkround")
    phone.page.reload()
    before = phone.page.locator("section", has=phone.page.get_by_role("heading", name="The vehicle before the work"))
    before.get_by_role("button", name="No lamp burns, no code stands").click()
    answer(before, "Odometer [km]", "184220")
    expect(phone.page.locator(".unsent")).to_have_text("All sent")
    page = to_hand_over(phone)
    counted.begin()
    page.get_by_role("button", name="All as before the work").click()
    page.get_by_role("button", name="As in LY 03").click()
    page.get_by_role("button", name=END).click()
    sign_and_finish(page)
    assert len(counted.touches) <= MOST_TOUCHES, counted.touches
    assert counted.characters == ""
    expect(page.locator(".unsent")).to_have_text("All sent")
    sheet = tomllib.loads(corrected(*held_by_server(phone)))
    assert sheet["hand_over"]["told_driver"] == tomllib.loads(whole)["hand_over"]["told_driver"]
    assert finding(phone)["verdict"] == "holds"


def test_what_is_printed_is_all_that_was_found(phone: Phone) -> None:
    """On paper the findings and who signed; nothing that is only to be touched."""
    page = to_hand_over(phone)
    page.get_by_role("button", name=END).click()
    sign_and_finish(page)
    expect(page.locator(".printed")).to_be_hidden()
    page.emulate_media(media="print")
    expect(page.locator(".printed")).to_be_visible()
    expect(page.locator(".top")).to_be_hidden()
    expect(page.locator(".signed h2")).to_be_visible()
    expect(page.locator(".ending")).to_be_hidden()


def test_a_withdrawn_phone_signs_nothing_anew(phone: Phone) -> None:
    """Signed with no line, the phone withdrawn meanwhile: what it hands in waits for the lead, nothing is signed."""
    phone.offline()
    page = to_hand_over(phone)
    page.get_by_role("button", name=END).click()
    sign_and_finish(page)
    desk = phone.yard.desk
    desk.client.headers["X-CSRF-Token"] = desk.server.running.local_csrf
    [mine] = [each for each in at_desk(phone, "phones").json()["phones"] if each["device"].startswith("phone-")]
    desk.client.post(f"/api/desk/phones/{mine['id']}/withdraw").raise_for_status()
    phone.online()
    expect(page.locator(".unsent")).to_have_text("All sent")
    aside = at_desk(phone, "quarantine").json()["items"]
    assert "sign_off" in [json.loads(each["text"])["kind"] for each in aside]
    assert [each["kind"] for each in kept(phone)].count("sign_off") == 0
