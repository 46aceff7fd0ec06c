"""The store's fixtures, for the cases that use it."""

from tests.samples.stores import *  # noqa: F403
