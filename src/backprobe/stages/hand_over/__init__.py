"""How the job ends."""
