"""The message files are read strictly, and what cannot be said is a fault that names itself."""

import pytest

from model.describe import messages as module
from model.describe.messages import MessageError, bundle, messages, rendered


@pytest.fixture
def written(tmp_path, monkeypatch):
    """Message files of a made-up place."""

    def write(**files):
        (tmp_path / "en").mkdir(exist_ok=True)
        for name, text in files.items():
            (tmp_path / "en" / f"{name}.ftl").write_text(text, encoding="utf-8")
        monkeypatch.setattr(module, "FOLDER", tmp_path)
        module.files.cache_clear(), messages.cache_clear(), bundle.cache_clear()

    yield write
    monkeypatch.undo()
    module.files.cache_clear(), messages.cache_clear(), bundle.cache_clear()


def test_a_message_of_several_lines_is_one_line(written):
    written(a="long = The first half,\n    then { $what }\n    and the end.\n\n    Another paragraph.\n")
    assert rendered("long", {"what": "more"}) == "The first half, then more and the end.\n\nAnother paragraph."


def test_counts_choose_their_plural(written):
    written(a="stops = { $count ->\n    [one] { $count } stop\n   *[other] { $count } stops\n}\n")
    assert [rendered("stops", {"count": count}) for count in (0, 1, 2)] == ["0 stops", "1 stop", "2 stops"]


def test_a_message_finds_those_it_names_in_other_files_however_they_go_round(written):
    written(a="first = Here { second }.\nother = Last.\n", b="second = and { third }\n", c="third = there { $n ->\n"
            "    [one] once\n   *[other] often, { other }\n}\n")  # fmt: skip
    assert rendered("first", {"n": 2}) == "Here and there often, Last.."


def test_what_is_not_said_is_not_read(written):
    written(a="some = One.\n", b="open = Not { $closed\n")
    assert rendered("some", {}) == "One."


def test_an_id_stands_once(written):
    written(a="same = One.\n", b="same = Other.\n")
    with pytest.raises(MessageError, match=r"b\.ftl: there is a message same already"):
        messages()


@pytest.mark.parametrize("text", ["open = Not { $closed\n", "no message at all\n", "-term = A term.\n"])
def test_what_is_no_message_is_refused_with_its_file(written, text):
    written(topic=text)
    with pytest.raises(MessageError, match=r"topic\.ftl"):
        messages()


def test_a_missing_message_or_variable_or_language_is_refused(written):
    written(a="some = With { $what }.\n")
    with pytest.raises(MessageError, match="no message 'other'"):
        rendered("other", {})
    with pytest.raises(MessageError, match="help' is empty"):
        rendered("some.help", {})
    with pytest.raises(MessageError, match="what"):
        rendered("some", {})
    with pytest.raises(MessageError, match="language"):
        rendered("some", {"what": "this"}, "xx")
