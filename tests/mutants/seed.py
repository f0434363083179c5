#!/usr/bin/python3
# SPDX-FileCopyrightText: The project authors
# SPDX-License-Identifier: GPL-3.0-only
"""Copies the sources of a room with small faults in them, each behind a switch.

seed.py CORE OUT      reads CORE/measures, writes OUT/measures and OUT/faults.tsv

A copy is the file itself with text put in at places that clang names, so that one build holds every fault. `fault.h` has
what is put in; the environment variable MORROW_FAULT, the number of a line of faults.tsv, chooses one. Which faults there
are depends on the sources alone.
"""

import re
import sys
from pathlib import Path

from clang import cindex
from clang.cindex import AccessSpecifier, CursorKind as Kind, TokenKind

COMPARED = {'<': 'less', '<=': 'atMost', '>': 'greater', '>=': 'atLeast', '==': 'equal', '!=': 'other'}
REACHED = {'<': '<=', '<=': '<', '>': '>=', '>=': '>', '==': None, '!=': None}
REVERSED = {'<': '>=', '<=': '>', '>': '<=', '>=': '<', '==': '!=', '!=': '=='}
COUNTED = {'+': ('plus', '-'), '-': ('minus', '+'), '*': ('times', '/'), '/': ('over', '*')}
JOINED = {'&&': ('both', '||'), '||': ('either', '&&')}
CHANGED = {'+=': '-=', '-=': '+='}
RENAMED = {'std::min': 'max', 'std::max': 'min', 'std::any_of': 'all_of', 'std::all_of': 'any_of', 'std::none_of': 'any_of'}
SWAPPED = {'isAtMost', 'ratio', 'wilson'}
FUNCTIONS = {Kind.FUNCTION_DECL, Kind.CXX_METHOD, Kind.CONSTRUCTOR, Kind.FUNCTION_TEMPLATE, Kind.LAMBDA_EXPR}
LITERAL = re.compile(r'-?\d+(\.\d+)?(e\d+)?')


def has_empty(kind):
    """Whether `return {}` makes a value of a type: it has a default constructor, or is made of parts that all have one."""
    kind = kind.get_canonical()
    record = kind.get_declaration()
    if record.kind not in (Kind.CLASS_DECL, Kind.STRUCT_DECL):
        return True
    if record.spelling in ('pair', 'tuple', 'array'):
        parts = [kind.get_template_argument_type(place) for place in range(kind.get_num_template_arguments())]
        return all(has_empty(part) for part in parts)
    made = [child for child in record.get_children() if child.kind == Kind.CONSTRUCTOR
            and not child.is_copy_constructor() and not child.is_move_constructor()]
    if made:
        return any(child.is_default_constructor() and child.access_specifier == AccessSpecifier.PUBLIC for child in made)
    return all(has_empty(field.type) for field in kind.get_fields()
               if not any(child.kind.is_expression() for child in field.get_children()))


