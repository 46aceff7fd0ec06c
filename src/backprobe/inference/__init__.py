"""Hypotheses, likelihoods, expected information, cost."""
