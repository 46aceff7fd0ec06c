"""A hand that does no more than the page asks finds the pair of wires, and how often it has to touch is counted."""

from __future__ import annotations

from playwright.sync_api import expect
from tests.journeys.conftest import Phone

# what an invented truck shows on three wires of one connector, by the position of the key
POSITIONS = ("off", "accessory", "on", "crank", "running", "after")
SHOWN = {
    "X12/4 RD": ("12.62", "12.58", "12.40", "10.81", "14.02", "12.60"),
    "X12/9 VT": ("0.02", "0.02", "12.38", "10.66", "13.99", "0.01"),
    "X12/6 GY": ("0.01", "12.55", "12.37", "0.04", "13.98", "0.02"),
}
TRUCK = {wire: dict(zip(POSITIONS, volts, strict=True)) for wire, volts in SHOWN.items()}
KEYS = {"after 10 min": "after"}
MOST_STEPS = 25
DEAD_V, NEAR_V = 0.3, 0.3


class Hand:
    """Touches and types as the page asks, and counts."""

    def __init__(self, phone: Phone) -> None:
        self.page = phone.page
        self.taps = 0
        self.typed = 0

    def touch(self, name: str, *, within: str = "body") -> None:
        """Touches a button."""
        self.page.locator(within).get_by_role("button", name=name, exact=True).click()
        self.taps += 1

    def add(self, wire: str) -> None:
        """Adds a wire: its place is typed, its colour touched."""
        place, colour = wire.split(" ")
        connector, cavity = place.split("/")
        self.touch("Add a wire", within="main")
        sheet = self.page.get_by_role("dialog")
        for line, text in (("Connector", connector), ("Cavity", cavity)):
            sheet.get_by_label(line).fill(text)
            self.taps += 1
            self.typed += len(text)
        sheet.get_by_label(colour, exact=True).check(force=True)
        self.taps += 1
        self.touch("Add a wire", within="dialog")
        expect(sheet).to_be_hidden()

    def chosen(self) -> tuple[str, str]:
        """The wire and the position that the page has chosen for the next figure."""
        wire, _, key = (self.page.locator(".shown .of").text_content() or "").rpartition(", ")
        return wire, KEYS.get(key, key)

    def give(self, wire: str, key: str) -> None:
        """Gives the figure that the truck shows there: by one touch where it is dead or as the battery, else typed."""
        volts = TRUCK[wire][key]
        battery = self.page.locator(".one-touch button").nth(1)
        known = battery.locator("b").text_content() if battery.locator("b").count() else None
        if key != "crank" and float(volts) < DEAD_V:
            self.page.locator(".one-touch button").first.click()
            self.taps += 1
        elif known is not None and abs(float(known.removesuffix(" V")) - float(volts)) < NEAR_V:
            battery.click()
            self.taps += 1
        else:
            for digit in volts:
                self.touch("Point" if digit == "." else digit, within=".keys")
            self.touch("Keep", within=".entry")

    def settled(self) -> str:
        """What the page asks for once the engine has spoken on all that was kept."""
        expect(self.page.locator(".next:not(.behind) .do")).to_be_visible()
        expect(self.page.locator(".one-touch button, .keys button").first).to_be_enabled()
        return self.page.locator(".next .do").text_content() or ""


def test_the_page_leads_to_the_pair(phone: Phone) -> None:
    """With no line: three wires added, every figure that is asked for given, until nothing more is asked.

    The page asks for at most 15 figures. Adding the wires takes 5 touches each; all else is figures. What the wires
    feed is told by no meter and stays open.
    """
    phone.to_wires()
    phone.choose_meter()
    phone.offline()
    hand = Hand(phone)
    for wire in TRUCK:
        hand.add(wire)
    steps = 0
    while "Nothing more" not in hand.settled() and steps < MOST_STEPS:
        phone.page.wait_for_timeout(400)  # for a third of a second after a change nothing is taken
        hand.give(*hand.chosen())
        steps += 1
        expect(phone.page.locator(".readings li")).to_have_count(steps)
    roles = {name: phone.page.locator(f".pair label:has-text('{name}') .note").text_content() for name in TRUCK}
    assert (roles["X12/4 RD"], roles["X12/9 VT"]) == ("constant", "ignition")
    assert roles["X12/6 GY"] != "ignition"
    assert steps <= 15
    assert hand.taps <= 60
    assert hand.typed == 3 * len("X124")
