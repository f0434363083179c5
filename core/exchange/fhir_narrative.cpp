// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "exchange/fhir_narrative.h"

#include "exchange/fhir_elements.h"
#include "exchange/fhir_terms.h"

#include <algorithm>
#include <array>

namespace morrow::fhir {

namespace {

using namespace std::string_view_literals;

struct Title
{
    Kind kind;
    std::string_view words;
};

/// In the order of the page. Kinds that a summary never holds are not here.
constexpr std::array kTitles{
    Title{Kind::Complaint, "Complaints"},
    Title{Kind::Plan, "Plans"},
    Title{Kind::Check, "Daily checks"},
    Title{Kind::Set, "Sets done"},
    Title{Kind::Session, "Pain in sessions"},
    Title{Kind::Skip, "Sessions skipped"},
    Title{Kind::Easier, "Sessions at the easier dose"},
    Title{Kind::Stage, "Stage changes"},
    Title{Kind::Visit, "Treatments"},
    Title{Kind::Flag, "Signs to ask about"},
    Title{Kind::Cleared, "Signs answered for"},
    Title{Kind::Heard, "Answers heard about signs"},
    Title{Kind::Outcome, "Outcomes"},
    Title{Kind::Note, "Notes and questions"},
    Title{Kind::Unusual, "Unusual days"},
    Title{Kind::Pause, "Pauses"},
    Title{Kind::Setting, "Settings"},
    Title{Kind::PutAside, "Plans put aside"},
    Title{Kind::Closed, "Episodes closed"},
};

std::ptrdiff_t countOf(std::span<const Entry *const> entries, Kind kind)
{
    return std::count_if(entries.begin(), entries.end(), [kind](const Entry *entry) { return entry->kind == kind; });
}

std::string narrative(std::span<const Entry *const> entries)
{
    std::string html = "<div xmlns=\"http://www.w3.org/1999/xhtml\"><p>";
    if (entries.empty()) {
        html += "Diary without entries.";
    } else {
        html += "Diary from " + entries.front()->day.toString() + " to " + entries.back()->day.toString() + ".";
        html += " The entries themselves follow; whoever reads them counts for themselves.";
    }
    html += "</p>";
    if (!entries.empty()) {
        html += "<table><tbody>";
        for (const Title &title : kTitles) {
            if (const std::ptrdiff_t count = countOf(entries, title.kind))
                html += "<tr><td>" + std::string(title.words) + "</td><td>" + std::to_string(count) + "</td></tr>";
        }
        html += "</tbody></table>";
    }
    return html + "</div>";
}

} // namespace

void writeComposition(JsonWriter &json, std::span<const Entry *const> entries, std::string_view patient, std::string_view timestamp)
{
    json.beginObject();
    json.member("resourceType", "Composition");
    writeProfile(json, "composition");
    json.key("text");
    json.beginObject();
    json.member("status", "generated");
    json.member("div", narrative(entries));
    json.endObject();
    json.member("status", "final");
    json.key("type");
    writeConcept(json, {ourCoding("composition", "summary")});
    json.key("subject");
    writeReference(json, patient);
    json.member("date", timestamp);
    json.key("author");
    json.beginArray();
    writeReference(json, patient);
    json.endArray();
    json.member("title", "Diary summary");
    bool isOpen = false;
    for (const Title &title : kTitles) {
        if (countOf(entries, title.kind) == 0)
            continue;
        if (!isOpen) {
            json.key("section");
            json.beginArray();
            isOpen = true;
        }
        json.beginObject();
        json.member("title", title.words);
        json.key("entry");
        json.beginArray();
        for (const Entry *entry : entries) {
            if (entry->kind == title.kind)
                writeReference(json, fullUrlOf(entry->id));
        }
        json.endArray();
        json.endObject();
    }
    if (isOpen)
        json.endArray();
    json.endObject();
}

} // namespace morrow::fhir
