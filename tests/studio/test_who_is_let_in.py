"""The studio answers to its own pages in this machine's browser, and to nothing and nobody else."""

from __future__ import annotations

import http.client
import json
import socket
import time
from contextlib import suppress

import pytest
from websockets.exceptions import ConnectionClosed, InvalidStatus

from tests.studio.served import PATTERN, Served, hear, start, write

MUST = {
    "x-content-type-options": "nosniff", "referrer-policy": "no-referrer", "cross-origin-opener-policy": "same-origin",
    "cross-origin-resource-policy": "same-origin",
}
OUTSIDE_TEXT = "Nobody may read this."
OUTSIDE = [
    "..%2fsecret.txt", "%2e%2e%2fsecret.txt", "%2e%2e/secret.txt", "../secret.txt", "..%5csecret.txt", "....//secret.txt", "%00.txt",
    "sedge.txt%00", "%2fetc%2fpasswd", "/etc/passwd", "c:%5csecret.txt", "link.txt", "loop.txt", ".hidden.txt", "sedge.txt%2f..%2f..%2fsecret.txt",
    "x" * 300 + ".txt", "x" * 6000 + ".txt", "%ff%fe.txt", "%ed%a0%80.txt", "nothing.txt", "sub%2finner.txt", ".loopwright%2fshelf.sqlite", "",
]
ROUTES = [
    ("GET", "/api/designs/{}"), ("PUT", "/api/designs/{}"), ("GET", "/api/designs/{}/picture"), ("GET", "/api/designs/{}/history"),
    ("GET", "/api/designs/sedge.txt/history/{}"), ("GET", "/static/{}"), ("GET", "/static/assets/{}"), ("GET", "/fonts/{}"), ("GET", "/{}"),
    ("GET", "/write/{}"), ("POST", "/api/editing/{}/mend"), ("GET", "/api/editing/{}/report"), ("POST", "/api/publishing/{}/plan"),
]


@pytest.fixture(scope="module")
def studio(tmp_path_factory):
    around = tmp_path_factory.mktemp("around")
    folder = around / "designs"
    (folder / "sub").mkdir(parents=True)
    (around / "secret.txt").write_text(OUTSIDE_TEXT)
    (folder / "sub" / "inner.txt").write_text(OUTSIDE_TEXT)
    (folder / ".hidden.txt").write_text(OUTSIDE_TEXT)
    (folder / "sedge.txt").write_text(PATTERN)
    (folder / "link.txt").symlink_to(around / "secret.txt")
    (folder / "loop.txt").symlink_to(folder / "loop.txt")
    made = start(folder)
    yield made
    made.end()


def refused(studio: Served, path: str, method: str = "GET", **headers: str | None) -> None:
    answer = studio.ask(path, method, {"text": "x", "base": ""} if method != "GET" else None, **headers)
    assert answer.status == 403, (path, headers, answer.status)
    assert b"Sedge" not in answer.body
    assert answer.headers["content-security-policy"] == "default-src 'none'; frame-ancestors 'none'"
    assert MUST.items() <= answer.headers.items()


@pytest.mark.parametrize("path", ["/", "/api/folder", "/api/designs/sedge.txt", "/static/index.html", "/fonts/Besley_700Bold.woff2", "/write/x"])
def test_nothing_without_the_token(studio, path):
    for cookie in (None, "", "loopwright=x", f"loopwright-{studio.port}=x", f"loopwright-{studio.port}={studio.token}x", f"loopwright-1={studio.token}"):
        refused(studio, path, cookie=cookie)
    refused(studio, f"{path}?token=wrong", cookie=None)
    refused(studio, "/api/folder?token=" + studio.token, cookie=None)


@pytest.mark.parametrize("host", ["example.test", "127.0.0.1", "127.0.0.1:1", "localhost", "[::1]:80", "127.0.0.1.example.test", "", "a b"])
def test_nothing_under_another_host(studio, host):
    answer = studio.ask("/api/folder", host=host)
    assert answer.status in (400, 403)
    assert b"sedge" not in answer.body
    with pytest.raises((InvalidStatus, ConnectionClosed, ValueError, OSError)):
        studio.window("sedge.txt", host=f"{host or 'example.test'}")


