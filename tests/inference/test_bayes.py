"""Bayes' rule and information, against sums done by hand."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from backprobe.inference.bayes import entropy_bits, information_bits, posterior

SHARES = st.lists(st.floats(0.01, 1.0), min_size=2, max_size=6)


def test_a_double_headed_coin_after_three_heads():
    """One coin in ten has two heads: after three heads it is 0.1 × 1 against 0.9 × 1/8."""
    after = posterior({"fair": 0.9, "double": 0.1}, {"fair": 3 * math.log(0.5), "double": 0.0})
    assert after["double"] == pytest.approx(0.1 / (0.1 + 0.9 / 8))


def test_no_evidence_leaves_the_prior():
    """A hypothesis that the evidence says nothing of keeps likelihood 1; the prior is brought to 1."""
    assert posterior({"a": 3.0, "b": 1.0}, {}) == {"a": pytest.approx(0.75), "b": pytest.approx(0.25)}


def test_what_was_impossible_stays_impossible():
    """A prior of zero is never raised."""
    assert posterior({"a": 1.0, "never": 0.0}, {"never": 50.0})["never"] == 0.0


def test_very_unlikely_evidence_does_not_underflow():
    """Logs of -2000 and -2001 still compare as 1 to 1/e."""
    after = posterior({"a": 0.5, "b": 0.5}, {"a": -2000.0, "b": -2001.0})
    assert after["a"] == pytest.approx(1 / (1 + math.exp(-1)))


def test_entropy_of_a_die():
    """Eight equal sides hold three bits."""
    assert entropy_bits([1 / 8] * 8) == pytest.approx(3.0)


def test_a_noisy_observation_tells_part():
    """A reading that is right nine times in ten tells 1 - H(0.1) bits of a fair question."""
    noise = -(0.1 * math.log2(0.1) + 0.9 * math.log2(0.9))
    assert information_bits([0.5, 0.5], [[0.9, 0.1], [0.1, 0.9]]) == pytest.approx(1.0 - noise)


@given(prior=SHARES, logs=st.lists(st.floats(-30, 0), min_size=6, max_size=6))
def test_probabilities_sum_to_one(prior, logs):
    """Whatever the evidence, one of the hypotheses is true."""
    after = posterior(dict(enumerate(prior)), dict(enumerate(logs)))
    assert math.fsum(after.values()) == pytest.approx(1.0)


@given(answers=SHARES, data=st.data())
def test_information_lies_between_nothing_and_the_question(answers, data):
    """An observation never tells less than nothing or more than the question holds."""
    total = math.fsum(answers)
    question = [share / total for share in answers]
    rows = []
    for _ in question:
        row = data.draw(st.lists(st.floats(0.01, 1.0), min_size=3, max_size=3))
        rows.append([value / math.fsum(row) for value in row])
    assert -1e-9 <= information_bits(question, rows) <= entropy_bits(question) + 1e-9
