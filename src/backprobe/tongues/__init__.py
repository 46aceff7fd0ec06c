"""The engine's sentences in other words: in another language, or as a page says them instead of a terminal."""
