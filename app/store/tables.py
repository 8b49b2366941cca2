"""The tables, column by column; what is done with them stands in the modules beside this one."""

from datetime import datetime
from typing import ClassVar

from pydantic import JsonValue
from sqlalchemy import JSON, Column, ForeignKey, Integer, UniqueConstraint
from sqlmodel import Field, SQLModel

from app.store.times import UtcTime

# Constraints need names that are the same on every database, so that a later migration can find them.
SQLModel.metadata.naming_convention = {
    "ix": "ix_%(table_name)s_%(column_0_N_name)s",
    "uq": "uq_%(table_name)s_%(column_0_N_name)s",
    "ck": "ck_%(table_name)s_%(constraint_name)s",
    "fk": "fk_%(table_name)s_%(column_0_N_name)s",
    "pk": "pk_%(table_name)s",
}


class Build(SQLModel, table=True):
    """A bike that somebody checks; known to people by its code."""

    __tablename__: ClassVar[str] = "builds"

    id: int = Field(default=None, primary_key=True)
    code: str = Field(unique=True)
    job: str | None = None
    created_at: datetime = Field(sa_type=UtcTime)
    changed_at: datetime = Field(sa_type=UtcTime)


class DraftAnswer(SQLModel, table=True):
    """One fact of a build as it stands now; a row of its own, so that two people can save different facts."""

    __tablename__: ClassVar[str] = "draft_answers"

    build_id: int = Field(
        sa_column=Column(Integer, ForeignKey("builds.id", ondelete="CASCADE"), primary_key=True)
    )
    fact: str = Field(primary_key=True)
    answer: JsonValue = Field(sa_column=Column(JSON, nullable=False))
    saved_at: datetime = Field(sa_type=UtcTime)


class CatalogueText(SQLModel, table=True):
    """The text of a catalogue, kept when a build was first judged by it; never changed."""

    __tablename__: ClassVar[str] = "catalogue_texts"

    number: int = Field(default=None, primary_key=True)
    revision: str = Field(unique=True)
    text_by_file: dict[str, str] = Field(sa_column=Column(JSON, nullable=False))
    kept_at: datetime = Field(sa_type=UtcTime)


class Revision(SQLModel, table=True):
    """A build as it was judged and issued once; never changed."""

    __tablename__: ClassVar[str] = "revisions"
    __table_args__: ClassVar[tuple[UniqueConstraint]] = (UniqueConstraint("build_id", "number"),)

    id: int = Field(default=None, primary_key=True)
    build_id: int = Field(
        sa_column=Column(Integer, ForeignKey("builds.id", ondelete="CASCADE"), nullable=False)
    )
    number: int
    state: str
    facts: dict[str, JsonValue] = Field(sa_column=Column(JSON, nullable=False))
    combination_key: str | None = None
    report: dict[str, JsonValue] = Field(sa_column=Column(JSON, nullable=False))
    catalogue_number: int = Field(foreign_key="catalogue_texts.number", index=True)
    rules_revision: str
    issued_by: str
    saved_at: datetime = Field(sa_type=UtcTime)


class FormAnswer(SQLModel, table=True):
    """What was answered to a form, so that the same form sent again is not done again."""

    __tablename__: ClassVar[str] = "form_answers"

    form_id: str = Field(primary_key=True)
    act: str = Field(primary_key=True)
    content_sha256: str
    answer: str
    saved_at: datetime = Field(sa_type=UtcTime)
