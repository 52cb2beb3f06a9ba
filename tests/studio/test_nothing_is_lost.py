"""What is typed stays: when the studio is killed, the disk is full, the file is another's, the clock is wrong, two windows are open."""

from __future__ import annotations

import errno
import os
import random
import signal
import tempfile
import threading
import time
from pathlib import Path

import pytest
from websockets.exceptions import ConnectionClosed

from loopwright.studio import history
from loopwright.studio.folder import ChangedElsewhereError, Folder, sum_of
from loopwright.studio.history import DAYS, EVERY_S, NEWEST, History
from loopwright.studio.routes import live
from loopwright.workshop.files import CannotSave
from tests.studio.served import PATTERN, hear, start, write

KILLS = int(os.environ.get("LOOPWRIGHT_KILLS", "6"))
LOST_S = 1.0  # at most so much typing
NAME = "sedge.txt"
SUM = sum_of(PATTERN)


@pytest.fixture
def folder(tmp_path):
    path = tmp_path / "designs"
    path.mkdir()
    (path / NAME).write_text(PATTERN)
    return path


@pytest.fixture
def studio(open_studio):
    client = open_studio()
    (client.folder / NAME).write_text(PATTERN)
    return client


def window(studio):
    return studio.websocket_connect(f"{str(studio.base_url).replace('http', 'ws')}/ws/design/{NAME}")


def says(socket, *kinds):
    while True:
        said = socket.receive_json()
        if said["t"] in kinds:
            return said


def types(socket, seq, text, base=SUM):
    socket.send_json({"t": "text", "seq": seq, "text": text, "base": base})


def kill_at(made, when):
    when.append(time.monotonic())
    made.process.kill()


def test_the_studio_is_killed_while_somebody_types(folder):
    chance = random.Random(50)  # noqa: S311 - when to kill
    longest_s = 0.0
    for kill in range(KILLS):
        made = start(folder)
        killed: list[float] = []
        now = (folder / NAME).read_text()
        base, sent = sum_of(now), [(0.0, now)]
        with made.window(NAME) as typing:
            threading.Timer(0.15 + chance.random() * 1.2, kill_at, (made, killed)).start()
            try:
                for n in range(10_000):
                    sent.append((time.monotonic(), f"{PATTERN}{'Hook 4 mm. ' * (n % 400)}Kill {kill}, key {n}.\n"))
                    write(typing, n, sent[-1][1], base)
                    time.sleep(0.01)
            except ConnectionClosed:
                pass
        made.end()
        text = (folder / NAME).read_text()
        at = [when for when, written in sent if written == text]
        assert at, f"kill {kill}: the file is none of the texts that were typed"
        lost_s = killed[0] - next((when for when, _ in sent if when > at[-1]), killed[0])
        longest_s = max(longest_s, lost_s)
        assert lost_s <= LOST_S, f"kill {kill}: {lost_s:.2f} s of typing were lost"
        assert [p.name for p in folder.iterdir() if not p.name.startswith(".")] == [NAME]
    print(f"{KILLS} kills, at most {longest_s:.2f} s of typing lost")


def test_drafts_of_a_killed_process_are_swept_up(folder):
    old, new, hers = folder / ".sedge.txt.abcd_123.part", folder / ".sedge.txt.abcd_124.part", folder / ".my own.part"
    for path in (old, new, hers):
        path.write_text("half")
    os.utime(old, (time.time() - 3600, time.time() - 3600))
    os.utime(hers, (1, 1))
    Folder(folder, read_only=True)
    assert old.exists()
    Folder(folder)
    assert (old.exists(), new.exists(), hers.exists()) == (False, True, True)


