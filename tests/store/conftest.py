"""The store's fixtures, for tests that run on both databases."""

from tests.samples.stores import *  # noqa: F403
