"""Work for other processes, which find it by its name: some of it ends them."""

import os
import signal
from pathlib import Path


def end_here():
    """As if somebody killed this process."""
    os.kill(os.getpid(), signal.SIGKILL)


def row_after_a_death(file, marks, **how):
    """A row of a study; the first time that a file named “b” comes, its worker is killed."""
    mark = Path(marks) / file.name
    if file.stem == "b" and not mark.exists():
        mark.touch()
        end_here()
    # not for those who only double numbers: each process that ends is followed by one that imports anew
    from model.out.study import study_row

    return study_row(file, **how)


def doubled_but_three(number):
    """Twice a number; three ends whoever takes it."""
    if number == 3:
        end_here()
    return 2 * number
