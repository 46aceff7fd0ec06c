"""Opens paths and hands their lines to the readers."""