class Seeder:
    """The faults of one file."""

    def __init__(self, path, unit, faults):
        self.path = path
        self.text = path.read_text()
        self.unit = unit
        self.faults = faults
        self.before = {}  # offset: [(rank, text)]
        self.after = {}
        self.instead = {}  # offset of a token: (length, text)
        self.spans = []  # (start, end, kind, parents) of every expression and statement
        self.places = {}

    def seed(self):
        self.collect(self.unit.cursor, ())
        tokens = [token for token in self.unit.get_tokens(extent=self.unit.cursor.extent)
                  if token.kind != TokenKind.COMMENT and str(token.location.file) == str(self.path)]
        for place, token in enumerate(tokens):
            self.seed_token(tokens, place, token)
        for start, end, kind, parents in self.spans:
            self.seed_statement(start, end, kind, parents)
        return self.written()

    def collect(self, cursor, parents):
        for child in cursor.get_children():
            if child.location.file is None or child.location.file.name != str(self.path):
                if child.kind.is_declaration() and child.kind != Kind.NAMESPACE:
                    continue
            start, end = child.extent.start.offset, child.extent.end.offset
            if child.extent.start.file and child.extent.start.file.name == str(self.path):
                self.spans.append((start, end, child.kind, parents + ((child.kind, start, end, child),)))
            self.collect(child, parents + ((child.kind, start, end, child),))

    # What a fault is put into

    def expression_with(self, token):
        """The smallest expression of which \\a token is the operator: (start, end, parents)."""
        offset, end_of_token = token.extent.start.offset, token.extent.end.offset
        found = [span for span in self.spans if span[0] < offset and span[1] > end_of_token and span[2].is_expression()]
        return min(found, key=lambda span: span[1] - span[0], default=None)

    def expression_from(self, offset):
        found = [span for span in self.spans if span[0] == offset and span[2].is_expression()]
        return min(found, key=lambda span: span[1] - span[0], default=None)

    def function_around(self, offset):
        """The innermost function or lambda whose body holds \\a offset."""
        found = [span for span in self.spans if span[0] <= offset < span[1] and span[2] in FUNCTIONS]
        return min(found, key=lambda span: span[1] - span[0], default=None)

    def is_in_body(self, offset):
        return any(span[0] < offset < span[1] and span[2] == Kind.COMPOUND_STMT for span in self.spans)

    # What is put in

    def fault(self, offset, what):
        line = self.text.count('\n', 0, offset) + 1
        text = self.text.splitlines()[line - 1].strip()
        self.faults.append((f'{self.path.parent.name}/{self.path.name}', line, what, text))
        return len(self.faults)

    def wrap(self, start, end, opening, closing):
        self.before.setdefault(start, []).append((end, opening))
        self.after.setdefault(end, []).append((start, closing))

    def seed_token(self, tokens, place, token):
        text, offset = token.spelling, token.extent.start.offset
        spaced = self.text[offset - 1] == ' ' and self.text[token.extent.end.offset:][:1] in (' ', '\n')
        if text in COMPARED | COUNTED | JOINED and spaced and token.kind == TokenKind.PUNCTUATION:
            self.seed_operator(token)
        elif text in CHANGED and self.is_in_body(offset):
            number = self.fault(offset, f'{text} is {CHANGED[text]}')
            whole = self.expression_with(token)
            self.wrap(whole[0], whole[1], f'morrow_fault::{"add" if text == "+=" else "take"}<{number}>(', ')')
            self.instead[offset] = (2, ',')
        elif text == '!' and self.text[offset + 1] != '=':
            whole = self.expression_from(offset)
            if whole:
                number = self.fault(offset, '! is left out')
                self.wrap(whole[0], whole[1], f'morrow_fault::negated({number}, bool(', '))')
                self.instead[offset] = (1, '')
        elif token.kind == TokenKind.LITERAL and LITERAL.fullmatch(text):
            self.seed_number(token)
        elif text == '?':
            self.seed_choice(token)
        elif token.kind == TokenKind.IDENTIFIER:
            self.seed_name(tokens, place, token)

    def seed_operator(self, token):
        text, offset = token.spelling, token.extent.start.offset
        whole = self.expression_with(token)
        if whole is None or not (self.is_in_body(offset) or self.path.suffix == '.cpp'):
            return
        start, end = whole[0], whole[1]
        if text in JOINED:
            name, other = JOINED[text]
            number = self.fault(offset, f'{text} is {other}')
            self.wrap(start, end, f'morrow_fault::{name}({number}, [&] {{ return bool(', '); })')
            self.instead[offset] = (2, '); }, [&] { return bool(')
        elif text in COUNTED:
            name, other = COUNTED[text]
            number = self.fault(offset, f'{text} is {other}')
            self.wrap(start, end, f'morrow_fault::{name}<{number}>(', ')')
            self.instead[offset] = (1, ',')
        else:
            first = self.fault(offset, f'{text} is {REVERSED[text]}')
            if REACHED[text]:
                self.fault(offset, f'{text} is {REACHED[text]}')
            self.wrap(start, end, f'morrow_fault::{COMPARED[text]}<{first}>(', ')')
            self.instead[offset] = (len(text), ',')

    def seed_number(self, token):
        start, end = token.extent.start.offset, token.extent.end.offset
        line = self.text[self.text.rfind('\n', 0, start) + 1:self.text.find('\n', start)]
        if 'std::array' in line or 'std::get<' in line or line.startswith('#'):
            return
        if self.path.suffix == '.h' and 'inline constexpr' not in line and not self.is_in_body(start):
            return
        more = self.fault(start, f'{token.spelling} is one more')
        self.fault(start, f'{token.spelling} is one less')
        self.wrap(start, end, f'morrow_fault::number({more}, ', ')')

    def seed_choice(self, token):
        whole = self.expression_with(token)
        if whole is None:
            return
        number = self.fault(token.extent.start.offset, 'the other of ? :')
        self.before.setdefault(whole[0], []).append((whole[1] - 0.5, f'morrow_fault::turned({number}, bool('))
        self.instead[token.extent.start.offset] = (1, ')) ?')

    def seed_name(self, tokens, place, token):
        name = token.spelling
        before = tokens[place - 1].spelling if place else ''
        following = tokens[place + 1].spelling if place + 1 < len(tokens) else ''
        offset = token.extent.start.offset
        if before == '::' and tokens[place - 2].spelling == 'std' and f'std::{name}' in RENAMED:
            number = self.fault(offset, f'{name} is {RENAMED["std::" + name]}')
            start = tokens[place - 2].extent.start.offset
            if following == '<':
                self.instead[start] = (len(f'std::{name}<'), f'morrow_fault::{name}<{number}, ')
            else:
                self.instead[start] = (len(f'std::{name}'), f'morrow_fault::{name}<{number}>')
        elif name in SWAPPED and following == '(' and before not in ('.', '::', 'double', 'bool', '>') and self.is_in_body(offset):
            number = self.fault(offset, f'{name} has its arguments swapped')
            self.instead[offset] = (len(name), f'morrow_fault::swapped({number}, [](auto a, auto b) {{ return {name}(a, b); }})')
        elif name in ('front', 'back') and before == '.' and following == '(':
            dot = tokens[place - 1].extent.start.offset
            start = min(span[0] for span in self.spans if span[1] == dot and span[2].is_expression())
            number = self.fault(offset, f'{name} is {"back" if name == "front" else "front"}')
            self.before.setdefault(start, []).append((offset, f'morrow_fault::{name}<{number}>('))
            self.instead[offset - 1] = (len(name) + 3, ')')

    def seed_statement(self, start, end, kind, parents):
        if len(parents) < 2:
            return
        above, cursor = parents[-2], parents[-1][3]
        children = [child.extent.start.offset for child in above[3].get_children()]
        is_body = (above[0] in (Kind.FOR_STMT, Kind.CXX_FOR_RANGE_STMT, Kind.WHILE_STMT) and start == children[-1]
                   or above[0] == Kind.IF_STMT and start in children[-2:] and self.text[:start].rstrip()[-1:] in (')', 'e'))
        if above[0] != Kind.COMPOUND_STMT and not is_body:
            return
        semicolon = end
        if self.text[semicolon:semicolon + 1] != ';':
            return
        if kind in (Kind.CONTINUE_STMT, Kind.BREAK_STMT) or kind.is_expression():
            number = self.fault(start, 'is skipped')
            self.wrap(start, semicolon + 1, f'{{ if (!morrow_fault::chosen({number})) ', ' }')
        elif kind == Kind.RETURN_STMT:
            around = self.function_around(start)
            self.seed_return(start, semicolon, cursor, around)

    def seed_return(self, start, semicolon, cursor, around):
        value = self.text[start + len('return'):semicolon].strip()
        if around is None or around[2] == Kind.LAMBDA_EXPR or not value or value in ('std::nullopt', '{}', 'false', '0'):
            # A result that is empty already: what is seeded is that it is not given back.
            if around is not None and around[2] != Kind.LAMBDA_EXPR and value and self.text[:start].rstrip().endswith(')'):
                number = self.fault(start, 'is skipped')
                self.wrap(start, semicolon + 1, f'{{ if (!morrow_fault::chosen({number})) ', ' }')
            return
        kind = around[3][-1][3].result_type
        if '&' in kind.spelling or kind.spelling in ('auto', 'void', '') or not has_empty(kind):
            return
        number = self.fault(start, 'gives back nothing')
        self.wrap(start, semicolon + 1, f'{{ if (morrow_fault::chosen({number})) return {{}}; ', ' }')

    def written(self):
        out, place = [], 0
        offsets = sorted(set(self.before) | set(self.after) | set(self.instead))
        for offset in offsets:
            if offset > place:
                out.append(self.text[place:offset])
                place = offset
            # What ends here closes first, the one that began last before the others.
            out += [text for _, text in sorted(self.after.get(offset, []), key=lambda one: -one[0])]
            out += [text for _, text in sorted(self.before.get(offset, []), key=lambda one: -one[0])]
            if offset in self.instead and offset >= place:
                length, text = self.instead[offset]
                out.append(text)
                place = offset + length
        out.append(self.text[place:])
        text = ''.join(out)
        # What holds a fault is known when the program runs, not before.
        text = re.sub(r'\b(?:inline )?constexpr (?=[\w:<> ]+ \w+\()', 'inline ', text)
        text = re.sub(r'\bconstexpr\b', 'const', text)
        return text.replace('#pragma once', '#pragma once\n#include "fault.h"') if self.path.suffix == '.h' else text


def main():
    core, out = Path(sys.argv[1]).resolve(), Path(sys.argv[2])
    (out / 'measures').mkdir(parents=True, exist_ok=True)
    index, faults = cindex.Index.create(), []
    for path in sorted((core / 'measures').glob('*.*')):
        if path.suffix not in ('.cpp', '.h'):
            continue
        unit = index.parse(str(path), args=['-x', 'c++', '-std=c++20', f'-I{core}'])
        errors = [str(problem) for problem in unit.diagnostics if problem.severity >= cindex.Diagnostic.Error]
        if errors:
            sys.exit('\n'.join(errors[:5]))
        (out / 'measures' / path.name).write_text(Seeder(path, unit, faults).seed())
    (out / 'faults.tsv').write_text(''.join(f'{number}\t{file}\t{line}\t{what}\t{text}\n'
                                            for number, (file, line, what, text) in enumerate(faults, 1)))


if __name__ == '__main__':
    main()
