"""The shelf's file: made when needed, brought up to date, whole after whatever goes wrong, written by one at a time."""

import sqlite3
import threading
from contextlib import closing

import pytest

from loopwright.shelf import Shelf, ShelfError, store
from loopwright.shelf.questions import Kept, keep, kept, let_go

ONE = Kept("hat.txt", "2", "count", "child", "Crown", "Rnd 7", {"have": 57, "want": 56}, "One over", "Thank you.", 1000.0)


def test_an_empty_shelf_makes_no_file(tmp_path):
    assert kept(Shelf(tmp_path), "hat.txt") == ()
    assert list(tmp_path.iterdir()) == []


def test_what_was_kept_is_there_in_order(tmp_path):
    shelf = Shelf(tmp_path)
    second = keep(shelf, ONE)
    first = keep(shelf, Kept(**{**{f: getattr(ONE, f) for f in ONE.__match_args__}, "at_s": 5.0, "id": 0}))
    assert [k.id for k in kept(Shelf(tmp_path), "hat.txt")] == [first.id, second.id]
    assert kept(shelf, "hat.txt")[1].asked == {"have": 57, "want": 56}
    assert kept(shelf, "bag.txt") == ()


def test_one_is_let_go_by_its_number_and_design(tmp_path):
    shelf = Shelf(tmp_path)
    one = keep(shelf, ONE)
    assert not let_go(shelf, "bag.txt", one.id)
    assert let_go(shelf, "hat.txt", one.id)
    assert kept(shelf, "hat.txt") == ()


def test_the_file_is_in_wal_mode_and_knows_its_version(tmp_path):
    shelf = Shelf(tmp_path)
    keep(shelf, ONE)
    with closing(sqlite3.connect(shelf.path)) as held:
        assert held.execute("PRAGMA journal_mode").fetchone()[0] == "wal"
        assert held.execute("PRAGMA user_version").fetchone()[0] == len(store.steps())


def test_an_older_file_is_brought_up_to_date_and_keeps_what_it_has(tmp_path, monkeypatch):
    shelf = Shelf(tmp_path)
    real = store.steps()
    monkeypatch.setattr(store, "steps", lambda: real[:1])
    keep(shelf, ONE)
    monkeypatch.setattr(store, "steps", lambda: (*real[:1], "CREATE TABLE later (name TEXT) STRICT;\nINSERT INTO later VALUES ('a;b');\n"))
    assert len(kept(shelf, "hat.txt")) == 1
    with shelf.reading() as held:
        assert held.execute("SELECT name FROM later").fetchone()[0] == "a;b"


def test_a_step_that_fails_leaves_the_file_as_it_was(tmp_path, monkeypatch):
    shelf = Shelf(tmp_path)
    real = store.steps()
    keep(shelf, ONE)
    monkeypatch.setattr(store, "steps", lambda: (*real, "CREATE TABLE later (name TEXT) STRICT;\nNONSENSE;\n"))
    with pytest.raises(ShelfError):
        keep(shelf, ONE)
    monkeypatch.setattr(store, "steps", lambda: real)
    assert len(kept(shelf, "hat.txt")) == 1
    with closing(sqlite3.connect(shelf.path)) as held:
        assert held.execute("PRAGMA user_version").fetchone()[0] == len(real)


def test_a_file_of_a_later_version_is_left_alone(tmp_path):
    shelf = Shelf(tmp_path)
    keep(shelf, ONE)
    with closing(sqlite3.connect(shelf.path)) as held:
        held.execute("PRAGMA user_version = 999")
    for use in (lambda: kept(shelf, "hat.txt"), lambda: keep(shelf, ONE)):
        with pytest.raises(ShelfError, match="later version"):
            use()


@pytest.mark.parametrize("data", [b"not a database at all" * 100, b"SQLite format 3\0" + b"\xff" * 4000])
def test_a_damaged_file_is_told_and_left_where_it_is(tmp_path, data):
    shelf = Shelf(tmp_path)
    shelf.path.parent.mkdir()
    shelf.path.write_bytes(data)
    for use in (lambda: kept(shelf, "hat.txt"), lambda: keep(shelf, ONE)):
        with pytest.raises(ShelfError, match="put the file aside"):
            use()
    assert shelf.path.read_bytes() == data


def test_another_program_s_database_is_not_written_to(tmp_path):
    shelf = Shelf(tmp_path)
    shelf.path.parent.mkdir()
    with closing(sqlite3.connect(shelf.path)) as held:
        held.execute("PRAGMA application_id = 77")
        held.execute("CREATE TABLE theirs (x)")
    with pytest.raises(ShelfError, match="no shelf"):
        keep(shelf, ONE)


def test_a_change_that_fails_is_taken_back_whole(tmp_path):
    shelf = Shelf(tmp_path)
    keep(shelf, ONE)

    def fail():
        with shelf.writing() as held:
            held.execute("DELETE FROM question")
            raise RuntimeError

    with pytest.raises(RuntimeError):
        fail()
    assert len(kept(shelf, "hat.txt")) == 1


def test_only_for_reading_nothing_is_written(tmp_path):
    with pytest.raises(ShelfError, match="reading"):
        keep(Shelf(tmp_path, read_only=True), ONE)
    keep(Shelf(tmp_path), ONE)
    assert len(kept(Shelf(tmp_path, read_only=True), "hat.txt")) == 1


def test_many_writers_at_once_lose_nothing(tmp_path):
    shelves = [Shelf(tmp_path) for _ in range(4)]
    faults = []

    def work(shelf):
        try:
            for _ in range(10):
                keep(shelf, ONE)
        except ShelfError as e:
            faults.append(e)

    threads = [threading.Thread(target=work, args=(s,)) for s in shelves]
    for t in threads:
        t.start()
    for t in threads:
        t.join()
    assert faults == []
    assert len(kept(shelves[0], "hat.txt")) == 40


@pytest.mark.parametrize("given", [{"kind": "weather"}, {"sent": "x" * 9000}, {"label": "x" * 400}, {"asked": {"x": "y" * 9000}}])
def test_what_is_too_long_or_no_question_is_refused(tmp_path, given):
    fields = {f: getattr(ONE, f) for f in ONE.__match_args__}
    with pytest.raises(ShelfError, match="too long"):
        keep(Shelf(tmp_path), Kept(**{**fields, **given}))
