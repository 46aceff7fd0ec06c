"""Whatever the engine says on a phone or a desk can be said in Spanish, and on a phone without files and commands."""

from __future__ import annotations

import re

import pytest
from builders.sentences import plain, templates

from backprobe.tongues.catalogue import pairs_in
from backprobe.tongues.desk import SENTENCES as DESK
from backprobe.tongues.phone import SENTENCES as PHONE
from backprobe.tongues.spanish.book import pairs

# what the server says to a page: its refusals, and what is expected of a roster's cells
SERVER_SAYS = (
    *("cases/arrivals.py", "cases/content.py", "cases/decide.py", "cases/desk_jobs.py", "cases/desk_people.py"),
    *("cases/desk_roster.py", "cases/enrol.py", "cases/erase.py", "cases/hand_in_file.py", "cases/held_job.py"),
    *("cases/held_record.py", "cases/judging.py", "cases/login.py", "cases/may.py", "cases/new_job.py"),
    *("cases/quarantined.py", "cases/roster.py", "cases/roster_jobs.py", "cases/signing_keys.py", "cases/sync.py"),
    *("cases/unit_claims.py", "files/roster_xlsx.py", "server/callers.py", "server/rates.py", "server/refusals.py"),
    "store/blobs.py",
)
SAYING = (
    *SERVER_SAYS,
    *("stages/", "job/", "limits/", "drawings/", "formats/", "evidence/", "findings.py", "errors.py"),
)

# What is said on no phone and no desk, and why.
NOT_SHOWN = {
    "formats/figures.py": "units, as files name them",
    "formats/navigation.py": "navigation files, in a terminal",
    "formats/navigation_text.py": "navigation files, in a terminal",
    "formats/rinex_nav.py": "navigation files, in a terminal",
    "formats/sem.py": "navigation files, in a terminal",
    "formats/yuma.py": "navigation files, in a terminal",
    "formats/recording_names.py": "headings of columns, as files name them",
    "formats/roster_columns.py": "headings of columns, as files name them",
    "job/limits_text.py": "the text that a digest is taken of",
    "job/kinds.py": "which bodies entries may have: a page writes none that would be refused",
    "job/lineage.py": "verify, in a terminal",
    "job/verified.py": "verify, in a terminal",
    "job/covered.py": "verify, in a terminal",
    "job/changes.py": "an import of a folder, in a terminal",
    "stages/join/wire_calc.py": "the calculator of wires, in a terminal",
    "stages/join/ampacity.py": "the calculator of wires, in a terminal",
    "stages/join/conductor.py": "the calculator of wires, in a terminal",
    "stages/join/questions.py": "the calculators of wires and fuses, in a terminal",
    "stages/join/fuse_calc.py": "the calculator of fuses, in a terminal",
    "stages/mount/answer.py": "notes on a prediction, in a terminal",
    "stages/mount/door.py": "a question that a page puts in figures",
    "stages/mount/question.py": "the options of a prediction, in a terminal",
    "stages/mount/orbit_age.py": "navigation files, in a terminal",
    "stages/mount/satellites.py": "navigation files, in a terminal",
    "stages/probe/permission.py": "words that are sought in the name of a circuit",
    "stages/probe/roles.py": "tables of how often each role shows what",
}
# Single texts of the other modules that are never said, or never alone.
NOT_ALONE = {
    "desk {}": "the name of a device: of whoever sits at the desk",
    "backprobe: the key of {}": "what a phone signs to show that a key is its own",
    "judging stumbled": "the server's own log",
    "{} at {}": "a satellite and its place: said together",
    "{} at {}, not heard": "a satellite and its place: said together",
    "{} at {}, {} dB-Hz, {}": "a satellite and its place: said together",
    "{} to {}": "a range in figures: said with its unit",
    "{} of {} and {}": "a corner of streets: said with what kind of corner it is",
    "not {}": "what was not done with the end of a lead: said with what it is",
    "backprobe corners": "what an index of corners begins with",
    "base hex": "how a log of a bus begins",
    "base dec": "how a log of a bus begins",
    "{} wire": "the supply's or the ignition's: both stand in the catalogue",
    "{} wire: {}": "the supply's or the ignition's: both stand in the catalogue",
    "{}: {}, {} mm from the unit{}": "what stands around a place: said with the side that it is on",
    "no {}": "no lamps, no codes: both stand in the catalogue",
    "by {}": "how a lead is joined: said with the lead",
    "and no": "stands between two files that are missing",
    "seat belt": "sought in where the unit is grounded",
    "air bag": "sought in where the unit is grounded",
    "control unit": "sought in where the unit is grounded",
    "brake pipe": "sought in where the unit is grounded",
    "air tank": "sought in where the unit is grounded",
    "seat rail": "sought in where the unit is grounded",
    "key through the script": "sought in what is to be done next",
    "key through a script": "sought in what is to be done next",
    "Atkinson Hyperlegible, Atkinson Hyperlegible Next, sans-serif": "a typeface",
}
TERMINAL = re.compile(r"[a-z]+_[a-zA-Z]|\[\w|\w\]|\.toml|\.csv|\bbackprobe\b|--\w| = [\"tf]")


