"""Signs of life of servers, through which server something was claimed, and from which chat an update is."""

import sqlalchemy as sa
from alembic import op

from server.journal.tables import UtcDateTime

revision = "0004"
down_revision = "0003"
branch_labels = None
depends_on = None


def upgrade() -> None:
    """A table, and columns: of what is there nothing is known, so that only its lease tells."""
    op.create_table(
        "server_life",
        sa.Column("server", sa.Text(), nullable=False),
        sa.Column("at", UtcDateTime(), nullable=False),
        sa.PrimaryKeyConstraint("server", name=op.f("pk_server_life")),
    )
    op.add_column("delivery", sa.Column("server", sa.Text(), nullable=True))
    op.add_column("raw_update", sa.Column("server", sa.Text(), nullable=True))
    op.add_column("raw_update", sa.Column("chat", sa.Text(), nullable=False, server_default=""))
    op.add_column("raw_update", sa.Column("urgent", sa.Boolean(), nullable=False, server_default=sa.false()))
