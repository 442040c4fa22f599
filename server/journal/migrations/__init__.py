"""How the tables came to be, step by step; alembic runs what is missing when the journal is opened."""
