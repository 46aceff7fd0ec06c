"""Signing keys on disk."""
