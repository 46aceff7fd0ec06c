"""Limits as data, generated from authorities/ by builders/."""
