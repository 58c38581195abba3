"""Which tests a mutant meets first, and what is no place for one."""

from tests.mutation.mutants import ROOT, ByNearness, annotated, is_free_of_compiled_code


def test_the_tests_of_a_module_come_first_and_each_once():
    own, near, wide = ByNearness().stages("model/traces/recorded_cells.py")
    assert own == ["tests/model/traces/test_recorded_cells.py"]
    assert "tests/model/traces/test_logs.py" in [*near, *wide]
    assert len({*own, *near, *wide}) == len(own) + len(near) + len(wide)


def test_annotations_are_no_places():
    text = 'WIDTH: "int | None" = 3\n\n\ndef wide(by: int | None = 2) -> str | int:\n    return WIDTH | by\n'
    assert annotated(text) == [((1, 7), (1, 19)), ((4, 13), (4, 23)), ((4, 32), (4, 41))]


def test_what_is_compiled_is_run_as_python():
    assert not is_free_of_compiled_code("model/physics/wheels.py")
    texts = {path: path.read_text(encoding="utf-8") for path in (ROOT / "model").rglob("*.py")}
    asking = [path for path, text in texts.items() if "physics.jit import" in text]
    assert len(asking) > 10
    assert not [path for path in asking if is_free_of_compiled_code(path.relative_to(ROOT).as_posix())]
    assert is_free_of_compiled_code("model/words/quantities.py")
