"""Every field that is declared anywhere in the model."""

import importlib
import pkgutil
from functools import cache

import model
from model.describe.fields import Field


@cache
def every_field() -> tuple[Field, ...]:
    """Fields alone and in tables, in the order of the modules."""
    found = {}
    for module in pkgutil.walk_packages(model.__path__, "model."):
        if module.name.endswith("__main__"):
            continue
        for value in vars(importlib.import_module(module.name)).values():
            for field in [value] if isinstance(value, Field) else value.values() if isinstance(value, dict) else ():
                if isinstance(field, Field):
                    found[field.message] = field
    return tuple(found.values())
