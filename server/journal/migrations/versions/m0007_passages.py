"""When others of the race came to its points, by bib, numbered by the change that brought them."""

import sqlalchemy as sa
from alembic import op

revision = "0007"
down_revision = "0006"
branch_labels = None
depends_on = None


def upgrade() -> None:
    """A table, and its count in the event's row."""
    op.create_table(
        "passage",
        sa.Column("event", sa.Text(), nullable=False),
        sa.Column("bib", sa.Text(), nullable=False),
        sa.Column("point", sa.Text(), nullable=False),
        sa.Column("at", sa.DateTime(timezone=True)),
        sa.Column("number", sa.Integer(), nullable=False),
        sa.Column("by", sa.Text(), nullable=False),
        sa.PrimaryKeyConstraint("event", "bib", "point", name=op.f("pk_passage")),
        sa.ForeignKeyConstraint(["event"], ["event.id"], name=op.f("fk_passage_event_event")),
    )
    op.create_index("ix_passage_event_number", "passage", ["event", "number"])
    op.add_column("event", sa.Column("passages", sa.Integer(), nullable=False, server_default="0"))
