"""Whether a fuse protects its wire."""

import json

import pytest
from hypothesis import given
from hypothesis import strategies as st

from backprobe.errors import OptionError
from backprobe.findings import Verdict
from backprobe.limits.fuse_lookup import ratings_of, usual_type
from backprobe.limits.wires import INSULATIONS
from backprobe.stages.join.ampacity import insulation_of
from backprobe.stages.join.conductor import conductor_of
from backprobe.stages.join.fuse_calc import FuseCase, fuse_answer
from backprobe.stages.join.fuse_opening import fuse_of

BEST_FIRST = [Verdict.HOLDS, Verdict.THIN, Verdict.OPEN, Verdict.FAILS]


def case(rating_A=3.0, loop_ohm=0.3, system_V=12, fuse_type=None, insulation="pvc-105", **more):
    """A fuse on a wire; 18 AWG where no size is given."""
    size = {key: more.pop(key) for key in ("awg", "mm2") if key in more} or {"awg": 18}
    return FuseCase(
        fuse=fuse_of(rating_A, fuse_type),
        conductor=conductor_of(**size),
        insulation=insulation_of(insulation),
        loop_ohm=loop_ohm,
        system_V=system_V,
        **more,
    )


def rank(a_case):
    """How bad the verdict is, 0 the best."""
    return BEST_FIRST.index(fuse_answer(a_case).verdict)


def test_a_units_fuse_holds():
    """3 A on 18 AWG, 0.3 Ω, 12 V: 12 / 0.3 = 40 A; all three findings hold."""
    answer = fuse_answer(case())
    assert answer.verdict is Verdict.HOLDS
    assert answer.as_json()["short_A"] == 40.0
    assert [finding.id for finding in answer.findings] == ["fuse_clears", "wire_over_fuse", "fuse_breaking"]
    assert answer.next is None


def test_an_over_fused_thin_lead():
    """15 A on 0.35 mm²: 8.1 A carried against 20.25 A; the largest that holds there is 5 A (6.75 A)."""
    answer = fuse_answer(case(15, 0.2, mm2=0.35))
    assert answer.verdict is Verdict.FAILS
    assert answer.largest_A == 5.0
    assert answer.next == "fit a fuse of 5 A, the largest that holds on this wire and loop, or thicker wire"


def test_a_hundred_amperes_on_half_a_square_millimetre():
    """It fails, nothing of its type would hold, and it is asked whether that is meant."""
    answer = fuse_answer(case(100, 0.1, mm2=0.5))
    assert (answer.verdict, answer.largest_A) == (Verdict.FAILS, None)
    assert answer.questions == ("a 100 A fuse on 0.5 mm², which carries 10.1 A: is that meant?",)
    assert answer.as_json()["clears_s"] is None


def test_a_loop_too_resistive_to_clear():
    """10 A at 2 Ω and 12 V: 6 A; clears_s is null and it fails."""
    answer = fuse_answer(case(10, 2.0))
    assert answer.verdict is Verdict.FAILS
    assert answer.as_json()["clears_s"] is None
    assert answer.largest_A == 4.0  # 6 A are 150 % of it


def test_the_times_at_the_units_end():
    """10 A at 40 A: 0.08 × (3.5 / 4)² = 0.06125 to 0.3828 s; (87 × 0.8230 / 40)² = 3.204 s."""
    answer = fuse_answer(case(10)).as_json()
    assert answer["clears_s"] == {"least": pytest.approx(0.06125, abs=1e-4), "most": pytest.approx(0.3828, abs=1e-4)}
    assert answer["wire_withstands_s"] == pytest.approx((87 * 0.82302 / 40) ** 2, abs=1e-3)


def test_what_is_from_memory_is_shown_and_has_no_say():
    """The remembered 600 % of type C stands in `unverified`; `clears_s` is slower than with it."""
    answer = fuse_answer(case(10)).as_json()
    assert [gate["percent"] for gate in answer["unverified"]] == [600.0]
    assert "from memory, unverified" in answer["unverified"][0]["basis"]
    assert answer["clears_s"]["most"] > answer["clears_with_memory_s"]["most"]


