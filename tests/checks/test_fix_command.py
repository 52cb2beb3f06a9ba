"""`check --fix`: safe mends are put into the file, shown, and nothing else is touched."""

from loopwright.cli.main import main

TEXT = (
    "Reed Cowl\nTerms: US\nYarn: DK, wool\nHook: 4 mm\nGauge: 16 sc and 18 rows = 10 cm\nFinished size: 20 cm deep\n"
    "Abbreviations: ch = chain, st(s) = stitch(es), dtr = double treble crochet, rep = repeat\n\nCowl\nCh 13.\n"
    "Row 1: Sc in 2nd ch from hook and in each ch across, turn. (12 sc)\nRow 2: Ch 1, *sc in next st; rep from * across. (13 sc)\n"
)


def test_safe_mends_are_put_in_and_shown(tmp_path, capsys):
    file = tmp_path / "cowl.txt"
    file.write_bytes(b"\xef\xbb\xbf" + TEXT.replace("\n", "\r\n").encode())
    assert main(["check", "--fix", str(file)]) == 1  # the wrong count is not safe to mend
    said = capsys.readouterr().err
    after = file.read_bytes()
    assert after.startswith(b"\xef\xbb\xbfReed Cowl\r\n")
    assert b"sc = single crochet" in after
    assert b"dtr" not in after
    assert b"(13 sc)" in after
    assert "+ Abbreviations: ch = chain" in said
    assert list(tmp_path.iterdir()) == [file]


def test_nothing_to_mend_leaves_the_file_alone(tmp_path, capsys):
    file = tmp_path / "cowl.txt"
    file.write_text("Rnd 1: 6 sc in magic ring. (6)\n", encoding="utf-8")
    stamp = file.stat().st_mtime_ns
    assert main(["check", "--fix", str(file)]) == 0
    assert file.stat().st_mtime_ns == stamp
    assert "nothing" in capsys.readouterr().err


def test_standard_input_cannot_be_mended(capsys, monkeypatch):
    import io
    import sys

    monkeypatch.setattr(sys, "stdin", io.TextIOWrapper(io.BytesIO(b"Rnd 1: 6 sc in magic ring.\n")))
    assert main(["check", "--fix", "-"]) == 2
    assert "standard input" in capsys.readouterr().err
