"""What has become of an event's notices, read without their texts: it is asked at every look."""

from alembic import op

revision = "0006"
down_revision = "0005"
branch_labels = None
depends_on = None


def upgrade() -> None:
    """An index that holds all that is asked."""
    op.create_index(
        "ix_notice_what_became", "notice", ["event", "short", "sent_at", "failed_at", "answered_at"]
    )