def missing(sources: dict[str, str], known: set[str]) -> list[str]:
    """The templates in modules that are shown and that no catalogue has, each with its place."""
    return [
        f"{path}:{line}: {text}"
        for path, source in sorted(sources.items())
        if path.startswith(SAYING) and path not in NOT_SHOWN
        for line, text in templates(source)
        if plain(text) not in known and plain(text) not in NOT_ALONE
    ]


def test_every_sentence_has_its_spanish(sources: dict[str, str]) -> None:
    """A template in a module that is shown has its like in the Spanish catalogue."""
    found = missing(sources, {plain(said) for said, _ in pairs()})
    assert not found, "no Spanish for:\n" + "\n".join(found)


def test_a_sentence_without_spanish_is_seen() -> None:
    """A new sentence is named with its place; an id or a docstring is not."""
    source = 'def f(a):\n    """Words here."""\n    return f"the {a} was new", "an_id", "x"\n'
    assert missing({"stages/probe/new.py": source}, set()) == ["stages/probe/new.py:3: the {a} was new"]


def test_no_sentence_is_translated_twice() -> None:
    """Two Spanish texts of one sentence would differ one day."""
    said = [sentence for sentence, _ in pairs()]
    assert sorted({each for each in said if said.count(each) > 1}) == []


def test_what_is_left_out_is_still_there(sources: dict[str, str]) -> None:
    """Modules that are left out exist."""
    assert {*NOT_SHOWN} <= {*sources}


@pytest.mark.parametrize("own", [PHONE, DESK], ids=["phone", "desk"])
def test_pages_name_no_files_and_commands(own: str) -> None:
    """What phone and desk say has no setting, file or command in it, and has its Spanish, which has none either."""
    spanish = dict(pairs())
    by_shape = {plain(said): (said, other) for said, other in spanish.items()}
    for _, said in pairs_in(own):
        assert not TERMINAL.search(re.sub(r"\{[^{}]*\}", "", said)), said
        assert plain(said) in by_shape, f"no Spanish for {said!r}"
        other = by_shape[plain(said)][1]
        assert not TERMINAL.search(re.sub(r"\{[^{}]*\}", "", other)), other


def test_the_desk_sends_nobody_to_the_desk() -> None:
    """Each sentence with which the phone sends somebody to the desk is another there; the rest is the phone's."""
    phone, desk = dict(pairs_in(PHONE)), dict(pairs_in(DESK))
    assert {*desk} <= {*phone}
    said = {**phone, **desk}
    assert [each for each in said.values() if re.search(r"\b(?:the desk|this phone)\b", each)] == []
