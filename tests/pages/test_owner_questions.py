"""Owners' questions, answered where they arise, from the model's own figures."""

import pytest

from model.describe.scenario_io import starting_drives, to_link
from model.limits.owner_questions import after_standing, charged, disc_work_left, in_a_queue
from model.sampling.drives import drive
from model.words.quantities import Display
from pages.parts.typography import NO_BREAK
from tests.pages.in_app import opened_at, ran, scenario_of

HILL = starting_drives()["suburb-hill"][2]
METRIC = Display()


def answered(page: str, question: str, **more: str) -> str:
    """All that a page says once a question is opened."""
    app = opened_at(page, to_link(HILL) | more)
    app.session_state[f"{question}-drawer"] = True
    ran(app.run())
    assert not app.error
    return " ".join(one.value for one in app.markdown).replace(NO_BREAK, " ")


def kwh(energy: float) -> str:
    return METRIC.text(energy, "kWh")


@pytest.mark.parametrize(
    ("page", "question", "told"),
    [
        ("your_drive.py", "question-charge", lambda: kwh(charged(HILL).second.saved_kwh)),
        ("your_drive.py", "question-queue", lambda: kwh(in_a_queue(HILL).net_kwh)),
        ("lift_off.py", "question-cruise", lambda: "Common practice, no source"),
        ("lift_off.py", "question-brakes", lambda: f"left with {100 * disc_work_left(drive(HILL)):.1f} % of the work"),
        ("winter_and_limits.py", "question-standing", lambda: kwh(after_standing(HILL).first.net_kwh)),
    ],
)
def test_a_question_is_answered_from_the_model_or_says_that_it_is_not(page, question, told):
    assert told() in answered(page, question, **({"part": "cold"} if "winter" in page else {}))


def test_a_step_of_a_menu_is_counted_in_seconds_with_its_caution():
    app = opened_at("lift_off.py", to_link(HILL))
    app.session_state["question-step-drawer"] = True
    ran(app.run())
    words = " ".join(one.value for one in app.markdown).replace(NO_BREAK, " ")
    assert "Only on an empty, level, dry road" in words and "a passenger who times it" in words
    # nothing is shown as counted before somebody has counted, and what was counted is no setting
    assert app.text_input(key="set-counted-s").value == ""
    before = scenario_of(app)
    for seconds, told in (("2.5", "stronger than advised. Choose a weaker step"),
                          ("50", "weaker than advised. Choose a stronger step")):  # fmt: skip
        ran(app.text_input(key="set-counted-s").set_value(seconds).run())
        words = " ".join(one.value for one in app.markdown).replace(NO_BREAK, " ")
        assert f"{seconds} s is " in words and told in words and scenario_of(app) == before
