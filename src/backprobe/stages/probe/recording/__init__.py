"""What a voltage recording says: where the engine was cranked, and what each channel did meanwhile."""
