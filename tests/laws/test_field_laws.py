"""What holds for every value of every field: files and links give back what was put in, or say what they changed."""

import json

from hypothesis import given
from hypothesis import strategies as st

from model.describe.fields import Field, InputError
from model.describe.scenario import LEG_FIELDS, LONGEST_H, SETTINGS, Leg, Scenario
from model.describe.scenario_io import from_link, scenario_from_json, scenario_to_json, to_link
from tests.refused import told

ROAD_LOAD_AND_FADE = {"f0_n", "f1_n_per_mps", "f2_n_per_mps2", "fade_start_kmh", "fade_end_kmh"}
"""Figures that must fit together; the rest can be chosen each on its own."""


def values(field: Field) -> st.SearchStrategy:
    """Any value that the field takes."""
    if field.kind == "choice":
        return st.sampled_from(field.choices)
    if field.kind == "yes_no":
        return st.booleans()
    if field.kind == "text":
        return st.text(max_size=80).map(field.parse)
    if field.kind == "count":
        return st.integers(int(field.minimum), int(field.maximum))
    return st.floats(field.minimum, field.maximum).map(lambda number: number + 0.0)


FREE = {key: field for key, field in SETTINGS.items() if key not in ROAD_LOAD_AND_FADE}


@st.composite
def scenarios(draw):
    """A scenario with some settings changed and two legs; hills are left out, so that every leg can be driven."""
    scenario = Scenario(return_trip=draw(st.booleans()))
    for key in draw(st.lists(st.sampled_from(sorted(FREE)), max_size=8, unique=True)):
        scenario = scenario.with_setting(key, draw(values(FREE[key])))
    legs = []
    for _ in range(2):
        figures = {key: draw(values(field)) for key, field in LEG_FIELDS.items()}
        # neither of the two takes more than half of the longest time
        speed_kmh = max(figures["speed_kmh"], 2.001 * figures["distance_km"] / LONGEST_H)
        legs.append(Leg(**figures | {"climb_m": 0.0, "descent_m": 0.0, "slow_downs": 0, "speed_kmh": speed_kmh}))
    return Scenario(**{**vars(scenario), "legs": tuple(legs)})


@given(scenarios())
def test_files_and_links_give_back_what_was_put_in(scenario):
    assert scenario_from_json(json.loads(json.dumps(scenario_to_json(scenario)))) == scenario
    assert from_link(to_link(scenario), Scenario()) == (scenario, [])


@given(st.sampled_from(sorted(SETTINGS | LEG_FIELDS)), st.text(max_size=30))
def test_any_text_in_a_link_is_taken_clamped_or_left_out(key, text):
    field = (SETTINGS | LEG_FIELDS)[key]
    value, notice = field.clamp(text)
    if value is not None:
        assert field.parse(value) == value
    assert bool(notice) or value == field.parse(text)


@given(
    st.dictionaries(
        st.sampled_from([*SETTINGS, "car", "legs", "return_trip", "page", "x"]), st.text(max_size=40), max_size=6
    )
)
def test_any_link_gives_a_scenario_that_can_be_written_again(link):
    scenario, notices = from_link(link, Scenario())
    assert all(isinstance(notice, InputError) and str(notice) for notice in notices)
    assert from_link(to_link(scenario), Scenario()) == (scenario, [])


@given(
    st.recursive(
        st.none() | st.booleans() | st.integers() | st.floats() | st.text(max_size=10),
        lambda inner: (
            st.lists(inner, max_size=3)
            | st.dictionaries(
                st.sampled_from(
                    ["schema", "car", "legs", "conditions", "driver", "year", "like", "distance_km", "mass_kg"]
                ),
                inner,
                max_size=4,
            )
        ),
        max_leaves=8,
    )
)
def test_any_file_gives_a_scenario_or_one_sentence(data):
    try:
        scenario = scenario_from_json(data)
    except InputError as refused:
        assert told(refused).strip()
    else:
        assert isinstance(scenario, Scenario)
