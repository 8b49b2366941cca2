"""How requests come in and answers go out: HEAD like GET, and no more of a body than is allowed."""

from __future__ import annotations

from starlette.datastructures import Headers
from starlette.types import ASGIApp, Message, Receive, Scope, Send

from app.web.errors import refusal
from app.web.trouble import too_big

LARGEST_BODY = 2_000_000


class HeadLikeGet:
    """Answers HEAD wherever GET is answered: the same headers, no body."""

    def __init__(self, app: ASGIApp) -> None:
        self.app = app

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        if scope["type"] != "http" or scope["method"] != "HEAD":
            await self.app(scope, receive, send)
            return

        async def send_without_body(message: Message) -> None:
            if message["type"] == "http.response.body":
                message = {**message, "body": b""}
            await send(message)

        await self.app({**scope, "method": "GET"}, receive, send_without_body)


class DeclaredSize:
    """Refuses a body that says beforehand that it is too big; any other is counted while it is read."""

    def __init__(self, app: ASGIApp) -> None:
        self.app = app

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        if scope["type"] == "http":
            declared = Headers(scope=scope).get("content-length", "0")
            if declared.isdecimal() and int(declared) > LARGEST_BODY:
                await refusal(scope, 413, too_big(LARGEST_BODY, int(declared)))(scope, receive, send)
                return
        await self.app(scope, receive, send)
