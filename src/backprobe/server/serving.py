"""Runs the application until it is stopped, and refuses what would leave it open."""

from __future__ import annotations

import errno
import socket
from collections.abc import Callable, Mapping

import uvicorn
from pydantic import ValidationError

from backprobe.cases.login import anybody_can_log_in
from backprobe.cases.yard import open_yard
from backprobe.errors import OptionError
from backprobe.server.app import create_app
from backprobe.server.settings import Settings

PROXY = "127.0.0.1"  # a proxy on this machine says where calls come from
FIRST_FREE_PORT, MOST_PORT = 1024, 65_535  # those below are the system's
STOP_S = 10  # for calls under way when the server is stopped


def settings_from(given: Mapping[str, object]) -> Settings:
    """The settings: as given, else from the environment. Raises OptionError."""
    try:
        return Settings(**given)  # type: ignore[arg-type]  # pydantic checks them
    except ValidationError as fault:
        said = "; ".join(f"{'.'.join(map(str, each['loc']))}: {each['msg']}" for each in fault.errors())
        raise OptionError(f"the settings make no sense: {said}") from None


def serve(settings: Settings, *, say: Callable[[str], None]) -> None:
    """Serve until it is stopped.

    Raises OptionError where others could reach what they should not, or where it cannot listen where it is told to.
    """
    must_be_safe(settings)
    must_be_free(settings.host, settings.port)
    say(f"backprobe serves {settings.own_origin}/ from {settings.data}")
    uvicorn.run(
        create_app(settings),
        host=settings.host,
        port=settings.port,
        ssl_certfile=None if settings.certificate is None else str(settings.certificate),
        ssl_keyfile=None if settings.key is None else str(settings.key),
        log_level="warning",
        proxy_headers=settings.origin is not None,
        forwarded_allow_ips=PROXY,
        server_header=False,
        timeout_graceful_shutdown=STOP_S,
    )


def must_be_free(host: str, port: int) -> None:
    """Raise OptionError where this machine cannot listen at host and port, with what to do about it."""
    family = socket.AF_INET6 if ":" in host else socket.AF_INET
    with socket.socket(family, socket.SOCK_STREAM) as tried:
        tried.setsockopt(
            socket.SOL_SOCKET, socket.SO_REUSEADDR, 1
        )  # a port that was just let go is free, as for uvicorn
        try:
            tried.bind((host, port))
        except OSError as fault:
            raise OptionError(f"cannot listen on {host}:{port}: {_why_not(fault, port)}") from None


def _why_not(fault: OSError, port: int) -> str:
    if fault.errno == errno.EADDRINUSE:
        other = port + 1 if port < MOST_PORT else port - 1
        return (
            "another program listens there, perhaps backprobe itself: stop it, or give another port "
            f"(--listen HOST:{other})"
        )
    if fault.errno == errno.EACCES:
        return f"this user may not use that port: give one from {FIRST_FREE_PORT} (--listen HOST:8750)"
    return f"this machine has no such address ({fault.strerror or fault}): give one of its own, 127.0.0.1 or 0.0.0.0"


def must_be_safe(settings: Settings) -> None:
    """Raise OptionError where the server would be reached from elsewhere without HTTPS or without any login."""
    if (settings.certificate is None) != (settings.key is None):
        raise OptionError("--certificate and --key go together")
    for file in (settings.certificate, settings.key):
        if file is not None and not file.is_file():
            raise OptionError(f"{file}: there is no such file")
    if settings.on_loopback:
        return
    if not settings.is_secure:
        raise OptionError(
            "phones need HTTPS, and passwords should not travel without: give --certificate and --key, or behind a "
            "proxy --origin https://… (docs/deploy.md)"
        )
    yard = open_yard(settings.data, address=settings.store, name=settings.name)
    able = anybody_can_log_in(yard)
    yard.store.close()
    if not able:
        raise OptionError(
            f"nobody can log in yet: backprobe serve --data {settings.data} --add-lead LOGIN asks for a password"
        )
