"""Captions in their forms: WebVTT, SRT, lines with a time in front, rolling, overlapping, without times."""

import pytest

from loopwright.listening.captions import heard

VTT = "WEBVTT\n\nNOTE a note\n\n1\n00:01.000 --> 00:03.000 align:start\n<v Ann>chain four</v> &amp; join\n\n01:00:05.500 --> 01:00:06.000\n[Music] row one\n"
SRT = "1\n00:00:01,000 --> 00:00:03,000\nchain four\n\n2\n00:00:04,000 --> 00:00:06,000\nand join\n"
ROLLING = (
    "WEBVTT\n\n00:00:00.000 --> 00:00:02.000\n \nchain<00:00:00.500><c> four</c>\n\n00:00:02.000 --> 00:00:02.010\nchain four\n \n\n"
    "00:00:02.010 --> 00:00:04.000\nchain four\nand<00:00:02.500><c> join</c>\n\n00:00:04.000 --> 00:00:04.010\nand join\n \n"
)


def words(text):
    return [h.word for h in heard(text)]


def test_webvtt_with_notes_tags_entities_and_sounds():
    assert words(VTT) == ["chain", "four", "&", "join", "row", "one"]
    assert heard(VTT)[0].at_s == 1.0
    assert heard(VTT)[-1].at_s == pytest.approx(3605.75, abs=0.3)


def test_srt():
    assert words(SRT) == ["chain", "four", "and", "join"]
    assert [h.at_s for h in heard(SRT)][2] == 4.0


def test_rolling_captions_say_each_word_once_at_its_time():
    assert words(ROLLING) == ["chain", "four", "and", "join"]
    assert heard(ROLLING)[1].at_s == 0.5
    assert heard(ROLLING)[3].at_s == 2.5


@pytest.mark.parametrize("line", ["1:05 chain four", "[01:05] chain four", "00:01:05.2 - chain four", "1:05\nchain four", "(1:05) chain four"])
def test_a_time_in_front(line):
    assert words(line) == ["chain", "four"]
    assert heard(line)[0].at_s == pytest.approx(65, abs=0.3)


def test_words_without_times():
    assert words("chain four\nand join") == ["chain", "four", "and", "join"]
    assert heard("chain four")[0].at_s is None


def test_overlapping_and_unsorted_cues_are_put_in_order():
    text = "WEBVTT\n\n00:05.000 --> 00:09.000\nrow two\n\n00:01.000 --> 00:06.000\nrow one\n"
    said = heard(text)
    assert [h.word for h in said] == ["row", "one", "row", "two"]
    starts = [h.at_s or 0.0 for h in said]
    assert starts == sorted(starts)
    assert all((h.end_s or 0.0) >= start for h, start in zip(said, starts, strict=True))
