"""The server's settings: given by `backprobe serve`, or by BACKPROBE_… in the environment."""

from __future__ import annotations

import ipaddress
from pathlib import Path
from urllib.parse import urlsplit

from pydantic import Field
from pydantic_settings import BaseSettings, SettingsConfigDict

HTTPS_PORT, HTTP_PORT = 443, 80
LOCAL_NAMES = ("localhost", "127.0.0.1", "::1")


class Settings(BaseSettings):
    """Where things are kept, where the server listens, and by what address others know it.

    `store` is a database's address, None for SQLite in `data`. `origin` is how phones reach the server
    (https://yard.example), None where that is the address it listens on; giving it says that the server can be reached
    from elsewhere, so a login is asked even where it listens on loopback behind a proxy.
    """

    model_config = SettingsConfigDict(env_prefix="BACKPROBE_", extra="ignore", frozen=True)

    data: Path = Path("backprobe-data")
    store: str | None = None
    host: str = "127.0.0.1"
    port: int = Field(default=8750, ge=0, le=65535)
    certificate: Path | None = None
    key: Path | None = None
    origin: str | None = None
    pages: Path | None = None
    name: str = "Backprobe"

    @property
    def is_secure(self) -> bool:
        """Whether phones reach the server by HTTPS."""
        return self.certificate is not None or (self.origin or "").startswith("https://")

    @property
    def on_loopback(self) -> bool:
        """Whether only this machine can reach the server."""
        return is_loopback(self.host) and self.origin is None

    @property
    def login_needed(self) -> bool:
        """Whether the desk asks for a login."""
        return not self.on_loopback

    @property
    def own_origin(self) -> str:
        """The address by which the server is known."""
        if self.origin is not None:
            return self.origin.rstrip("/")
        scheme, usual = ("https", HTTPS_PORT) if self.is_secure else ("http", HTTP_PORT)
        host = f"[{self.host}]" if ":" in self.host else self.host
        return f"{scheme}://{host}" if self.port == usual else f"{scheme}://{host}:{self.port}"

    def answers_to(self, host: str) -> bool:
        """Whether a Host header names this server.

        On loopback only the names of this machine do: else a page from elsewhere whose name was made to lead here could
        ask as if it were the desk.
        """
        try:
            name = urlsplit(f"//{host}").hostname or ""
        except ValueError:
            return False
        return name in LOCAL_NAMES if self.on_loopback else name != ""


def is_loopback(host: str) -> bool:
    """Whether an address can be reached from this machine alone.

    >>> is_loopback("127.0.0.1"), is_loopback("localhost"), is_loopback("0.0.0.0")
    (True, True, False)
    """
    if host == "localhost":
        return True
    try:
        return ipaddress.ip_address(host).is_loopback
    except ValueError:
        return False
