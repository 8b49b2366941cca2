"""The code of a build as it stands in an address, however it was written there."""

from __future__ import annotations

from typing import Annotated

from fastapi import Depends

from app.store.codes import normalise


async def code_in_address(code: str) -> str:
    """The code as it is shown. Raises CodeError."""
    return normalise(code)


CodeInAddress = Annotated[str, Depends(code_in_address)]
