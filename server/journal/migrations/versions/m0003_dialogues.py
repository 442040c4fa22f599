"""What was spoken of with an address, and what a message that did something was answered with."""

import sqlalchemy as sa
from alembic import op

from server.journal.tables import UtcDateTime

revision = "0003"
down_revision = "0002"
branch_labels = None
depends_on = None


def upgrade() -> None:
    """Two tables, empty: nothing was spoken of yet."""
    op.create_table(
        "dialogue",
        sa.Column("channel", sa.Text(), nullable=False),
        sa.Column("address", sa.Text(), nullable=False),
        sa.Column("place", sa.Text(), nullable=False),
        sa.Column("version", sa.Integer(), nullable=False),
        sa.Column("body", sa.Text(), nullable=False),
        sa.Column("at", UtcDateTime(), nullable=False),
        sa.PrimaryKeyConstraint("channel", "address", "place", name=op.f("pk_dialogue")),
    )
    op.create_table(
        "turn",
        sa.Column("sender", sa.Text(), nullable=False),
        sa.Column("key", sa.Text(), nullable=False),
        sa.Column("reply", sa.Text(), nullable=False),
        sa.Column("at", UtcDateTime(), nullable=False),
        sa.PrimaryKeyConstraint("sender", "key", name=op.f("pk_turn")),
    )