@pytest.mark.parametrize(("where", "what", "word"), [
    ("fsync", OSError(errno.ENOSPC, "No space left on device"), "the disk is full"),
    ("mkstemp", PermissionError(errno.EACCES, "Permission denied"), "may not be written"),
    ("mkstemp", OSError(errno.EROFS, "Read-only file system"), "may not be written"),
    ("replace", OSError(errno.EIO, "Input/output error"), "cannot be written"),
])  # fmt: skip
def test_a_text_that_cannot_be_saved_is_said_and_tried_again(studio, monkeypatch, where, what, word):
    monkeypatch.setattr(live, "RETRY_S", 0.05)

    def fails(*_given, **_more):
        raise what

    with window(studio) as socket, monkeypatch.context() as broken:
        broken.setattr({"fsync": "os.fsync", "mkstemp": "tempfile.mkstemp", "replace": "pathlib.Path.replace"}[where], fails)
        types(socket, 1, PATTERN + "mine")
        said = says(socket, "unsaved", "saved")
        assert said["t"] == "unsaved"
        assert word in said["message"]
        assert (studio.folder / NAME).read_text() == PATTERN
        broken.undo()
        assert says(socket, "saved")["sum"] == sum_of(PATTERN + "mine")
    assert (studio.folder / NAME).read_text() == PATTERN + "mine"
    assert [p.name for p in studio.folder.iterdir() if not p.name.startswith(".")] == [NAME]
    assert not list(studio.folder.glob(".*.part"))


def test_what_was_typed_last_is_saved_when_the_window_or_the_studio_is_closed(folder):
    made = start(folder)
    with made.window(NAME) as typing:
        for n in range(30):
            write(typing, n, f"{PATTERN}{n}", SUM)
    until = time.monotonic() + 10
    while (folder / NAME).read_text() != f"{PATTERN}29" and time.monotonic() < until:
        time.sleep(0.02)
    assert (folder / NAME).read_text() == f"{PATTERN}29"
    with made.window(NAME) as typing:
        write(typing, 1, f"{PATTERN}one more", sum_of(f"{PATTERN}29"))
        hear(typing, "saved")
        write(typing, 2, f"{PATTERN}and another", sum_of(f"{PATTERN}one more"))
        hear(typing, "seen")
        made.process.send_signal(signal.SIGINT)
        made.process.wait(20)
    assert (folder / NAME).read_text() == f"{PATTERN}and another"


def test_a_text_is_saved_that_takes_long_to_work_out(studio):
    rows = "".join(f"Rnd {n}: Sc in each of next {n * 7} sts, 2 sc in next st. ({n})\n" for n in range(4, 1200))
    with window(studio) as socket:
        types(socket, 1, PATTERN + rows)
        assert says(socket, "saved", "seen")["t"] == "saved"


def test_a_file_changed_outside_is_compared_and_both_texts_are_kept(studio):
    with window(studio) as socket:
        types(socket, 1, PATTERN + "mine")
        base = says(socket, "saved")["sum"]
        (studio.folder / NAME).write_text(PATTERN + "hers")
        types(socket, 2, PATTERN + "mine too", base)
        said = says(socket, "changed")
        assert (said["text"], said["sum"]) == (PATTERN + "hers", sum_of(PATTERN + "hers"))
        assert (studio.folder / NAME).read_text() == PATTERN + "hers"
    kept = studio.get(f"/api/designs/{NAME}/history").json()["kept"]
    texts = [studio.get(f"/api/designs/{NAME}/history/{k['id']}").json()["text"] for k in kept if k["why"] == "changed elsewhere"]
    assert set(texts) == {PATTERN + "mine too", PATTERN + "hers"}
    with window(studio) as socket:
        types(socket, 1, PATTERN + "mine too", said["sum"])
        assert says(socket, "saved")["sum"] == sum_of(PATTERN + "mine too")


def test_a_change_outside_is_noticed_without_typing_and_whatever_the_clock_says(studio, monkeypatch):
    monkeypatch.setattr(live, "WATCH_S", 0.05)
    path = studio.folder / NAME
    with window(studio) as socket:
        types(socket, 1, PATTERN + "mine")
        says(socket, "saved")
        at = path.stat().st_mtime_ns
        other = path.with_name("other")
        other.write_text(PATTERN + "hers")
        os.utime(other, ns=(at, at))
        other.replace(path)
        assert says(socket, "changed")["text"] == PATTERN + "hers"
        path.write_text(PATTERN + "HERS")
        os.utime(path, (1000, 1000))
        assert says(socket, "changed")["text"] == PATTERN + "HERS"
        path.unlink()
        assert says(socket, "changed")["text"] is None


