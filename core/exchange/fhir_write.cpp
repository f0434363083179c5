// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "exchange/fhir.h"

#include "base/clock.h"
#include "exchange/fhir_elements.h"
#include "exchange/fhir_narrative.h"
#include "exchange/fhir_resource.h"
#include "exchange/fhir_terms.h"

#include <algorithm>
#include <map>
#include <tuple>
#include <unordered_set>

namespace morrow {

namespace {

using namespace std::string_view_literals;

/// Chooses what belongs into a file, and counts what does not.
std::vector<const Entry *> chosen(std::span<const Entry> entries, FhirFile file, FhirBundle &bundle)
{
    std::unordered_set<std::string_view> replacedNotes;
    for (const Entry &entry : entries) {
        if (entry.kind == Kind::Note && entry.replaces)
            replacedNotes.insert(*entry.replaces);
    }
    std::vector<const Entry *> in;
    in.reserve(entries.size());
    for (const Entry &entry : entries) {
        if (file == FhirFile::Record)
            in.push_back(&entry);
        else if (entry.kind == Kind::Handed)
            ++bundle.handedLeftOut;
        else if (staysAtDesk(entry.kind))
            ++bundle.deskOnlyLeftOut;
        else if (file != FhirFile::Summary && entry.author != Author::Clinic)
            ++bundle.othersLeftOut;
        else if (entry.kind == Kind::Note && replacedNotes.contains(entry.id))
            ++bundle.notesLeftOut;
        else
            in.push_back(&entry);
    }
    std::sort(in.begin(), in.end(), [](const Entry *a, const Entry *b) {
        return std::tuple(a->day, name(a->kind), std::string_view(a->id)) < std::tuple(b->day, name(b->kind), std::string_view(b->id));
    });
    return in;
}

/// The latest recording, else the last day, else the first day of all time.
std::string timestampOf(std::span<const Entry *const> entries)
{
    std::optional<std::int64_t> latest;
    for (const Entry *entry : entries) {
        if (entry->recorded)
            latest = std::max(latest.value_or(entry->recorded->utcMs), entry->recorded->utcMs);
    }
    if (!latest)
        return (entries.empty() ? "1970-01-01" : entries.back()->day.toString()) + "T00:00:00Z";
    return fhir::utcInstantOf(*latest);
}

std::string_view profileOf(FhirFile file) noexcept
{
    switch (file) {
    case FhirFile::Summary:
        return "summary";
    case FhirFile::Plan:
        return "plan-file";
    case FhirFile::Visit:
        return "visit-file";
    case FhirFile::Record:
        return "record-file";
    }
    return {};
}

/// What the plans in a file say about the file as a whole.
struct PlansInFile
{
    std::map<std::string, int, std::less<>> newestNumber; ///< by plan
    std::optional<Decimal> birthYear; ///< of the newest revision that has one
};

PlansInFile plansIn(std::span<const Entry *const> entries)
{
    PlansInFile plans;
    const Entry *newest = nullptr;
    BodyReader reader;
    for (const Entry *entry : entries) {
        const auto body = entry->kind == Kind::Plan ? reader.read(entry->body) : std::nullopt;
        if (!body || body->has(Field::Withdrawn))
            continue;
        int &number = plans.newestNumber[std::string(body->textOr(Field::Plan))];
        number = std::max(number, body->intOr(Field::Number, 1));
        if (const Decimal *const year = body->number(Field::BirthYear)) {
            if (!newest || countsBefore(*entry, *newest)) {
                newest = entry;
                plans.birthYear = *year;
            }
        }
    }
    return plans;
}

void writePatient(JsonWriter &json, std::string_view person, std::string_view name, const std::optional<Decimal> &birthYear)
{
    json.beginObject();
    json.member("resourceType", "Patient");
    fhir::writeProfile(json, "patient");
    json.key("identifier");
    json.beginArray();
    fhir::writeIdentifier(json, "person", person);
    json.endArray();
    if (!name.empty()) {
        json.key("name");
        json.beginArray();
        json.beginObject();
        json.member("text", name);
        json.endObject();
        json.endArray();
    }
    if (birthYear)
        json.member("birthDate", birthYear->toString());
    json.endObject();
}

/// Says that \a entry corrects another one of the file.
void writeCorrection(JsonWriter &json, const Entry &entry, std::string_view patient, std::string_view timestamp)
{
    json.beginObject();
    json.member("resourceType", "Provenance");
    fhir::writeProfile(json, "correction");
    json.key("target");
    json.beginArray();
    fhir::writeReference(json, fhir::fullUrlOf(entry.id));
    json.endArray();
    json.member("recorded", entry.recorded ? fhir::instantOf(*entry.recorded) : std::string(timestamp));
    json.key("agent");
    json.beginArray();
    json.beginObject();
    json.key("who");
    json.beginObject();
    if (entry.author == Author::Clinic)
        json.member("display", name(Author::Clinic));
    else
        json.member("reference", patient);
    json.endObject();
    json.endObject();
    json.endArray();
    json.key("entity");
    json.beginArray();
    json.beginObject();
    json.member("role", "revision");
    json.key("what");
    fhir::writeReference(json, fhir::fullUrlOf(*entry.replaces));
    json.endObject();
    json.endArray();
    json.endObject();
}

/// Calls \a write for the resource of a bundle's entry called \a fullUrl.
template<class Write>
void writeEntry(JsonWriter &json, std::string_view fullUrl, Write write)
{
    json.beginObject();
    json.member("fullUrl", fullUrl);
    json.key("resource");
    write();
    json.endObject();
}

} // namespace

FhirBundle writeFhir(std::span<const Entry> entries, std::string_view person, FhirFile file, std::string_view name)
{
    FhirBundle bundle;
    const std::vector<const Entry *> in = chosen(entries, file, bundle);
    bundle.entries = static_cast<int>(in.size());
    const PlansInFile plans = plansIn(in);
    Sum sum;
    Sha256 hash;
    std::unordered_set<std::string_view> ids;
    for (const Entry *entry : in) {
        sum.add(digestOf(*entry, hash));
        ids.insert(entry->id);
    }
    const std::string identifier = std::to_string(in.size()) + '-' + toHex(sum.value());
    const std::string timestamp = timestampOf(in);
    const fhir::Surroundings around{
        .patient = fhir::fullUrlOf("patient", person),
        .holds = [&ids](std::string_view id) { return ids.contains(id); },
        .isOldRevision =
            [&plans](const Body &plan) {
                const auto newest = plans.newestNumber.find(plan.textOr(Field::Plan));
                return newest != plans.newestNumber.end() && plan.intOr(Field::Number, 1) < newest->second;
            },
    };

    // About what a resource takes, so that the text is not copied as it grows.
    bundle.json.reserve(in.size() * 1350 + 4096);
    JsonWriter json(bundle.json);
    json.beginObject();
    json.member("resourceType", "Bundle");
    fhir::writeProfile(json, profileOf(file));
    json.key("identifier");
    fhir::writeIdentifier(json, "bundle", identifier);
    json.member("type", file == FhirFile::Summary ? "document" : "collection");
    json.member("timestamp", timestamp);
    json.key("entry");
    json.beginArray();
    if (file == FhirFile::Summary)
        writeEntry(json, fhir::fullUrlOf("composition", identifier), [&] { fhir::writeComposition(json, in, around.patient, timestamp); });
    writeEntry(json, around.patient, [&] { writePatient(json, person, name, plans.birthYear); });
    BodyReader reader;
    for (const Entry *entry : in) {
        // An entry's body was read when it came in; one that is none says nothing.
        const Body body = reader.read(entry->body).value_or(Body());
        writeEntry(json, fhir::fullUrlOf(entry->id), [&] { fhir::writeResource(json, *entry, body, around); });
    }
    for (const Entry *entry : in) {
        if (entry->replaces && fhir::correctsByProvenance(entry->kind) && ids.contains(*entry->replaces))
            writeEntry(json, fhir::fullUrlOf("provenance", entry->id), [&] { writeCorrection(json, *entry, around.patient, timestamp); });
    }
    json.endArray();
    json.endObject();
    return bundle;
}

} // namespace morrow
