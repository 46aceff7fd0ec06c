"""The stages of a job: evidence in, findings out."""
