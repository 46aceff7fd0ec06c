"""What docs/sync.md promises of entries, on both databases and with many at once."""

from __future__ import annotations

import os
import random
import subprocess
import sys
import threading
from collections.abc import Callable
from pathlib import Path

from tests.samples.journals import JOB, Phone
from tests.samples.stores import AT, ORGANISATION, enrolled

from backprobe.cases.may import Caller
from backprobe.cases.sync import pull_page, take_batch
from backprobe.cases.yard import Yard
from backprobe.job.entry import read_entry
from backprobe.job.fold import fold
from backprobe.job.units import unit_findings
from backprobe.store import entries, units

SERIAL = "LN2-00417"


def texts(phone: Phone) -> list[str]:
    """What a phone has said, as it sends it."""
    return [entry.raw.decode() for entry in phone.entries]


def at_once(*tasks: Callable[[], None]) -> None:
    """Run tasks at the same moment, in a thread each; a fault in one is a fault of the test."""
    start = threading.Barrier(len(tasks))
    faults: list[Exception] = []

    def run(task: Callable[[], None]) -> None:
        start.wait()
        try:
            task()
        except Exception as fault:  # noqa: BLE001 - shown below
            faults.append(fault)

    threads = [threading.Thread(target=run, args=(task,)) for task in tasks]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    assert faults == []


def test_any_order_any_batches_any_repeats_come_to_the_same(yard: Yard, ines: Caller) -> None:
    """40 entries, shuffled, in batches that overlap, twice: each kept once, byte for byte."""
    phone = Phone()
    for number in range(40):
        phone.reads("Red", "on", f"12.{number}")
    sent, dice = texts(phone), random.Random(7)
    kept = 0
    for _ in range(2):
        dice.shuffle(sent)
        for start in range(0, 40, 10):
            batch = sent[start : start + 15]
            kept += sum(each.state == "kept" for each in take_batch(yard, batch, caller=ines, at=AT).results)
    page = pull_page(yard, ines, after=0, limit=500, job_id=JOB)
    assert kept == 40
    assert sorted(each.raw for each in page.entries) == sorted(entry.raw for entry in phone.entries)
    assert [each.cursor for each in page.entries] == list(range(1, 41))
    assert not page.more


def test_whoever_reads_while_many_write_misses_nothing(yard: Yard) -> None:
    """6 phones hand in 5 batches of 8 each while one reads on from its cursor: 240 entries, none missed, none twice."""
    callers = [enrolled(yard, f"person-{n}", device=f"device-{n}") for n in range(6)]
    phones = [Phone(f"device-{n}", ids=1000 * n, job=f"job-{n}") for n in range(6)]
    for phone in phones:
        for number in range(40):
            phone.reads("Red", "on", f"12.{number}")
    read: list[int] = []
    done = threading.Event()

    def hand_in(number: int) -> Callable[[], None]:
        def run() -> None:
            sent = texts(phones[number])
            for start in range(0, 40, 8):
                take_batch(yard, sent[start : start + 8], caller=callers[number], at=AT)

        return run

    def read_on() -> None:
        while True:
            last_look = done.is_set()
            with yard.store.reading() as connection:
                after = read[-1] if read else 0
                found = entries.pull(connection, ORGANISATION, after=after, limit=50, job_id=None, person=None)
            read.extend(each.cursor for each in found)
            if last_look and not found:
                return

    reader = threading.Thread(target=read_on)
    reader.start()
    try:
        at_once(*(hand_in(number) for number in range(6)))
    finally:
        done.set()
        reader.join()
    assert read == list(range(1, 241))


def test_one_phone_that_sends_twice_at_once_is_kept_once(yard: Yard, ines: Caller) -> None:
    """The same 20 entries by four threads: 20 times kept, 60 times known."""
    phone = Phone()
    for number in range(20):
        phone.reads("Red", "on", f"12.{number}")
    states: list[str] = []

    def send() -> None:
        states.extend(each.state for each in take_batch(yard, texts(phone), caller=ines, at=AT).results)

    at_once(*([send] * 4))
    assert (states.count("kept"), states.count("known"), len(states)) == (20, 60, 80)


