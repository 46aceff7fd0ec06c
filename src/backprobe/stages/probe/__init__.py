"""Which wire is which."""
