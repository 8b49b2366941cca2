"""The code of a build as it stands in an address, however it was written there."""

from __future__ import annotations

from typing import Annotated

from fastapi import Depends, HTTPException

from app.store.codes import CodeError, normalise


async def code_in_address(code: str) -> str:
    """The code as it is shown. Raises HTTPException 404 with the sentence that says what is wrong with it."""
    try:
        return normalise(code)
    except CodeError as error:
        raise HTTPException(404, str(error)) from error


CodeInAddress = Annotated[str, Depends(code_in_address)]
