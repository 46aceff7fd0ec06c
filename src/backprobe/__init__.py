"""backprobe: evidence from fitting a telematics unit in, findings out."""

__version__ = "0.1.0"
