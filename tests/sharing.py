"""Which tests run in one process: those that share something costly, which each process would make for itself; and which come first.

The marks of pytest-xdist for this (`xdist_group`) are lost with pytest 9.2, without a word, since they were put into a private name.
"""

import re
from functools import cache

TOGETHER = {
    r"browser/.*": "browser",  # the site, and the browser
    r"publish/test_(same_joints|wiring_page|wiring_sheet|duties_shown|same_verdicts|visits_agree)\.py": "vehicles",  # their facts, pages and sheets
    r"publish/test_(building|conflicts_shown|ends_of_tethers|open_door|pdf|plug_facts|published_schema)\.py": "",
    r"derive/(fit/test_fit_vectors|test_replay|wiring/test_differences|wiring/test_join_properties)\.py": "",
    r"publish/test_editions\.py": "",  # a site in two languages
    r"words/test_(catalogue|languages_complete)\.py": "words",  # all texts, as translators get them
    r"work/test_cluster\.py": "",  # the cluster
    r"test_packaging\.py": "",  # the wheel, and its environment
}
"""Files below `tests` as patterns, with the name of what they share; without one, each file by itself."""


SLOW = (
    "bench/test_herd.py::test_a_few_mistakes_are_counted",
    "bench/test_herd.py::test_the_checker_passes_a_herd_of_two_of_each",
    "check/test_damage.py::test_damage_gives_problems_and_no_exception",
    "check/test_taken_again.py::test_what_is_taken_is_already_so",
    "commands/test_copy.py::test_what_it_writes_passes_and_knows_nothing_that_nobody_looked_up",
    "commands/test_fit_everywhere.py::test_it_says_what_each_vehicle_says",
    "commands/test_import.py::test_two_hundred_rows_are_all_accounted_for",
    "commands/test_photo.py::test_one_that_hardly_packs_is_made_small_enough",
    "derive/test_choices.py::test_every_visit_is_shown_as_planned",
    "derive/test_likeness.py::test_every_car_of_a_random_record_has_the_steps_it_has_alone",
    "derive/test_nodes.py::test_a_part_nobody_needs_changes_no_id_and_no_order",
    "node/test_fit_amplifier_script.py::test_an_amplifier_gets_the_verdict_of_the_program",
    "node/test_fit_place_script.py::test_so_it_is_with_records_that_say_something_else",
    "node/test_fit_place_script.py::test_the_whole_stock_is_ranked_as_the_program_ranks_it",
    "node/test_fit_script.py::test_random_questions",
    "node/test_gear_places_script.py::test_pages_and_terminal_say_the_same_of_all_gear",
    "node/test_language_server.py::test_no_false_alarm_in_anything_shipped",
    "publish/test_gear_changed.py::test_a_changed_gear_record_costs_the_shelf_and_nothing_else",
    "publish/test_one_order.py::test_data_pages_and_shelf_are_the_same_in_every_process",
    "publish/test_other_engine.py::test_the_fork_makes_the_same_site",
    "publish/test_site_stands.py::test_a_full_disk_at_any_point_leaves_a_whole_site",
    "publish/test_site_stands.py::test_a_kill_at_any_point_leaves_a_whole_site",
    "publish/test_typed_is_shown.py::test_texts_stand_on_page_and_sheet_and_sizes_on_a_page_or_change_it",
    "record/test_layout.py::test_odd_texts_are_laid_out_once_and_for_all",
    "record/test_migrations.py::test_any_record_in_any_layout_says_the_same_afterwards",
    "test_docs_shown.py::test_the_answers_shown_are_the_programs",
    "words/test_complaints_marked.py::test_every_complaint_is_in_the_readers_language",
)
"""Tests that take four seconds and more of a processor: begun last, one of them would keep a single process at work at the end."""


@cache
def group(test: str) -> str:
    """The group of a test by its id (`tests/<file>::<name>`): groups are shared out as a whole. One function with all its cases is one."""
    file = test.partition("::")[0]
    for pattern, name in TOGETHER.items():
        if re.fullmatch(f"tests/{pattern}", file):
            return name or file
    return test.partition("[")[0]


def rank(test: str) -> int:
    """Where in the line a test stands: the slow ones at its head."""
    return 0 if test.partition("[")[0].removeprefix("tests/") in SLOW else 1
