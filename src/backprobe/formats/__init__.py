"""Lines in, typed evidence out; one file a format."""