def test_a_file_that_is_gone_is_written_again_only_when_that_is_wanted(studio):
    (studio.folder / NAME).unlink()
    with window(studio) as socket:
        types(socket, 1, PATTERN + "mine")
        assert says(socket, "changed", "saved") == {"t": "changed", "text": None, "sum": ""}
        assert not (studio.folder / NAME).exists()
        types(socket, 2, PATTERN + "mine", "")
        assert says(socket, "saved")["sum"] == sum_of(PATTERN + "mine")


def test_of_two_windows_the_second_reads_until_it_writes(studio):
    with window(studio) as first, window(studio) as second:
        assert (says(first, "writer")["you"], says(second, "writer")["you"]) == (True, False)
        types(first, 1, PATTERN + "first")
        base = says(first, "saved")["sum"]
        types(second, 1, PATTERN + "second")
        says(second, "seen")
        assert (studio.folder / NAME).read_text() == PATTERN + "first"
        types(first, 2, PATTERN + "first, last word")
        second.send_json({"t": "write here"})
        assert says(second, "writer")["you"] is True
        assert says(first, "writer")["you"] is False
        assert (studio.folder / NAME).read_text() == PATTERN + "first, last word"
        types(second, 2, PATTERN + "second", base)
        assert says(second, "changed")["text"] == PATTERN + "first, last word"
        types(first, 3, PATTERN + "first again")
        says(first, "seen")
        assert (studio.folder / NAME).read_text() == PATTERN + "first, last word"
        types(second, 3, PATTERN + "second", sum_of(PATTERN + "first, last word"))
        says(second, "saved")
    kept = studio.get(f"/api/designs/{NAME}/history").json()["kept"]
    assert "another window" in {k["why"] for k in kept}


def test_a_studio_for_reading_writes_nothing_at_all(open_studio):
    studio = open_studio(read_only=True)
    (studio.folder / NAME).write_text(PATTERN)
    with window(studio) as socket:
        assert says(socket, "writer")["you"] is False
        types(socket, 1, PATTERN + "mine")
        socket.send_json({"t": "write here"})
        assert says(socket, "writer")["you"] is False
        types(socket, 2, PATTERN + "mine too")
        assert says(socket, "seen")["t"] == "seen"
    assert studio.put(f"/api/designs/{NAME}", json={"text": "x", "base": sum_of(PATTERN)}).status_code == 422
    assert studio.post("/api/designs", json={"text": "x"}).status_code == 422
    assert [p.name for p in studio.folder.iterdir()] == [NAME]
    assert (studio.folder / NAME).read_text() == PATTERN


def test_two_who_save_at_once_never_lose_each_others_text(folder):
    held = Folder(folder)
    outcomes: list[str] = []

    def save(n):
        try:
            held.save(NAME, f"{PATTERN}{n}", sum_of(PATTERN))
            outcomes.append(f"{PATTERN}{n}")
        except ChangedElsewhereError:
            pass

    threads = [threading.Thread(target=save, args=(n,)) for n in range(16)]
    for t in threads:
        t.start()
    for t in threads:
        t.join()
    assert outcomes == [(folder / NAME).read_text()]


def test_two_new_designs_of_one_title_get_two_files(folder):
    held, made = Folder(folder), []
    threads = [threading.Thread(target=lambda: made.append(held.create("Sedge", "x").id)) for _ in range(8)]
    for t in threads:
        t.start()
    for t in threads:
        t.join()
    assert len(set(made)) == 8


def test_an_older_text_is_kept_for_every_quarter_of_an_hour_of_work(folder, monkeypatch):
    now = [10_000.0]
    monkeypatch.setattr("time.monotonic", lambda: now[0])
    held, text = Folder(folder), PATTERN
    for minute in range(46):
        new = f"{PATTERN}{minute}"
        held.save(NAME, new, sum_of(text))
        text = new
        now[0] += 60
    kept = held.history.listing(NAME)
    assert [held.history.read(NAME, k.id) for k in reversed(kept)] == [PATTERN, *(f"{PATTERN}{EVERY_S // 60 * n - 1}" for n in (1, 2, 3))]
    assert {k.why for k in kept} == {"work"}


