# SPDX-FileCopyrightText: The project authors
# SPDX-License-Identifier: GPL-3.0-only
"""Section 3, last part: volume, its unit and tension of one set, prescribed or recorded."""


def prescribed_load(stage, body_mass):
    """L of the dose; None if it needs a body mass that nobody gave."""
    if stage.body_share > 0 and body_mass is None:
        return None
    return stage.load + (stage.body_share * body_mass if stage.body_share > 0 else 0)


def unit(stage, body_mass):
    load = prescribed_load(stage, body_mass)
    if load is None:
        return None
    what = 's' if stage.held else 'reps'
    return what if load == 0 else f'kg.{what}'


def plain(value):
    """An exact number as it is printed."""
    return None if value is None else float(value)


def common_unit(units):
    """(known, unit): unknown where one is None or two differ; of no units at all: known, None."""
    different = set(units)
    if len(different) > 1 or None in different:
        return False, None
    return True, next(iter(different), None)


def recorded_load(stage, one, body_mass):
    """L of a recorded set; an empty cell takes the prescribed load."""
    if stage.body_share > 0 and body_mass is None:
        return None
    load = one.exact('load_kg')
    return (stage.load if load is None else load) + (stage.body_share * body_mass if stage.body_share > 0 else 0)


def hold(stage, one):
    recorded = one.number('hold_s')
    return stage.hold if recorded is None else int(recorded)


def prescribed_volume(stage, body_mass):
    load = prescribed_load(stage, body_mass)
    return stage.reps * (stage.hold if stage.held else 1) * (load or 1)


def recorded_volume(stage, one, body_mass):
    load = 1 if prescribed_load(stage, body_mass) == 0 else recorded_load(stage, one, body_mass)
    return int(one.number('reps')) * (hold(stage, one) if stage.held else 1) * load


def tension(stage, one):
    if stage.held:
        return one.number('reps') * hold(stage, one)
    if all(part is None for part in stage.tempo):
        return None
    return one.number('reps') * sum(part or 0 for part in stage.tempo)
