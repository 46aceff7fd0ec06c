"""The job from a terminal, one file a command."""
