"""Prove: what the hand did with the key, held against what the unit reported."""
