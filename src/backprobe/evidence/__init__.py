"""The typed samples that every reader yields and every check takes."""