@pytest.mark.parametrize("origin", ["http://example.test", "null", "http://127.0.0.1:1", "https://127.0.0.1", "file://", "http://localhost"])
def test_nothing_from_another_page(studio, origin):
    refused(studio, "/api/folder", origin=origin)
    refused(studio, "/api/designs", "POST", origin=origin)
    refused(studio, "/api/designs/sedge.txt", "PUT", origin=origin)
    with pytest.raises(InvalidStatus) as met:
        studio.window("sedge.txt", origin=origin)
    assert met.value.response.status_code == 403


def test_changes_and_windows_need_the_origin_of_the_studio(studio):
    refused(studio, "/api/designs/sedge.txt", "PUT", origin=None)
    for given in ({"origin": None}, {"cookie": None}, {"cookie": f"loopwright-{studio.port}=x"}):
        with pytest.raises(InvalidStatus):
            studio.window("sedge.txt", **given)


@pytest.mark.parametrize("site", ["cross-site", "same-site"])
def test_what_the_browser_calls_another_site_is_refused(studio, site):
    refused(studio, "/api/folder", sec_fetch_site=site)
    assert studio.ask("/api/folder", sec_fetch_site="same-origin").status == 200


def test_the_token_goes_into_a_cookie_that_no_script_reads_and_no_other_page_sends(studio):
    answer = studio.ask(f"/?token={studio.token}", cookie=None)
    assert (answer.status, answer.headers["location"]) == (303, "/")
    parts = {p.strip().lower() for p in answer.headers["set-cookie"].split(";")[1:]}
    assert {"httponly", "samesite=strict", "path=/"} <= parts


@pytest.mark.parametrize("name", OUTSIDE)
def test_no_name_leads_out_of_the_folder(studio, name):
    for method, route in ROUTES:
        answer = studio.ask(route.format(name), method, {"text": "x", "base": "", "before": 0} if method != "GET" else None)
        assert answer.status in (200, 204, 307, 400, 404, 405, 409, 413, 414, 422), (route, name, answer.status)
        assert OUTSIDE_TEXT.encode() not in answer.body
        assert b"root:" not in answer.body
        assert MUST.items() <= answer.headers.items() or answer.status in (400, 414), (route, name)
    assert sorted(p.name for p in studio.folder.parent.iterdir()) == ["designs", "secret.txt"]
    assert (studio.folder.parent / "secret.txt").read_text() == OUTSIDE_TEXT


@pytest.mark.parametrize("name", [n for n in OUTSIDE if n and len(n) < 1000])
def test_no_window_leads_out_of_the_folder(studio, name):
    try:
        with studio.window(name) as window:
            write(window, 1, "mine", "")
            said = hear(window, "unsaved", "changed", "seen")
            while said["t"] == "seen":
                said = hear(window, "unsaved", "changed", "saved")
            if name in ("nothing.txt", "%ff%fe.txt", "%ed%a0%80.txt"):
                return
            assert said["t"] == "unsaved"
    except (InvalidStatus, ConnectionClosed, ValueError):
        pass
    assert (studio.folder.parent / "secret.txt").read_text() == OUTSIDE_TEXT
    assert not (studio.folder.parent / "mine").exists()


def test_the_history_does_not_follow_a_link_out_of_the_folder(tmp_path):
    folder, out = tmp_path / "designs", tmp_path / "out"
    folder.mkdir()
    out.mkdir()
    (folder / "sedge.txt").write_text(PATTERN)
    (folder / ".loopwright").symlink_to(out)
    made = start(folder)
    try:
        opened = made.ask("/api/designs/sedge.txt").json
        saved = made.ask("/api/designs/sedge.txt", "PUT", {"text": PATTERN + "x", "base": opened["sum"]})
        assert saved.status == 200
        assert list(out.iterdir()) == []
        (out / "history" / "sedge.txt").mkdir(parents=True)
        (out / "history" / "sedge.txt" / "000001 2026-01-01T00-00-00Z work.txt").write_text(OUTSIDE_TEXT)
        assert made.ask("/api/designs/sedge.txt/history").json == {"kept": []}
        assert made.ask("/api/designs/sedge.txt/history/000001%202026-01-01T00-00-00Z%20work.txt").status == 422
    finally:
        made.end()


