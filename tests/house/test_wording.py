"""The tree speaks of the product alone, and names no maker that exists."""

from __future__ import annotations

import re

import pytest

# Bracketed letters keep these patterns from finding themselves.
NOT_THE_PRODUCT = re.compile(
    r"\b(?:[A]I|[L]LMs?|[G]PT(?:-\d+)?)\b"
    r"|\b(?i:[a]ssistants?|[c]opilot|[c]laude|[a]nthropic|[o]penai|[c]hatgpt|language [m]odels?|sub[a]gents?)\b"
    r"|\b(?i:[i]ssues? #?\d+)\b"
    r"|\b(?i:(?:this|last|previous|earlier|next|later|coding|work|developer) [s]essions?)\b"
    r"|\b(?i:other [h]elpers|the [b]rief)\b"
)

# Makers of vehicles; those whose names are everyday words are left out.
MAKERS = re.compile(
    r"\b(?:Alfa Romeo|Ashok Leyland|Aston Martin|Audi|Bentley|Bharat|BMW|Bugatti|Buick|BYD|Cadillac|Chevrolet|Chevy"
    r"|Chrysler|Citro[eë]n|Cupra|Dacia|Daewoo|DAF|Daihatsu|Daimler|Dongfeng|Eicher|Ferrari|Fiat|Ford|Freightliner|Fuso"
    r"|Geely|GMC|Great Wall|Hino|Holden|Honda|Hyundai|Infiniti|Isuzu|IVECO|Iveco|Jaguar|Jeep|Kamaz|Kenworth|Kia|Lada"
    r"|Lamborghini|Lancia|Land Rover|Lexus|MAN Truck|Mahindra|Maserati|Mazda|McLaren|Mercedes|Mitsubishi|Navistar"
    r"|Nissan|Opel|Paccar|PACCAR|Perodua|Peterbilt|Peugeot|Piaggio|Pontiac|Porsche|Proton|Renault|Rivian|Rolls-Royce"
    r"|Saab|Scania|Sinotruk|[SŠ]koda|SsangYong|Subaru|Suzuki|Tata|Tesla|Toyota|UAZ|Vauxhall|Volkswagen|Volvo|VW|Yutong)\b"
)
# a source is cited with its year: that is not a brand in the product
CITATION = re.compile(r"[^.;]{0,60}\b(?:19|20)\d\d\b", re.S)


def line_of(text: str, at: int) -> int:
    """The number of the line, from 1, in which a place of the text stands."""
    return text.count("\n", 0, at) + 1


def found(pattern: re.Pattern[str], text: str) -> list[str]:
    """What a pattern finds in a text, each with its line number."""
    return [f"line {line_of(text, hit.start())}: {hit[0]}" for hit in pattern.finditer(text)]


def brands(text: str) -> list[str]:
    """The makers named in a text otherwise than as the source of something."""
    hits = [hit for hit in MAKERS.finditer(text) if not CITATION.match(text, hit.end())]
    return [f"line {line_of(text, hit.start())}: {hit[0]}" for hit in hits]


def test_the_tree_speaks_of_the_product(texts: dict[str, str]) -> None:
    """No file tells how, by whom or on whose request it was written."""
    faults = [f"{path} {fault}" for path, text in texts.items() for fault in found(NOT_THE_PRODUCT, text)]
    assert not faults, "\n".join(faults)


def test_the_demo_names_no_real_maker(texts: dict[str, str]) -> None:
    """Makers in the demo are invented."""
    demo = {path: text for path, text in texts.items() if path.startswith("demo/")}
    faults = [f"{path} {fault}" for path, text in demo.items() for fault in found(MAKERS, text)]
    assert demo
    assert not faults, "\n".join(faults)


def test_the_product_names_no_real_maker(texts: dict[str, str]) -> None:
    """The product names a maker only where it cites a source with its year."""
    ours = {path: text for path, text in texts.items() if path.startswith("src/")}
    faults = [f"{path} {fault}" for path, text in ours.items() for fault in brands(text)]
    assert not faults, "\n".join(faults)


@pytest.mark.parametrize(
    "words", [("A", "I wrote this"), ("as iss", "ue #12 asks"), ("your assis", "tant"), ("this ses", "sion")]
)
def test_other_talk_is_seen(words: tuple[str, str]) -> None:
    """Each of these is reported with its line."""
    assert [fault.split(":")[0] for fault in found(NOT_THE_PRODUCT, "first line\n" + "".join(words))] == ["line 2"]


@pytest.mark.parametrize("words", ["a 2 A fuse, AIR brakes", "issues with 2 wires", 'scope="session"', "MAIN"])
def test_plain_words_are_let_through(words: str) -> None:
    """Words of the trade that look alike are not reported."""
    assert found(NOT_THE_PRODUCT, words) == []


def test_a_real_maker_is_seen() -> None:
    """A maker's name is reported; an invented one, and everyday words, are not; a source with its year may stand."""
    maker = "Sca" + "nia"
    assert found(MAKERS, f"a truck\nby {maker}") == [f"line 2: {maker}"]
    assert found(MAKERS, "Harrow & Vale, affordable, a man, forded") == []
    assert brands(f"a {maker} truck. Made 2019") == [f"line 1: {maker}"]
    assert brands(f"see the {maker} bodywork manual,\n2019, page 3") == []
