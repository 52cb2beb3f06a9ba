"""The log that is tapped beside the camera: kept as it is tapped, sent again without harm, never lost."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from loopwright.filming import log as filming_log
from loopwright.studio import film_logs
from loopwright.studio.film_logs import FilmLogs
from loopwright.workshop.files import CannotOpen, CannotSave

NAME = "glasswort-bag.txt"
AT = f"/api/film/{NAME}/log"


@pytest.fixture
def studio(open_studio):
    return open_studio(NAME)


def tap(studio, *doing, size="one size"):
    return studio.post(AT, json={"size": size, "doing": list(doing)})


def test_what_is_tapped_is_kept_and_read_again(studio):
    assert studio.get(f"{AT}?size=one%20size").json()["text"] == ""
    tap(studio, {"add": "0:00.0 shot 1 title"})
    found = tap(studio, {"add": "0:12.4 shot 2 materials"}, {"add": "# camera off 0:20.0"}).json()
    assert found["text"] == "0:00.0 shot 1 title\n0:12.4 shot 2 materials\n# camera off 0:20.0\n"
    assert studio.get(f"{AT}?size=one%20size").json() == found
    assert studio.get(f"{AT}?size=other").json()["text"] == ""
    assert len(list((studio.folder / ".loopwright" / "film" / NAME).iterdir())) == 1


def test_what_is_sent_again_is_done_once(studio):
    for _ in range(3):
        found = tap(studio, {"add": "0:00.0 shot 1"}, {"add": "0:09.0 shot 2"}, {"take_back": "0:09.0 shot 2"}).json()
    assert found["text"] == "0:00.0 shot 1\n# taken back: 0:09.0 shot 2\n"


def test_a_log_that_is_begun_again_keeps_the_one_before(studio):
    tap(studio, {"add": "0:00.0 shot 1"})
    found = tap(studio, {"put": ""}).json()
    assert (found["text"], found["older"]) == ("", 1)
    tap(studio, {"add": "0:00.0 shot 3"})
    found = tap(studio, {"put": "\ufeff0:01 Rnd 1\r\n0:02 Rnd 2"}).json()
    assert (found["text"], found["older"]) == ("0:01 Rnd 1\n0:02 Rnd 2\n", 2)
    kept = sorted(p.read_text() for p in (studio.folder / ".loopwright" / "film" / NAME).iterdir())
    assert kept == ["0:00.0 shot 1\n", "0:00.0 shot 3\n", "0:01 Rnd 1\n0:02 Rnd 2\n"]


def test_older_logs_are_listed_read_and_taken_again(studio):
    tap(studio, {"add": "# Bag"}, {"add": "0:00.0 shot 1"}, {"add": "0:02.0 shot 2"})
    tap(studio, {"put": "0:01 Rnd 1\n"})
    tap(studio, {"put": ""})
    older = studio.get(f"{AT}/older?size=one%20size").json()["older"]
    assert [(o["number"], o["taps"]) for o in older] == [(2, 1), (1, 2)]
    assert older[0]["at"] >= older[1]["at"]
    first = studio.get(f"{AT}/older/1?size=one%20size").json()["text"]
    assert first == "# Bag\n0:00.0 shot 1\n0:02.0 shot 2\n"
    assert tap(studio, {"put": first}).json()["text"] == first
    assert studio.get(f"{AT}/older?size=other").json()["older"] == []


@pytest.mark.parametrize(("number", "status"), [("3", 422), ("0", 422), ("x", 422), ("-1", 422), ("1.1", 422)])
def test_older_logs_that_there_are_none_of_are_refused(studio, number, status):
    tap(studio, {"add": "0:00.0 shot 1"}, {"put": ""})
    assert studio.get(f"{AT}/older/{number}?size=one%20size").status_code == status


@pytest.mark.parametrize("doing", [
    [{"add": "two\nlines"}], [{"add": ""}], [{"add": "x" * 999}], [{"add": 5}], [{}], ["add"], "add", None, [{"put": 5}], [{"put": "x" * 400_001}],
    [{"add": "\u2028"}], [{"add": "\ud800"}], [{"take_back": None}], [{"add": "x"}] * 501,
])
def test_what_cannot_be_understood_changes_nothing(studio, doing):
    found = studio.post(AT, content=__import__("json").dumps({"size": "child", "doing": doing}).encode())
    assert found.status_code == 422
    assert found.json()["error"]
    assert not (studio.folder / ".loopwright" / "film").exists()


def test_a_log_does_not_grow_without_end(tmp_path):
    logs = FilmLogs(tmp_path.resolve())
    logs.change("a.txt", "", [{"put": "".join(f"{n} s Rnd 1\n" for n in range(film_logs.MOST_LINES))}])
    with pytest.raises(CannotSave, match="begin a new one"):
        logs.change("a.txt", "", [{"add": "1:00 shot 1"}])
    assert film_logs.MOST_LINES == filming_log.MOST_LINES


def test_only_so_many_older_logs_are_kept(tmp_path, monkeypatch):
    monkeypatch.setattr(film_logs, "MOST_OLDER", 3)
    logs = FilmLogs(tmp_path.resolve())
    for n in range(6):
        found = logs.change("a.txt", "child", [{"put": f"{n} s Rnd 1\n"}])
    assert found.older == 3


def test_a_studio_only_for_reading_keeps_no_log(open_studio):
    studio = open_studio(NAME, read_only=True)
    assert tap(studio, {"add": "0:00.0 shot 1"}).status_code == 422
    found = studio.get(f"{AT}?size=").json()
    assert (found["text"], found["older"], found["read_only"]) == ("", 0, True)
    assert sorted(p.name for p in studio.folder.iterdir()) == [NAME]


def test_a_link_that_leads_out_of_the_folder_is_not_followed(studio, tmp_path):
    (tmp_path / "outside").mkdir()
    (studio.folder / ".loopwright").mkdir(exist_ok=True)
    (studio.folder / ".loopwright" / "film").symlink_to(tmp_path / "outside", target_is_directory=True)
    assert tap(studio, {"add": "0:00.0 shot 1"}).status_code == 422
    assert list((tmp_path / "outside").iterdir()) == []


lines = st.sampled_from(["0:00.0 shot 1", "0:03.2 Rnd 2", "# camera off 0:20.0", "0:30 shot 4 Rnd 1"])
things = st.one_of(lines.map(lambda x: {"add": x}), lines.map(lambda x: {"take_back": x}))


@given(doing=st.lists(things, max_size=12), again=st.integers(0, 12))
def test_sending_a_part_again_comes_to_the_same(doing, again, tmp_path_factory):
    once, twice = (FilmLogs(tmp_path_factory.mktemp("logs").resolve()) for _ in range(2))
    want = [once.change("a.txt", "", [d]).text for d in doing][-1:] or [""]
    for n, d in enumerate(doing):
        twice.change("a.txt", "", [d])
        if n == again:
            twice.change("a.txt", "", [d])
    assert twice.read("a.txt", "").text == want[0]


@given(text=st.text(max_size=40))
def test_whatever_is_added_is_one_line_or_refused(text, tmp_path_factory):
    logs = FilmLogs(tmp_path_factory.mktemp("logs").resolve())
    try:
        found = logs.change("a.txt", "", [{"add": text}]).text
    except CannotOpen:
        assert logs.read("a.txt", "").text == ""
    else:
        assert found == f"{text}\n"
        assert found.count("\n") == 1
