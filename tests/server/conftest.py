"""The running server, for all tests of it."""

from tests.samples.served import *  # noqa: F403
