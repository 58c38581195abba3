"""Every public function of the model that gives numbers says in brackets which unit they have: [m/s], or [1]."""

import importlib
import inspect
import pkgutil

import pytest

import model

NUMBERS = {"float", "float | None", "Array", "tuple[float, float]", "tuple[Array, Array]"}
IN_THE_UNIT_OF_WHAT_IS_GIVEN = {
    "at_steps", "bounds", "by_block", "drive", "local_cubic", "mean_between", "noise_of", "run_each",
    "weigh_neighbours",
}  # fmt: skip
"""These pass values through: a recorded column, what a caller measures, a claim's own number."""


def numeric(owner, prefix):
    """Functions, methods and properties defined in a module or class that return numbers, by name."""
    for name, item in vars(owner).items():
        # properties and cached ones hold the function they call
        item = getattr(item, "fget", None) or getattr(item, "func", item)
        # and so do compiled functions
        item = getattr(item, "py_func", item)
        if name.startswith("_") or getattr(item, "__module__", "") != prefix.split(":")[0]:
            continue
        if inspect.isclass(item):
            yield from numeric(item, f"{prefix}:{name}")
        elif inspect.isfunction(item) and item.__annotations__.get("return") in NUMBERS:
            yield f"{prefix}:{name}", item


def public():
    for module in pkgutil.walk_packages(model.__path__, "model."):
        if not module.name.endswith("__main__"):
            yield from numeric(importlib.import_module(module.name), module.name)


FOUND = dict(public())


def test_the_search_finds_functions_methods_and_properties():
    named = {"model.physics.cells:open_circuit_v", "model.kernel.run:Run:wheel_j", "model.describe.trace:Trace:step_s"}
    assert named <= set(FOUND)


@pytest.mark.parametrize("name", FOUND)
def test_a_function_that_gives_numbers_names_their_unit(name):
    if name.split(":")[-1] not in IN_THE_UNIT_OF_WHAT_IS_GIVEN:
        assert "[" in inspect.getdoc(FOUND[name])
