"""Errors as answers: always the one shape, with the status that goes with the code."""

from __future__ import annotations

import logging
from collections.abc import Mapping

from fastapi import FastAPI, Request
from fastapi.exceptions import RequestValidationError
from fastapi.responses import JSONResponse
from starlette.exceptions import HTTPException

from backprobe.errors import BackprobeError, RefusedError, StoreError, error_json
from backprobe.server.spoken import say_of
from backprobe.tongues.speaker import Say, plain

STATUS: Mapping[str, int] = {
    "request": 422,
    "not_enrolled": 401,
    "not_logged_in": 401,
    "phone_withdrawn": 403,
    "not_allowed": 403,
    "enrolment_code": 403,
    "login_wrong": 403,
    "csrf": 403,
    "host": 403,
    "not_found": 404,
    "device_taken": 409,
    "key_taken": 409,
    "offset": 409,
    "exists": 409,
    "id_taken": 409,
    "erased": 410,
    "too_large": 413,
    "blob_type": 415,
    "digest_differs": 422,
    "unreadable": 422,
    "journal": 422,
    "too_many": 429,
}
OF_STATUS: Mapping[int, str] = {404: "not_found", 405: "request", 413: "too_large", 415: "request"}
WORDS: Mapping[int, str] = {404: "there is no such call", 405: "this call is made in another way"}
BUSY, FAULT, UNFIT = 503, 500, 422
MOST_SHOWN = 3
_log = logging.getLogger(__name__)


def refused(error: BackprobeError, headers: Mapping[str, str] | None = None, *, say: Say = plain) -> JSONResponse:
    """The answer to an error of ours, said as `say` has it."""
    answer = error_json(error)
    answer["error"] = say(str(answer["error"]))
    if isinstance(error, StoreError):
        return JSONResponse(answer, BUSY, {"Retry-After": "5", **(headers or {})})
    status = STATUS[error.code] if isinstance(error, RefusedError) else UNFIT
    return JSONResponse(answer, status, dict(headers or {}))


def answer_errors(app: FastAPI) -> None:
    """Have every error answered in the one shape."""

    @app.exception_handler(BackprobeError)
    def ours(request: Request, error: BackprobeError) -> JSONResponse:
        return refused(error, getattr(error, "headers", None), say=say_of(request.headers))

    @app.exception_handler(RequestValidationError)
    def not_understood(_request: Request, error: RequestValidationError) -> JSONResponse:
        said = [f"{'.'.join(map(str, each['loc']))}: {each['msg']}" for each in error.errors()[:MOST_SHOWN]]
        return refused(RefusedError("; ".join(said), code="request"))

    @app.exception_handler(HTTPException)
    def of_http(request: Request, error: HTTPException) -> JSONResponse:
        code = OF_STATUS.get(error.status_code, "request")
        said = say_of(request.headers)(WORDS.get(error.status_code, str(error.detail)))
        answer = {"ok": False, "error": said, "code": code}
        return JSONResponse(answer, error.status_code, dict(error.headers or {}))

    @app.exception_handler(Exception)
    def unforeseen(request: Request, error: Exception) -> JSONResponse:
        _log.error("%s %s failed", request.method, request.url.path, exc_info=error)
        said = say_of(request.headers)("the server could not do this; its log says why")
        return JSONResponse({"ok": False, "error": said, "code": "error"}, FAULT)
