"""People, phones and feeds from the desk."""

from __future__ import annotations

import httpx
from tests.samples.served import Server


def test_a_phone_is_enrolled_from_the_desk(server: Server, desk: httpx.Client) -> None:
    """A person, a code with its picture, the phone; then it is withdrawn."""
    ines = desk.post("/api/desk/people", json={"name": "Ines", "language": "es", "units": "us"}).json()
    made = desk.post("/api/desk/phones", json={"person": ines["id"]}).json()
    assert made["url"] == f"{server.url}/#enrol={made['code']}"
    assert made["qr_svg"].startswith("<svg")
    with server.client() as phone:
        token = phone.post("/api/enrol", json={"code": made["code"], "device": "phone-a", "label": "x"}).json()["token"]
        phone.headers["Authorization"] = f"Bearer {token}"
        assert phone.get("/api/day").status_code == 200
        [row] = desk.get("/api/desk/phones").json()["phones"]
        assert (row["device"], row["label"], row["person"]) == ("phone-a", "x", {"id": ines["id"], "name": "Ines"})
        assert "token" not in str(row)
        desk.post(f"/api/desk/phones/{row['id']}/withdraw")
        assert phone.get("/api/day").json()["code"] == "phone_withdrawn"
    assert desk.get("/api/desk/phones").json()["phones"][0]["withdrawn_at"] is not None


def test_nobody_and_nothing_is_said(desk: httpx.Client) -> None:
    """Codes for people that are not here, phones and feeds that are not there, a name without letters."""
    assert desk.post("/api/desk/phones", json={"person": "nobody"}).json()["code"] == "not_found"
    assert desk.post("/api/desk/phones/none/withdraw").json()["code"] == "not_found"
    assert desk.post("/api/desk/feeds/none/withdraw").json()["code"] == "not_found"
    assert desk.post("/api/desk/people", json={"name": "\n"}).json()["code"] == "request"


def test_a_feed_has_a_token_of_its_own(desk: httpx.Client) -> None:
    """Shown once; its column map must name our columns."""
    made = desk.post("/api/desk/feeds", json={"label": "collector", "columns": {"t": "Sent at"}}).json()
    assert len(made["token"]) > 40
    [feed] = desk.get("/api/desk/feeds").json()["feeds"]
    assert (feed["label"], feed["columns"], feed["withdrawn_at"]) == ("collector", {"t": "Sent at"}, None)
    assert "token" not in feed
    odd = desk.post("/api/desk/feeds", json={"label": "x", "columns": {"speed": "v"}})
    assert odd.json()["code"] == "request"
    assert desk.post(f"/api/desk/feeds/{feed['id']}/withdraw").json()["withdrawn"]
