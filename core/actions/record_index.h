// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// What a record folder holds, file by file, and what was decided about its files: which refs
/// are one person, which files are set aside. No diary is held.
///
///  I1  It depends on the set of files only, never on the order they came in.

#include "exchange/fhir.h"
#include "store/desk_rows.h"

#include <cstdint>
#include <map>
#include <optional>
#include <set>
#include <string>
#include <vector>

namespace morrow {

struct RecordedFile
{
    enum class Sort {
        Others, ///< taken in
        Own, ///< what this clinic said
        Decisions ///< own, and nothing but which refs are one person and which files are set aside
    };

    std::string ref; ///< as it stands in the file
    Sort sort = Sort::Others;
    bool isSummary = false;
    std::int64_t latest = 0; ///< the latest recording in it, milliseconds UTC; 0: none
};

class RecordIndex
{
public:
    /// The index that \a notes keep; nullopt if they are none of ours.
    [[nodiscard]] static std::optional<RecordIndex> fromNotes(const Notes &notes);

    /// Adds the file \a name that holds \a diary, and gives the notes that keep it.
    Notes add(const std::string &name, const FhirDiary &diary);
    /// Forgets the file \a name with what it decided, and gives the notes for that.
    Notes remove(const std::string &name);

    [[nodiscard]] const std::map<std::string, RecordedFile> &files() const noexcept { return m_files; }
    [[nodiscard]] bool holds(const std::string &name) const { return m_files.contains(name); }
    [[nodiscard]] bool isSetAside(const std::string &name) const { return m_setAside.contains(name); }
    /// The entries that set the file \a name aside and count.
    [[nodiscard]] std::vector<Entry> settingAside(const std::string &name) const;
    /// The entries that count and say that \a ref is another person's, too.
    [[nodiscard]] std::vector<Entry> aliasing(const std::string &ref) const;

    /// The ref under which the store keeps the person who is also \a ref: of all that are joined
    /// the one that no other was named to be, the least as text where there are several.
    /// nullopt if no file and no decision names \a ref.
    [[nodiscard]] std::optional<std::string> personOf(const std::string &ref) const;
    /// Whether a file that counts, other than of decisions, is that person's.
    [[nodiscard]] bool isKnown(const std::string &ref) const;
    /// Every person, by the ref of the store.
    [[nodiscard]] std::set<std::string> persons() const;
    /// Every ref of \a person.
    [[nodiscard]] const std::vector<std::string> &refsOf(const std::string &person) const;
    /// The files of \a person that count: the clinic's own first, each by name.
    [[nodiscard]] std::vector<std::string> filesOf(const std::string &person) const;
    /// The ref that a file to \a person carries: that of the last summary, else \a person.
    [[nodiscard]] std::string refForPatient(const std::string &person) const;

private:
    struct Decision
    {
        std::string file; ///< that holds it
        std::string ref; ///< whose file that is
        Entry entry;
    };

    void decide();

    std::map<std::string, RecordedFile> m_files;
    std::vector<Decision> m_decisions; ///< aliases and set_asides, by id
    std::map<std::string, std::set<std::string>> m_filesOf; ///< ref to the names of its files
    std::map<std::string, std::string> m_persons; ///< ref to person
    std::map<std::string, std::vector<std::string>> m_refs; ///< person to refs
    std::map<std::string, std::vector<Entry>> m_setAside; ///< file to the entries that count
    std::map<std::string, std::vector<Entry>> m_aliases; ///< ref to the entries that count
};

} // namespace morrow
