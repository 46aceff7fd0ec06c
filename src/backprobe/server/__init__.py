"""HTTP: the one room that knows FastAPI and pydantic."""
