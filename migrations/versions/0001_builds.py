"""Makes the tables of builds, revisions, the catalogues that judged them and the forms already answered."""

import sqlalchemy as sa
from alembic import op

revision = "0001"
down_revision = None
branch_labels = None
depends_on = None

_TIME = sa.DateTime(timezone=True)

# A revision goes only together with its whole build; a catalogue that judged a build never goes.
_SQLITE_TRIGGERS = (
    """CREATE TRIGGER revisions_never_change BEFORE UPDATE ON revisions
    BEGIN SELECT RAISE(ABORT, 'a revision is never changed'); END""",
    """CREATE TRIGGER revisions_never_go_alone BEFORE DELETE ON revisions
    WHEN EXISTS (SELECT 1 FROM builds WHERE builds.id = OLD.build_id)
    BEGIN SELECT RAISE(ABORT, 'a revision goes only with its build'); END""",
    """CREATE TRIGGER catalogue_texts_never_change BEFORE UPDATE ON catalogue_texts
    BEGIN SELECT RAISE(ABORT, 'a catalogue that was kept is never changed'); END""",
    """CREATE TRIGGER catalogue_texts_never_go BEFORE DELETE ON catalogue_texts
    BEGIN SELECT RAISE(ABORT, 'a catalogue that was kept never goes'); END""",
)


def upgrade() -> None:
    _make_builds()
    _make_draft_answers()
    _make_catalogue_texts()
    _make_revisions()
    _make_form_answers()
    if op.get_context().dialect.name == "sqlite":
        for trigger in _SQLITE_TRIGGERS:
            op.execute(trigger)


def downgrade() -> None:
    for table in ("form_answers", "revisions", "catalogue_texts", "draft_answers", "builds"):
        op.drop_table(table)


def _make_builds() -> None:
    op.create_table(
        "builds",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("code", sa.String(), nullable=False),
        sa.Column("job", sa.String(), nullable=True),
        sa.Column("created_at", _TIME, nullable=False),
        sa.Column("changed_at", _TIME, nullable=False),
        sa.PrimaryKeyConstraint("id", name="pk_builds"),
        sa.UniqueConstraint("code", name="uq_builds_code"),
    )


def _make_draft_answers() -> None:
    op.create_table(
        "draft_answers",
        sa.Column("build_id", sa.Integer(), nullable=False),
        sa.Column("fact", sa.String(), nullable=False),
        sa.Column("answer", sa.JSON(), nullable=False),
        sa.Column("saved_at", _TIME, nullable=False),
        sa.PrimaryKeyConstraint("build_id", "fact", name="pk_draft_answers"),
        sa.ForeignKeyConstraint(
            ["build_id"], ["builds.id"], name="fk_draft_answers_build_id", ondelete="CASCADE"
        ),
    )


def _make_catalogue_texts() -> None:
    op.create_table(
        "catalogue_texts",
        sa.Column("number", sa.Integer(), nullable=False),
        sa.Column("revision", sa.String(), nullable=False),
        sa.Column("text_by_file", sa.JSON(), nullable=False),
        sa.Column("kept_at", _TIME, nullable=False),
        sa.PrimaryKeyConstraint("number", name="pk_catalogue_texts"),
        sa.UniqueConstraint("revision", name="uq_catalogue_texts_revision"),
    )


def _make_revisions() -> None:
    op.create_table(
        "revisions",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("build_id", sa.Integer(), nullable=False),
        sa.Column("number", sa.Integer(), nullable=False),
        sa.Column("state", sa.String(), nullable=False),
        sa.Column("facts", sa.JSON(), nullable=False),
        sa.Column("combination_key", sa.String(), nullable=True),
        sa.Column("report", sa.JSON(), nullable=False),
        sa.Column("catalogue_number", sa.Integer(), nullable=False),
        sa.Column("rules_revision", sa.String(), nullable=False),
        sa.Column("issued_by", sa.String(), nullable=False),
        sa.Column("saved_at", _TIME, nullable=False),
        sa.PrimaryKeyConstraint("id", name="pk_revisions"),
        sa.UniqueConstraint("build_id", "number", name="uq_revisions_build_id_number"),
        sa.ForeignKeyConstraint(
            ["build_id"], ["builds.id"], name="fk_revisions_build_id", ondelete="CASCADE"
        ),
        sa.ForeignKeyConstraint(
            ["catalogue_number"], ["catalogue_texts.number"], name="fk_revisions_catalogue_number"
        ),
    )
    op.create_index("ix_revisions_catalogue_number", "revisions", ["catalogue_number"])


def _make_form_answers() -> None:
    op.create_table(
        "form_answers",
        sa.Column("form_id", sa.String(), nullable=False),
        sa.Column("act", sa.String(), nullable=False),
        sa.Column("content_sha256", sa.String(), nullable=False),
        sa.Column("answer", sa.String(), nullable=False),
        sa.Column("saved_at", _TIME, nullable=False),
        sa.PrimaryKeyConstraint("form_id", "act", name="pk_form_answers"),
    )
