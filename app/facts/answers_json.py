"""Answers as the store keeps them: what was typed and what it was read as, so that nothing is read twice."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Annotated, Self

from pydantic import BaseModel, ConfigDict, Field, ValidationError, model_validator

from app.facts.answers import Answer, Answers
from app.facts.fact import ChoiceFact, Fact
from app.facts.span import Span
from app.facts.table import FACTS


class StoredAnswersError(ValueError):
    """Kept answers that no longer fit the table of facts, or never did; the text names the fact."""


class KeptAnswer(BaseModel):
    """One answer as it is kept; low and high in thousandths of the fact's unit."""

    model_config = ConfigDict(extra="forbid", strict=True, frozen=True)

    typed: str
    tool: str = ""
    low: int | None = None
    high: int | None = None
    words: Annotated[list[str], Field(min_length=1)] | None = None

    @model_validator(mode="after")
    def _is_one_kind(self) -> Self:
        if (self.low is None) is not (self.high is None) or (self.low is not None and self.words is not None):
            raise ValueError("An answer has low and high, or words, or neither.")
        return self

    @property
    def span(self) -> Span | None:
        """The reading, if the answer is a known number."""
        return None if self.low is None or self.high is None else Span(self.low, self.high)


def answers_to_json(answers: Answers) -> dict[str, dict[str, object]]:
    """Each answer under its fact: typed, tool, low and high in thousandths of the unit; or typed and words.

    An answer of 'not known' has neither low and high nor words.
    """
    return {name: _kept(answer).model_dump(exclude_defaults=True) for name, answer in answers.items()}


def answers_from_json(kept: Mapping[str, object]) -> Answers:
    """The answers that answers_to_json made this of. Raises StoredAnswersError."""
    unknown = [name for name in kept if name not in FACTS]
    if unknown:
        raise StoredAnswersError(f"There is no fact called {unknown[0]} any more.")
    return Answers({name: _answer(FACTS[name], each) for name, each in kept.items()})


def _kept(answer: Answer) -> KeptAnswer:
    low, high = (None, None) if answer.span is None else (answer.span.low, answer.span.high)
    words = None if answer.words is None else sorted(answer.words)
    return KeptAnswer(typed=answer.typed, tool=answer.tool, low=low, high=high, words=words)


def _answer(fact: Fact, value: object) -> Answer:
    try:
        kept = KeptAnswer.model_validate(value)
        answer = Answer(fact.name, kept.typed, kept.tool, kept.span, _words(kept))
    except (ValidationError, ValueError) as fault:
        raise StoredAnswersError(f"The kept answer to {fact.name} can't be read.") from fault
    allowed = fact.all_words if isinstance(fact, ChoiceFact) else frozenset[str]()
    wrong_kind = answer.span is not None and isinstance(fact, ChoiceFact)
    if wrong_kind or not (answer.words or frozenset()) <= allowed:
        raise StoredAnswersError(f"The kept answer to {fact.name} does not suit its fact.")
    return answer


def _words(kept: KeptAnswer) -> frozenset[str] | None:
    return None if kept.words is None else frozenset(kept.words)
