"""Before anything is touched."""
