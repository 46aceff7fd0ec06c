"""Every sentence of the engine in Spanish; one module for each part of the engine."""