def test_every_answer_has_its_headers_and_its_own_nonce(studio):
    for path in ("/", "/write/sedge.txt", "/api/folder", "/api/nothing", "/static/mark.svg", "/static/none", "/fonts/Besley_700Bold.woff2", "/api/designs/nothing.txt"):
        answer = studio.ask(path)
        assert MUST.items() <= answer.headers.items(), path
        policy = answer.headers["content-security-policy"]
        for part in ("default-src 'none'", "script-src 'self'", "frame-ancestors 'none'", "base-uri 'none'", "form-action 'self'", "connect-src 'self'"):
            assert part in policy
        assert "unsafe" not in policy
        assert "server" not in answer.headers
    nonces = {studio.ask("/").headers["content-security-policy"].partition("nonce-")[2].partition("'")[0] for _ in range(3)}
    assert len(nonces) == 3


def test_the_pages_are_no_listing(studio):
    for path in ("/static", "/static/", "/static/assets", "/static/assets/", "/fonts", "/fonts/", "/static/.stamp", "/fonts/OFL-Besley.txt"):
        answer = studio.ask(path)
        assert b".js" not in answer.body or b"<!doctype html>" in answer.body, path
        assert answer.status in (200, 404), path
        if path not in {"/static", "/fonts"}:
            assert answer.status == 404, path


def raw(studio: Served, head: str, body: bytes = b"", wait_s: float = 8.0) -> bytes:
    """Bytes as they are, and what came back."""
    with socket.create_connection(("127.0.0.1", studio.port), timeout=wait_s) as talk:
        origin = f"http://{studio.host}"
        talk.sendall(head.format(host=studio.host, cookie=studio.cookie, origin=origin).replace("\n", "\r\n").encode("latin-1") + body)
        try:
            return talk.recv(65536)
        except (TimeoutError, ConnectionResetError):
            return b""


POST = "POST /api/designs HTTP/1.1\nHost: {host}\nCookie: {cookie}\nOrigin: {origin}\n"


def test_a_body_that_says_it_is_giant_is_refused_before_it_is_sent(studio):
    assert b" 413 " in raw(studio, POST + "Content-Length: 99999999999\n\n")
    assert raw(studio, POST + "Content-Length: -5\n\n")[9:12] in (b"400", b"413")
    assert raw(studio, POST + "Content-Length: ９\n\n".encode().decode("latin-1"))[9:12] in (b"400", b"413")


def test_a_body_that_does_not_say_how_long_it_is_ends_where_it_is_too_long(studio):
    talk = http.client.HTTPConnection("127.0.0.1", studio.port, timeout=30)
    talk.putrequest("POST", "/api/designs", skip_host=True)
    for name, value in (("Host", studio.host), ("Cookie", studio.cookie), ("Origin", f"http://{studio.host}"), ("Transfer-Encoding", "chunked")):
        talk.putheader(name, value)
    talk.endheaders()
    status = None
    try:
        for _ in range(200):
            talk.send(b"10000\r\n" + b"x" * 65536 + b"\r\n")
        talk.send(b"0\r\n\r\n")
    except OSError:
        status = 413  # the connection was closed while it went on
    with suppress(OSError):
        status = talk.getresponse().status
    assert status == 413


