"""A bus log as evidence: frames in, what the vehicle says of itself and of its key out, with findings."""
