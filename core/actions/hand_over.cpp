// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "actions/hand_over.h"

#include "actions/record.h"

#include <algorithm>
#include <utility>

namespace morrow {

std::optional<HandOver> previewHandOver(const OpenDiary &diary, std::string_view name)
{
    FhirBundle bundle = writeFhir(diary.entries(), diary.person(), FhirFile::Summary, name);
    auto read = readFhir(bundle.json);
    if (!read)
        return std::nullopt;
    HandOver result{
        .bytes = std::move(bundle.json),
        .sha256 = {},
        .person = read->person,
        .name = read->name,
        .entries = {},
        .counts = {},
        .from = std::nullopt,
        .to = std::nullopt,
        .notesLeftOut = bundle.notesLeftOut,
        .handedLeftOut = bundle.handedLeftOut,
    };
    result.sha256 = toHex(morrow::sha256(result.bytes));
    for (const Entry &entry : read->entries) {
        ++result.counts[entry.kind];
        result.from = std::min(result.from.value_or(entry.day), entry.day);
        result.to = std::max(result.to.value_or(entry.day), entry.day);
    }
    result.entries = std::move(read->entries);
    return result;
}

Result<Entry, HandOverError> handOver(
    OpenDiary &diary, const HandOver &file, const std::filesystem::path &path, const std::string &addressee, const Moment &now)
{
    if (auto written = writeFile(path, file.bytes); !written)
        return failure(HandOverError(written.error()));
    Draft handed{.kind = Kind::Handed, .author = Author::Patient};
    handed.body.set(Field::File, file.sha256);
    if (file.from && file.to) {
        handed.body.set(Field::From, file.from->toString());
        handed.body.set(Field::To, file.to->toString());
    }
    if (!addressee.empty())
        handed.body.set(Field::Addressee, addressee);
    auto entry = record(diary, std::move(handed), now);
    if (entry)
        return *std::move(entry);
    const StoreError *const error = std::get_if<StoreError>(&entry.error());
    return failure(HandOverError(error ? *error : StoreError::Refused));
}

} // namespace morrow
