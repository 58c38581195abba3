"""Every sentence that a reader can meet: declared, used, and said with every kind of figure in both units."""

import ast
import re
from functools import cache
from pathlib import Path

from model.checks.published import CHECKS
from model.claims.collection import claims
from model.claims.evidence import measurements
from model.describe.car import CAR_FIELDS
from model.describe.scenario import CONDITION_FIELDS, DRIVER_FIELDS, LEG_FIELDS
from model.words.quantities import Display
from tests.model.describe.every_field import every_field
from tests.model.words.declared import declared, options_of, parts, referred_to, said_in_every_way, texts_of

ROOT = Path(__file__).resolve().parents[3]
MESSAGES = declared()
METRIC, US = Display(), Display(us=True)
PLURALS = {"zero", "one", "two", "few", "many", "other"}
KEYS = {key for table in (CAR_FIELDS, CONDITION_FIELDS, DRIVER_FIELDS, LEG_FIELDS) for key in table if "_" in key}
METRIC_ONLY = re.compile(r"\d ?(?:km|km/h|m|kg|°C|l|Wh/km|kWh/100 km|l/100 km)(?![\w/²])")
TYPEWRITER = re.compile(r"['\"]|\.\.\.")
WRONG = re.compile(
    r"  | [,.;:](?!\w)|\bof (?:[,.;:]|of\b|to\b|and\b)|\bto of\b|\bof$|(?<!\.)\.\.(?=\s|$)|[{}]|\?{3}|\bNone\b|\(\)"
)


def test_variables_are_declared_and_used():
    wrong = {name: set(message.kinds) ^ message.used for name, message in MESSAGES.items()}
    assert not {name: variables for name, variables in wrong.items() if variables}


def test_choices_are_declared_as_they_are_made():
    wrong = []
    for message in MESSAGES.values():
        for name, options in message.options.items():
            kind = message.kinds[name]
            if kind == "count":
                right = options <= PLURALS | {str(number) for number in range(100)}
            else:
                right = options == set(("yes", "no") if kind == "yes or no" else options_of(kind))
            wrong += [] if right else [(message.name, name, kind, options)]
    assert not wrong


def test_every_message_reads_well_with_every_kind_of_figure():
    wrong = []
    for message in MESSAGES.values():
        for values in said_in_every_way(message):
            told = [display.say(message.name, **values) for display in (METRIC, US)]
            # a length or speed written into the sentence itself would stay metric
            wrong += [(message.name, told[1])] if METRIC_ONLY.search(told[1]) else []
            wrong += [(message.name, text) for text in told if text.strip() != text or not text or WRONG.search(text)]
            # whoever reads the command line's help knows the keys of files
            wrong += [(message.name, text) for text in told
                      if any(key in text for key in KEYS) and not message.name.startswith("cli-")]  # fmt: skip
    assert not wrong


def test_marks_are_those_of_print():
    """Apostrophes, quotation marks and dots as in print; a code between backticks is typed as it stands."""
    found = [(name, text) for name in parts() for text in texts_of(name)
             if TYPEWRITER.search(re.sub(r"`[^`]*`", "", text))]  # fmt: skip
    assert not found


@cache
def trees():
    files = [*(ROOT / "model").rglob("*.py"), *(ROOT / "pages").rglob("*.py")]
    return {path: ast.parse(path.read_text(encoding="utf-8")) for path in files}


def literals():
    return {
        node.value
        for tree in trees().values()
        for node in ast.walk(tree)
        if isinstance(node, ast.Constant) and isinstance(node.value, str)
    }


def calls():
    """Each call that says a message, or refuses for a reason: the place, the id and the variables given."""
    for path, tree in trees().items():
        for node in ast.walk(tree):
            if not (isinstance(node, ast.Call) and node.args and isinstance(node.args[0], ast.Constant)):
                continue
            called = node.func
            is_said = isinstance(called, ast.Attribute) and called.attr == "say"
            if is_said or (isinstance(called, ast.Name) and called.id == "InputError"):
                keys = {key.arg for key in node.keywords} - {"then"}
                yield f"{path.relative_to(ROOT)}:{node.lineno}", node.args[0].value, None if None in keys else keys


def said_of_fields():
    """The messages with a field's name and help, which are named by its key."""
    for field in every_field():
        yield from (field.message, f"{field.message}.help")


def said_of_checks():
    """The messages about a check, which are named by its id."""
    topics = {f"check-{check.__name__.replace('_', '-')}" for check in CHECKS}
    return {name for name in MESSAGES if name.partition(".")[0] in topics}


def said_of_claims():
    """The messages about a claim of the list, which are named by its id."""
    topics = {claim.message for claim in claims().values()}
    return {name for name in MESSAGES if name.partition(".")[0] in topics}


def said_of_measurements():
    """What was measured, and its number in words, which are named by its id."""
    topics = {measurement.message for measurement in measurements()}
    return {name for name in MESSAGES if name.partition(".")[0] in topics}


def test_every_field_is_named_and_explained():
    assert [field.message for field in every_field() if field.message not in MESSAGES] == []
    unexplained = {topic for topic, _, key in (field.message.partition("-") for field in every_field())
                   if f"{topic}-{key}.help" not in MESSAGES}  # fmt: skip
    # entries without a help, figures of recordings, and options of the command line, which explains its own
    assert unexplained == {"limits", "panels", "range", "recorded", "grip", "stop", "band"}


def test_every_message_is_named_somewhere():
    by_id = said_of_checks() | said_of_claims() | said_of_measurements()
    unused = set(MESSAGES) - literals() - referred_to() - set(said_of_fields()) - by_id
    assert not unused


def test_what_is_said_is_there_with_its_variables():
    wrong = [
        f"{place}: {name}"
        for place, name, given in calls()
        if name not in MESSAGES or (given is not None and given != set(MESSAGES[name].kinds))
    ]
    assert not wrong


def test_no_message_is_chosen_by_putting_its_name_together():
    put_together = [
        f"{path.relative_to(ROOT)}:{node.lineno}"
        for path, tree in trees().items()
        for node in ast.walk(tree)
        if isinstance(node, ast.Call)
        and isinstance(node.func, ast.Attribute)
        and node.func.attr == "say"
        and node.args
        and isinstance(node.args[0], ast.JoinedStr | ast.BinOp)
    ]
    assert not put_together