def test_a_load_is_judged_where_it_is_known():
    """At 60 °C 0.867 of 3 A are left, 0.75 of that for good: 1.95 A. 1.2 A holds, 2.2 A fails."""
    assert fuse_answer(case(load_A=1.2)).findings[-1].verdict is Verdict.HOLDS
    assert fuse_answer(case(load_A=2.2)).verdict is Verdict.FAILS


def test_twenty_four_volts_drive_twice_the_short():
    """24 / 0.3 = 80 A."""
    assert fuse_answer(case(system_V=24)).as_json()["short_A"] == 80.0


def test_the_answer_is_plain_json():
    """No infinity and no NaN, also where the wire carries the short for good and where nothing opens."""
    for a_case in (case(), case(10, 2.0), case(100, 0.1, mm2=0.5), case(10, 0.9)):
        answer = fuse_answer(a_case).as_json()
        assert json.loads(json.dumps(answer, allow_nan=False)) == answer


@pytest.mark.parametrize(
    ("figures", "said"),
    [
        ({"loop_ohm": 0.0}, "a loop of 0 Ω"),
        ({"loop_ohm": -0.1}, "a loop of -0.1 Ω"),
        ({"loop_ohm": float("nan")}, "a loop of nan Ω"),
        ({"ambient_C": 900.0}, "the surroundings' temperature of 900 °C"),
        ({"system_V": 48}, "a system of 48 V is not known"),
        ({"load_A": 0.0}, "a load of 0 A"),
    ],
)
def test_what_cannot_be_meant_is_refused(figures, said):
    """With the figure and what is expected."""
    with pytest.raises(OptionError, match=said):
        fuse_answer(case(**figures))


CASES = st.fixed_dictionaries(
    {
        "rating_A": st.sampled_from(sorted({*ratings_of("C"), *ratings_of("E")})),
        "loop_ohm": st.floats(0.03, 5.0),
        "system_V": st.sampled_from([12, 24]),
        "insulation": st.sampled_from(sorted(INSULATIONS)),
        "ambient_C": st.floats(0, 110),
    }
)
SIZES = st.one_of(
    st.integers(4, 24).map(lambda gauge: {"awg": gauge}),
    st.sampled_from([0.35, 0.5, 0.6, 0.75, 1.0, 1.5, 2.0, 2.5, 4.0, 6.0]).map(lambda mm2: {"mm2": mm2}),
)


@given(CASES, SIZES, st.floats(1.0, 4.0))
def test_a_longer_loop_is_never_better(figures, size, factor):
    """Less current clears later. (Loops with more than 1000 A are left out: there the fuse cannot break the short.)"""
    longer = {**figures, "loop_ohm": figures["loop_ohm"] * factor}
    assert rank(case(**longer, **size)) >= rank(case(**figures, **size))


@given(CASES, st.integers(4, 24), st.integers(1, 6))
def test_a_thinner_wire_is_never_better(figures, gauge, steps):
    """Less copper stands less and carries less."""
    assert rank(case(**figures, awg=gauge + steps)) >= rank(case(**figures, awg=gauge))


@given(CASES, st.floats(0.2, 10), st.floats(1.0, 4.0))
def test_a_thinner_size_is_never_better(figures, mm2, factor):
    """The same in square millimetres, listed or not."""
    assert rank(case(**figures, mm2=mm2)) >= rank(case(**figures, mm2=mm2 * factor))


@given(CASES, SIZES, st.floats(0, 60))
def test_hotter_surroundings_are_never_better(figures, size, more_K):
    """Hot wire carries less for good."""
    hotter = {**figures, "ambient_C": figures["ambient_C"] + more_K}
    assert rank(case(**hotter, **size)) >= rank(case(**figures, **size))


@given(CASES, SIZES, st.data())
def test_a_bigger_fuse_on_the_same_wire_is_never_better(figures, size, data):
    """Over the ratings of both types, each taken as its usual type."""
    every = sorted({*ratings_of("C"), *(r for r in ratings_of("E") if usual_type(r) == "E")})
    bigger = data.draw(st.sampled_from([rating for rating in every if rating >= figures["rating_A"]]))
    assert rank(case(**{**figures, "rating_A": bigger}, **size)) >= rank(case(**figures, **size))