def test_the_history_keeps_its_order_when_the_clock_is_set_back(folder, monkeypatch):
    held = History(folder)
    held.keep(NAME, "one", "work")
    monkeypatch.setattr("time.gmtime", lambda: time.localtime(86400))
    held.keep(NAME, "two", "work")
    assert [held.read(NAME, k.id) for k in held.listing(NAME)] == ["two", "one"]
    assert held.listing(NAME)[0].at_s < held.listing(NAME)[1].at_s


def test_the_history_is_bounded(folder, monkeypatch):
    held, day = History(folder), [0]
    monkeypatch.setattr("time.gmtime", lambda: time.localtime(86400 * (10 + day[0] // 3)))
    place = folder / history.FOLDER / NAME
    for n in range(3 * DAYS + 3 * NEWEST):
        day[0] = n
        held.keep(NAME, f"{n}", "work")
    kept = held.listing(NAME)
    assert len(kept) == len(list(place.iterdir())) <= NEWEST + DAYS
    assert [held.read(NAME, k.id) for k in kept[:NEWEST]] == [f"{n}" for n in range(3 * DAYS + 3 * NEWEST - 1, 3 * DAYS + 2 * NEWEST - 1, -1)]
    days = [k.at_s for k in kept[NEWEST:]]
    assert len(set(days)) == len(days)


def test_a_history_that_cannot_be_kept_does_not_stop_the_saving(folder):
    (folder / ".loopwright").write_text("a file in its place")
    held = Folder(folder)
    assert held.save(NAME, PATTERN + "x", sum_of(PATTERN)).sum == sum_of(PATTERN + "x")
    assert held.history.listing(NAME) == ()


def test_line_ends_and_marks_of_other_systems_do_not_look_like_a_change(folder):
    (folder / NAME).write_bytes(b"\xef\xbb\xbf" + PATTERN.replace("\n", "\r\n").encode())
    held = Folder(folder)
    opened = held.read(NAME)
    assert opened.text == PATTERN
    saved = held.save(NAME, PATTERN.replace("\n", "\r\n") + "x\r", opened.sum)
    assert saved.sum == held.read(NAME).sum
    with pytest.raises(CannotSave):
        held.save(NAME, "\ud800", saved.sum)


def test_the_temporary_file_is_hidden_and_beside_its_design(folder, monkeypatch):
    made = []
    true = tempfile.mkstemp

    def noted(*given, **more):
        made.append((more["prefix"], more["dir"]))
        return true(*given, **more)

    monkeypatch.setattr(tempfile, "mkstemp", noted)
    Folder(folder).save(NAME, PATTERN + "x", sum_of(PATTERN))
    assert all(prefix.startswith(".") for prefix, _ in made)
    assert made[-1][1] == folder


def test_a_killed_studio_leaves_no_process_behind(folder):
    made = start(folder)
    with made.window(NAME) as typing:
        write(typing, 1, PATTERN, None)
        hear(typing, "seen")
        typing.send('{"t":"view","what":"shape","size":0,"ask":1}')
        time.sleep(0.3)
        children = _children(made.process.pid)
        made.end()
    until = time.monotonic() + 15
    while (left := [c for c in children if _lives(c)]) and time.monotonic() < until:
        time.sleep(0.05)
    assert children
    assert left == []


def _children(pid: int) -> list[int]:
    threads = list(Path(f"/proc/{pid}/task").glob("*/children"))
    if not threads:
        pytest.skip("this system does not list processes in /proc")
    return [int(n) for t in threads for n in t.read_text(encoding="ascii").split()]


def _lives(pid: int) -> bool:
    try:
        return Path(f"/proc/{pid}/stat").read_text(encoding="utf-8").rpartition(")")[2].split()[0] != "Z"
    except OSError:
        return False
