"""How long what is taken away takes to make, by processor time, so that other work on the machine does not count."""

import time

from model.describe.scenario_io import starting_drives
from model.out.answers import Asked, as_text, drive_answer
from model.out.comparison import others, side_of
from model.sampling.uncertainty import RUNS
from pages.parts.charts.export import warm_up
from pages.parts.report import report_html
from tests.pages.made_reports import taken

MOTORWAY = starting_drives()["motorway"][2]


def least_seconds(benchmark, work):
    """What was made, and the least processor time that it took [s]."""
    seconds = []

    def timed():
        begin = time.process_time()
        made = work()
        seconds.append(time.process_time() - begin)
        return made

    return benchmark.pedantic(timed, rounds=3, warmup_rounds=1), min(seconds)


def test_the_page_from_a_drive_that_is_known(benchmark):
    gathered = taken(MOTORWAY)
    warm_up()
    page, seconds = least_seconds(benchmark, lambda: report_html(gathered))
    assert "</html>" in page and seconds < 1


def test_the_page_with_its_drive_and_its_advice(benchmark):
    """Everything from the description on, with few sampled cars: their time is in the answer's."""
    page, seconds = least_seconds(benchmark, lambda: report_html(taken(MOTORWAY)))
    assert "</html>" in page and seconds < 2


def test_the_answer_with_band_year_and_advice(benchmark):
    asked = Asked(MOTORWAY, band_runs=RUNS, year_runs=RUNS, advice=True)
    answer, seconds = least_seconds(benchmark, lambda: as_text(drive_answer(asked)))
    assert answer and seconds < 2


def test_one_more_drive_to_compare_with(benchmark):
    winter = others(MOTORWAY, "season")["winter"]
    side, seconds = least_seconds(benchmark, lambda: side_of(winter, MOTORWAY.car_class, runs=RUNS))
    assert side.friction_kwh.shape == (RUNS,) and seconds < 1