@pytest.mark.parametrize("body", [
    b"", b"null", b"[]", b"{", b"{}", b"\xff\xfe", b"[" * 200_000, b'{"a":' * 100_000, b'{"text": 5}', b'{"text": null, "title": {"a": 1}}',
    b'{"text": "\\ud800"}', b'{"title": "\\ud800", "text": "x"}', b'{"text": "' + b"x" * 400_001 + b'"}', b'{"starting_point": ["a"]}', b"NaN", b'{"text": NaN}',
    b'{"title": "../../out", "text": "a"}', b'{"title": "/etc/passwd", "text": "a"}', b'{"title": "CON", "text": "a\\u0000b"}', b"9" * 5000,
])  # fmt: skip
def test_a_body_that_is_none_is_answered_with_a_word(studio, body):
    answer = studio.ask("/api/designs", "POST", body)
    assert answer.status in (201, 422), (body[:40], answer.status, answer.body[:200])
    if answer.status == 201:
        made = answer.json["id"]
        assert (studio.folder / made).is_file()
        (studio.folder / made).unlink()
    else:
        assert answer.json["error"]
    answer = studio.ask("/api/designs/sedge.txt", "PUT", body)
    assert answer.status == 422
    assert (studio.folder / "sedge.txt").read_text() == PATTERN


def test_frames_that_are_none_are_answered_with_a_word_and_the_window_lives_on(studio):
    with studio.window("sedge.txt") as window:
        hear(window, "writer")
        for frame in ("", "{", "[]", "null", "5", '"text"', "{}", '{"t":"text"}', '{"t":"text","seq":"1","text":"a"}', '{"t":"text","seq":1,"text":5}',
                      '{"t":"text","seq":1,"text":"\\ud800","base":""}', '{"t":"view","what":"chart","size":0.5}', '{"t":"view","what":"nothing","size":0}',
                      '{"t":"view","what":"chart","size":true}', '{"t":"view","what":"chart","size":0,"ask":[[[]]]}', "[" * 100_000, b"\x00\xff", b"{}",
                      '{"t":"text","seq":1,"base":"","text":"' + "x" * 400_001 + '"}', '{"t":["text"]}', '{"t":{"a":1}}', '{"t":"view","what":["chart"],"size":0}'):
            window.send(frame)
            assert hear(window, "error", "view")["message"] == "This was not understood."
        write(window, 5, PATTERN, None)
        assert hear(window, "seen")["seq"] == 5


def test_a_giant_frame_ends_its_window_and_no_other(studio):
    with studio.window("sedge.txt") as other:
        with studio.window("sedge.txt") as window:
            hear(window, "writer")
            with suppress(ConnectionClosed):
                window.send("x" * 5_000_000)
            with pytest.raises(ConnectionClosed):
                window.recv(timeout=20)
        write(other, 1, PATTERN, None)
        assert hear(other, "seen")["seq"] == 1


def test_frames_that_break_the_protocol_end_their_window_only(studio):
    head = ("GET /ws/design/sedge.txt HTTP/1.1\nHost: {host}\nCookie: {cookie}\nOrigin: {origin}\nUpgrade: websocket\nConnection: Upgrade\n"
            "Sec-WebSocket-Version: 13\nSec-WebSocket-Key: AAAAAAAAAAAAAAAAAAAAAA==\n\n")
    for junk in (b"\xff" * 64, b"\x81\x85abcd\xff\xff\xff\xff\xff", b"\x81\x7f" + b"\xff" * 8, b"\x89\xff" + b"\x00" * 20, b"GET / HTTP/1.1\r\n\r\n"):
        assert b"101" in raw(studio, head, junk)[:20]
    time.sleep(0.2)
    assert studio.ask("/api/folder").status == 200


def test_a_flood_of_questions_is_bounded(studio):
    with studio.window("sedge.txt") as window:
        write(window, 1, PATTERN, None)
        hear(window, "seen")
        for n in range(400):
            window.send(json.dumps({"t": "view", "what": "measures", "size": n % 7, "ask": n}))
        heard = [hear(window, "view", "error") for _ in range(400)]
        assert any(h["t"] == "error" for h in heard)
        assert any("data" in h for h in heard)
