"""Who listens and since when, when a channel last had nothing waiting, and the chats of a whole crew."""

import sqlalchemy as sa
from alembic import op

from server.journal.tables import UtcDateTime

revision = "0002"
down_revision = "0001"
branch_labels = None
depends_on = None


def upgrade() -> None:
    """Add the columns, empty for what is there, and the table."""
    op.add_column("heartbeat", sa.Column("caught_up_at", UtcDateTime(), nullable=True))
    op.add_column("lease", sa.Column("since", UtcDateTime(), nullable=True))
    op.add_column("lease", sa.Column("server", sa.Text(), nullable=True))
    op.create_table(
        "crew_group",
        sa.Column("id", sa.Text(), nullable=False),
        sa.Column("channel", sa.Text(), nullable=False),
        sa.Column("address", sa.Text(), nullable=False),
        sa.Column("event", sa.Text(), nullable=False),
        sa.Column("bound_by", sa.Text(), nullable=False),
        sa.Column("bound_at", UtcDateTime(), nullable=False),
        sa.ForeignKeyConstraint(["event"], ["event.id"], name=op.f("fk_crew_group_event")),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_crew_group")),
        sa.UniqueConstraint("channel", "address", "event", name=op.f("uq_crew_group_channel_address_event")),
    )