def test_two_phones_on_one_job_merge_by_union(yard: Yard, ines: Caller, marta: Caller) -> None:
    """Whoever comes first: the fold is the same, and two serial numbers leave the slot open."""
    one, other = Phone("phone-a"), Phone("phone-b", ids=500)
    one.claims("serial", "LN2-1")
    one.reads("Red", "on", "12.3")
    other.claims("serial", "LN2-2")
    at_once(
        lambda: void(take_batch(yard, texts(one), caller=ines, at=AT)),
        lambda: void(take_batch(yard, texts(other), caller=marta, at=AT)),
    )
    with yard.store.reading() as connection:
        raws = entries.of_job(connection, ORGANISATION, job_id=JOB)
    state = fold(read_entry(raw) for raw in raws)
    assert state.slots["serial"].values == ("LN2-1", "LN2-2")
    assert state.slots["serial"].is_open
    assert len(state.table.readings) == 1


def void(_: object) -> None:
    """What a task gave back is not looked at."""
    assert _ is not None


def test_one_unit_is_in_one_vehicle_however_many_race(yard: Yard) -> None:
    """12 phones claim one unit for 12 jobs at the same moment: one claim, 11 refusals, each a finding that fails."""
    callers = [enrolled(yard, f"person-{n}", device=f"device-{n}") for n in range(12)]
    phones = [Phone(f"device-{n}", ids=1000 * n, job=f"job-{n}") for n in range(12)]
    for number, phone in enumerate(phones):
        phone.claims("serial", SERIAL.lower() if number % 2 else SERIAL)

    def hand_in(number: int) -> Callable[[], None]:
        return lambda: void(take_batch(yard, texts(phones[number]), caller=callers[number], at=AT))

    at_once(*(hand_in(number) for number in range(12)))
    with yard.store.reading() as connection:
        holder = units.holder(connection, ORGANISATION, serial=SERIAL)
        journals = [entries.of_job(connection, ORGANISATION, job_id=f"job-{n}") for n in range(12)]
    assert holder is not None
    states = [fold(read_entry(raw) for raw in raws) for raws in journals]
    winner = int(holder.job.removeprefix("job-"))
    for number, state in enumerate(states):
        claimed, findings = state.of_kind("unit_claimed"), unit_findings(state)
        assert (len(claimed), len(findings)) == ((1, 0) if number == winner else (0, 1))
        assert all(holder.job in finding.because for finding in findings)
        assert state.slots["serial"].values == (SERIAL.lower() if number % 2 else SERIAL,)


def test_one_unit_is_in_one_vehicle_also_among_processes(yard: Yard, address: str, tmp_path: Path) -> None:
    """4 processes, each with a database connection of its own, claim one unit for 4 jobs: one claim, 3 refusals."""
    for number in range(4):
        enrolled(yard, f"person-{number}", device=f"device-{number}")
        phone = Phone(f"device-{number}", ids=1000 * number, job=f"job-{number}")
        phone.claims("serial", SERIAL)
        (tmp_path / f"{number}.txt").write_bytes(phone.entries[0].raw)
    command = [sys.executable, "-c", CLAIM, address, str(tmp_path)]
    env = {**os.environ, "PYTHONPATH": os.pathsep.join(sys.path)}
    running = [subprocess.Popen([*command, str(n)], env=env, stdin=subprocess.PIPE) for n in range(4)]
    for process in running:
        assert process.stdin is not None
        process.stdin.close()
    assert [process.wait(60) for process in running] == [0] * 4
    with yard.store.reading() as connection:
        journals = [entries.of_job(connection, ORGANISATION, job_id=f"job-{n}") for n in range(4)]
    states = [fold(read_entry(raw) for raw in raws) for raws in journals]
    assert sorted(len(state.of_kind("unit_claimed")) for state in states) == [0, 0, 0, 1]
    assert sorted(len(unit_findings(state)) for state in states) == [0, 1, 1, 1]


CLAIM = """
import sys
from pathlib import Path
from backprobe.cases.enrol import caller_of_token
from backprobe.cases.sync import take_batch
from backprobe.cases.yard import Yard
from backprobe.store.blobs import BlobFolder
from backprobe.store.opened import opened
from tests.samples.stores import AT, ORGANISATION
address, folder, number = sys.argv[1], Path(sys.argv[2]), sys.argv[3]
yard = Yard(store=opened(address), blobs=BlobFolder(folder), made=folder, organisation=ORGANISATION)
caller = caller_of_token(yard, f"token-device-{number}")
text = (folder / f"{number}.txt").read_text(encoding="utf-8")
sys.stdin.read()  # all begin when all are ready
[result] = take_batch(yard, [text], caller=caller, at=AT).results
assert result.state == "kept", result
yard.store.close()
"""
