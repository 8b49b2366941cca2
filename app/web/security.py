"""Headers that every answer carries, and the check that a changing request came from our own pages."""

from __future__ import annotations

from ipaddress import ip_address
from urllib.parse import urlsplit

from starlette.datastructures import Headers, MutableHeaders
from starlette.types import ASGIApp, Message, Receive, Scope, Send

from app.web.errors import refusal
from app.web.problem import API
from app.web.settings import Settings
from app.web.trouble import FROM_ELSEWHERE, NOT_JSON

POLICY = (
    "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self'; font-src 'self'; "
    "connect-src 'self'; form-action 'self'; base-uri 'none'; frame-ancestors 'none'; object-src 'none'"
)
A_YEAR = "max-age=31536000"
TEXTUAL = ("text/", "application/json", "application/problem+json", "image/svg+xml")
SAFE_METHODS = frozenset({"GET", "HEAD", "OPTIONS"})
JSON_TYPES = frozenset({"application/json", "application/problem+json"})


class SecurityHeaders:
    """Puts the security headers on every answer; outermost, so that crashes and refusals carry them too.

    What sets no Cache-Control of its own is not kept by any browser or proxy.
    """

    def __init__(self, app: ASGIApp, settings: Settings) -> None:
        self.app = app
        self.is_encrypted = settings.is_encrypted

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        if scope["type"] != "http":
            await self.app(scope, receive, send)
            return
        is_encrypted = self.is_encrypted or scope["scheme"] == "https"

        async def send_with_headers(message: Message) -> None:
            if message["type"] == "http.response.start":
                _secure(MutableHeaders(scope=message), is_encrypted=is_encrypted)
            await send(message)

        await self.app(scope, receive, send_with_headers)


def _secure(headers: MutableHeaders, *, is_encrypted: bool) -> None:
    headers["Content-Security-Policy"] = POLICY
    headers["X-Content-Type-Options"] = "nosniff"
    headers["Referrer-Policy"] = "same-origin"
    headers.setdefault("Cache-Control", "no-store")
    if is_encrypted:
        headers["Strict-Transport-Security"] = A_YEAR
    media_type = headers.get("Content-Type", "")
    if media_type.startswith(TEXTUAL) and "charset=" not in media_type:
        headers["Content-Type"] = f"{media_type}; charset=utf-8"


class OwnRequestsOnly:
    """Refuses requests under a host name that isn't ours, and changes that another site's page has sent.

    The name is checked because another site may point a name of its own at this machine and then pass for us.
    """

    def __init__(self, app: ASGIApp, settings: Settings) -> None:
        self.app = app
        public = urlsplit(settings.public_address)
        self.public_origin = f"{public.scheme}://{public.netloc}" if public.netloc else ""
        self.names = {"localhost", settings.host, public.hostname or ""} - {""}

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        if scope["type"] != "http":
            await self.app(scope, receive, send)
            return
        headers = Headers(scope=scope)
        if not self._is_our_name(headers.get("host", "")):
            await refusal(scope, 421)(scope, receive, send)
            return
        if scope["method"] not in SAFE_METHODS and not self._came_from_us(scope, headers):
            # A program that forgot to say that it sends JSON is told so, and nothing is changed either.
            is_other_type = scope["path"].startswith(API) and "cookie" not in headers
            answer = refusal(scope, 415, NOT_JSON) if is_other_type else refusal(scope, 403, FROM_ELSEWHERE)
            await answer(scope, receive, send)
            return
        await self.app(scope, receive, send)

    def _is_our_name(self, host: str) -> bool:
        name = _host_name(host)
        return name in self.names or _is_address(name)

    def _came_from_us(self, scope: Scope, headers: Headers) -> bool:
        if _is_plain_json(scope["path"], headers):
            return True
        site = headers.get("sec-fetch-site", "none")
        if site != "none":
            return site == "same-origin"
        ours = {f"{scope['scheme']}://{headers.get('host', '')}", self.public_origin} - {""}
        return headers.get("origin") in ours


def _is_plain_json(path: str, headers: Headers) -> bool:
    # Another site's form can't send JSON, and its script would need our leave first, which nobody gets.
    media_type = headers.get("content-type", "").partition(";")[0].strip().lower()
    return path.startswith(API) and "cookie" not in headers and media_type in JSON_TYPES


def _host_name(host: str) -> str:
    try:
        return urlsplit(f"//{host}").hostname or ""
    except ValueError:
        return ""


def _is_address(name: str) -> bool:
    try:
        ip_address(name)
    except ValueError:
        return False
    return True
