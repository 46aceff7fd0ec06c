"""The use cases that terminal and server share."""
