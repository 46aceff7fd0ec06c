"""What the server keeps: entries as their exact bytes, people, phones, jobs, reports; in SQLite or PostgreSQL."""
