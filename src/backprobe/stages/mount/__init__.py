"""The place of the unit: what of the sky is left to it there, before anything is fixed."""
