"""Formulas, each with its source."""
