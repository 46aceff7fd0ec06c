"""Bayes' rule and expected information over a finite set of hypotheses.

Theory of operation. Hypotheses are any hashable things with prior probabilities. Evidence arrives as the natural
logarithm of how likely it is under each hypothesis. What to look at next is the observation with the greatest
mutual information with the question asked: how many bits, on average, its outcome tells about the answer.

Source: D. J. C. MacKay, Information Theory, Inference, and Learning Algorithms (2003), chapters 2 and 8
(definitions; from memory).
"""

from __future__ import annotations

import math
from collections.abc import Hashable, Mapping, Sequence
from typing import TypeVar

H = TypeVar("H", bound=Hashable)


def posterior(prior: Mapping[H, float], log_likelihood: Mapping[H, float]) -> dict[H, float]:
    """Each hypothesis' probability after the evidence.

    `prior` need not sum to 1. A hypothesis missing from `log_likelihood` keeps likelihood 1.

    >>> posterior({"fair": 0.5, "two heads": 0.5}, {"fair": math.log(0.5), "two heads": 0.0})["fair"]
    0.3333333333333333
    """
    logs = {h: math.log(p) + log_likelihood.get(h, 0.0) for h, p in prior.items() if p > 0.0}
    top = max(logs.values())
    weights = {h: math.exp(log - top) for h, log in logs.items()}
    total = math.fsum(weights.values())
    return {h: weights.get(h, 0.0) / total for h in prior}


def entropy_bits(probabilities: Sequence[float]) -> float:
    """The entropy of a distribution in bits.

    >>> entropy_bits([0.5, 0.5])
    1.0
    """
    return -math.fsum(p * math.log2(p) for p in probabilities if p > 0.0)


def information_bits(answers: Sequence[float], outcomes_by_answer: Sequence[Sequence[float]]) -> float:
    """The mutual information [bits] between a question and an observation.

    `answers[i]` is the probability of answer i; `outcomes_by_answer[i][j]` that of outcome j given answer i.

    >>> information_bits([0.5, 0.5], [[1.0, 0.0], [0.0, 1.0]])
    1.0
    >>> information_bits([0.5, 0.5], [[0.3, 0.7], [0.3, 0.7]])
    0.0
    """
    width = len(outcomes_by_answer[0]) if outcomes_by_answer else 0
    pairs = list(zip(answers, outcomes_by_answer, strict=True))
    outcomes = [math.fsum(p * row[j] for p, row in pairs) for j in range(width)]
    left = math.fsum(p * entropy_bits(row) for p, row in pairs if p > 0.0)
    return max(0.0, entropy_bits(outcomes) - left)
