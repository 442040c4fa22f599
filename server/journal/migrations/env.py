"""Alembic's entry: always on the connection the journal hands in, inside its transaction."""

from alembic import context

from server.journal.tables import metadata

context.configure(
    connection=context.config.attributes["connection"],
    target_metadata=metadata,
    render_as_batch=True,
    transactional_ddl=True,
)
context.run_migrations()
