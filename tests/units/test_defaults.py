"""What a model has by default is what it would take from outside."""

import pkgutil
from collections.abc import Iterator
from importlib import import_module
from typing import Annotated, Any

import pytest
from pydantic import TypeAdapter

import kitlog
from kitlog.units.model import Frozen

FLOORS = ("units", "sky", "kit", "outing", "budget", "packing", "files", "store", "workbench")


def models(of: type[Frozen] = Frozen) -> Iterator[type[Frozen]]:
    for model in of.__subclasses__():
        yield model
        yield from models(model)


def defaults() -> Iterator[Any]:
    for module in pkgutil.walk_packages(kitlog.__path__, "kitlog."):
        if module.name.split(".")[1] in FLOORS and "migrations.r" not in module.name:
            import_module(module.name)
    for model in models():
        for name, field in model.model_fields.items():
            if not field.is_required():
                yield pytest.param(model, name, id=f"{model.__name__}.{name}")


@pytest.mark.parametrize(("model", "name"), list(defaults()))
def test_a_default_is_a_value_that_would_be_taken(model: type[Frozen], name: str) -> None:
    field = model.model_fields[name]
    default = field.get_default(call_default_factory=True)
    form = Annotated[field.annotation, *field.metadata] if field.metadata else field.annotation
    taken: object = TypeAdapter(form).validate_python(default)
    assert taken == default
    assert type(taken) is type(default)
