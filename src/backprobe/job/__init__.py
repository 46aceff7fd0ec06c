"""The job: its journal, its fold, its findings."""
