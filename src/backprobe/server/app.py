"""The application: calls under /api/, the pages everywhere else."""

from __future__ import annotations

from collections.abc import AsyncIterator
from contextlib import asynccontextmanager

from anyio import to_thread
from fastapi import FastAPI
from starlette.middleware import Middleware

from backprobe import __version__
from backprobe.cases.erase import tidy
from backprobe.cases.judging import Judging
from backprobe.cases.tokens import secret
from backprobe.cases.yard import open_yard
from backprobe.server import (
    blob_calls,
    desk_calls,
    list_calls,
    login_calls,
    people_calls,
    phone_calls,
    report_calls,
    sign_off_calls,
)
from backprobe.server.callers import Running
from backprobe.server.guard import Guard
from backprobe.server.pages import Pages, built_pages
from backprobe.server.rates import Rate
from backprobe.server.refusals import answer_errors
from backprobe.server.settings import Settings

LOGIN_TRIES, LOGIN_EACH_S = 10, 30.0
ONE_LOGIN_TRIES, ONE_LOGIN_EACH_S = 200, 10.0
ENROL_TRIES, ENROL_EACH_S = 20, 15.0
ROUTERS = (phone_calls, blob_calls, login_calls, list_calls, desk_calls, people_calls, report_calls, sign_off_calls)


def create_app(settings: Settings) -> FastAPI:
    """The application over what `settings` name; the store is opened when it starts and closed when it ends."""

    @asynccontextmanager
    async def lifespan(app: FastAPI) -> AsyncIterator[None]:
        yard = await to_thread.run_sync(lambda: open_yard(settings.data, address=settings.store, name=settings.name))
        app.state.running = Running(
            yard=yard,
            settings=settings,
            local_csrf=secret(),
            logins=Rate(LOGIN_TRIES, LOGIN_EACH_S),
            each_login=Rate(ONE_LOGIN_TRIES, ONE_LOGIN_EACH_S),
            enrolments=Rate(ENROL_TRIES, ENROL_EACH_S),
        )
        await to_thread.run_sync(lambda: tidy(yard))
        judging = Judging(yard)
        judging.start()
        yield
        await to_thread.run_sync(judging.stop)
        yard.store.close()

    app = FastAPI(
        title="backprobe",
        version=__version__,
        lifespan=lifespan,
        openapi_url="/api/openapi.json",
        docs_url=None,
        redoc_url=None,
        middleware=[Middleware(Guard, settings=settings)],
    )
    answer_errors(app)
    for calls in ROUTERS:
        app.include_router(calls.router)
    unknown = FastAPI(openapi_url=None)  # whatever is no call of ours is said in the one shape, not by a page
    answer_errors(unknown)
    app.mount("/api", unknown)
    app.mount("/", Pages(settings.pages or built_pages()))
    return app
