"""${message}."""

import sqlalchemy as sa
from alembic import op

from server.journal.tables import UtcDateTime

revision = ${repr(up_revision)}
down_revision = ${repr(down_revision)}
branch_labels = ${repr(branch_labels)}
depends_on = ${repr(depends_on)}


def upgrade() -> None:
    """Bring the tables one step on."""
    ${upgrades if upgrades else "pass"}
