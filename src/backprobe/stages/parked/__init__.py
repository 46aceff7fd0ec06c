"""The parked vehicle: how long its battery lasts."""
