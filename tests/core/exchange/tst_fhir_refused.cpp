// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "support/suite.h" // Qt first: moc cannot read some standard headers

#include "exchange/fhir.h"
#include "exchange/folders.h"
#include "support/diary_generator.h"
#include "support/json_text.h"
#include "support/typed_cells.h"

#include <algorithm>
#include <string>

using namespace morrow;
using namespace morrow::test;

namespace {

const std::string kPerson = "6f1c2a54-0d3e-4b8f-9a67-1c2d3e4f5a6b";

/// A diary with one entry of most kinds, as a summary.
const std::string &goodBundle()
{
    static const std::string bundle = [] {
        const auto diary = diaryIn(smallFolder({
            {"mornings.csv",
                "id,day,pain,stiffness_min,recorded_at,replaces\r\n"
                "c1,2026-03-03,3,20,2026-03-03T07:00:00+01:00,\r\n"
                "c2,2026-03-03,4,,2026-03-03T07:05:00+01:00,c1\r\n"},
            {"sets.csv", "id,day,slot,item,set,reps,hold_s,load_kg,recorded_at\r\ns1,2026-03-03,noon,raise,1,15,,2.5,\r\n"},
            {"sessions.csv", "id,day,slot,pain_during,pain_after,recorded_at\r\np1,2026-03-03,noon,3,2,\r\n"},
            {"stages.csv", "id,day,item,stage,reason\r\ng1,2026-03-05,raise,2,\r\n"},
            {"visits.csv",
                "id,day,region,side,warmup_impulses,warmup_bar,warmup_hz,impulses,bar,hz,area_cm2,pain_during,note\r\n"
                "v1,2026-03-04,heel,left,500,1.5,8,2000,2.5,10,3.5,6,\r\n"},
            {"flags.csv", "id,day,sign,note,recorded_at\r\nf1,2026-03-06,numbness,since noon,\r\n"},
            {"notes.csv", "id,day,kind,item,text,recorded_at\r\nn1,2026-03-06,question,raise,how fast?,\r\n"},
            {"pauses.csv", "id,from,to,reason\r\nz1,2026-03-07,2026-03-09,travel\r\n"},
            {"outcomes.csv", "id,day,kind,name,side,value,unit,pain,by,recorded_at\r\no1,2026-03-08,test,hops,left,12,count,4,physio,\r\n"},
        }));
        return diary ? writeFhir(diary->entries, kPerson, FhirFile::Summary).json : std::string();
    }();
    return bundle;
}

/// The code of what is wrong with \a json and where; empty if nothing is.
std::string problemOf(std::string_view json)
{
    const auto read = readFhir(json);
    return read ? std::string() : std::to_string(static_cast<int>(read.error().front().code)) + " " + read.error().front().pointer;
}

std::string expected(IssueCode code, const std::string &pointer)
{
    return std::to_string(static_cast<int>(code)) + " " + pointer;
}

/// \a text with its first \a from made \a to; empty if there is none.
std::string replaced(std::string text, const std::string &from, const std::string &to)
{
    const std::size_t at = text.find(from);
    return at == std::string::npos ? std::string() : text.replace(at, from.size(), to);
}

/// The pointer to the resource that holds \a text in the bundle.
std::string resourceWith(const std::string &text)
{
    const std::string &bundle = goodBundle();
    const std::size_t at = bundle.find(text);
    int place = -1;
    for (std::size_t next = bundle.find("{\"fullUrl\""); next < at; next = bundle.find("{\"fullUrl\"", next + 1))
        ++place;
    return "/entry/" + std::to_string(place) + "/resource";
}

} // namespace

/// What somebody else wrote is read whole or refused, with the reason and the place.
class tst_fhir_refused : public QObject
{
    Q_OBJECT

private Q_SLOTS:
    void init() { QTest::failOnWarning(QRegularExpression(QStringLiteral(".?"))); }

    void theUnbrokenBundleIsRead()
    {
        QVERIFY(!goodBundle().empty());
        QCOMPARE(problemOf(goodBundle()), std::string());
    }

    void aBreakIsNamedAndPlaced_data()
    {
        QTest::addColumn<QString>("from");
        QTest::addColumn<QString>("to");
        QTest::addColumn<QString>("problem");
        const auto row = [](const char *name, const std::string &from, const std::string &to, IssueCode code, const std::string &pointer) {
            QTest::newRow(name) << QString::fromStdString(json(from)) << QString::fromStdString(json(to))
                                << QString::fromStdString(expected(code, pointer));
        };
        const std::string check = resourceWith("\"value\":\"c1\"");
        const std::string set = resourceWith("\"value\":\"s1\"");
        const std::string session = resourceWith("\"value\":\"p1\"");
        const std::string visit = resourceWith("\"value\":\"v1\"");
        const std::string flag = resourceWith("\"value\":\"f1\"");
        const std::string note = resourceWith("\"value\":\"n1\"");
        const std::string pause = resourceWith("\"value\":\"z1\"");
        const std::string stage = resourceWith("\"value\":\"g1\"");
        const std::string outcome = resourceWith("\"value\":\"o1\"");
        const std::string plan = resourceWith("\"resourceType\":\"CarePlan\"");
        const std::string patient = resourceWith("\"resourceType\":\"Patient\"");
        const std::string correction = resourceWith("\"resourceType\":\"Provenance\"");
        const std::string pain = "{'value':3,'unit':'{score}','system':'http://unitsofmeasure.org','code':'{score}'}";

        row("a text behind the end", "]}", "]} x", IssueCode::NotJson, "");
        row("no bundle", "'resourceType':'Bundle'", "'resourceType':'List'", IssueCode::NotABundle, "");
        row("of no kind of ours", "StructureDefinition/summary", "StructureDefinition/story", IssueCode::NotABundle, "");
        row("a type that is not the profile's", "'type':'document'", "'type':'message'", IssueCode::ElementRefused, "/type");
        row("a key twice in the bundle", "'type':'document'", "'type':'document','type':'document'", IssueCode::KeyTwice, "/type");
        row("no identifier", "'identifier':{'system':'https://morrow.invalid/fhir/bundle'", "'identifier':{'system':'x'",
            IssueCode::ElementMissing, "");
        row("entries that are no list", "'entry':[", "'entry':{},'entries':[", IssueCode::ElementRefused, "/entry");
        row("rules for reading", "'type':'document'", "'implicitRules':'x','type':'document'", IssueCode::ModifierRefused,
            "/implicitRules");
        row("a key twice in a resource", "'status':'final','category'", "'status':'final','status':'final','category'", IssueCode::KeyTwice,
            check + "/status");
        row("a modifier deep inside", "'subject':{", "'subject':{'modifierExtension':[],", IssueCode::ModifierRefused, "");
        row("no status", "'status':'final','category'", "'category'", IssueCode::ElementMissing, check + "/status");
        row("a status of a draft", "'status':'final','category'", "'status':'preliminary','category'", IssueCode::StatusRefused,
            check + "/status");
        row("marked as wrong by somebody", "'status':'final','category'", "'status':'entered-in-error','category'",
            IssueCode::StatusRefused, check + "/status");
        row("pain 11", "'valueQuantity':" + pain, "'valueQuantity':" + replaced(json(pain), "3", "11"), IssueCode::ValueRefused,
            check + "/valueQuantity/value");
        row("pain as a text", "'valueQuantity':" + pain, "'valueQuantity':" + replaced(json(pain), "3", "'3'"), IssueCode::ElementRefused,
            check + "/valueQuantity/value");
        row("pain of four decimals", "'valueQuantity':" + pain, "'valueQuantity':" + replaced(json(pain), "3", "3.0001"),
            IssueCode::ValueRefused, check + "/valueQuantity/value");
        row("pain out of every number", "'valueQuantity':" + pain, "'valueQuantity':" + replaced(json(pain), "3", "1e999"),
            IssueCode::NotJson, check + "/valueQuantity/value");
        row("pain without a value", "'valueQuantity':" + pain, "'valueQuantity':{'system':'http://unitsofmeasure.org','code':'{score}'}",
            IssueCode::ElementMissing, check + "/valueQuantity/value");
        row("a load in pounds", "'unit':'kg','system':'http://unitsofmeasure.org','code':'kg'",
            "'unit':'lb','system':'http://unitsofmeasure.org','code':'[lb_av]'", IssueCode::UnitRefused,
            set + "/component/0/valueQuantity");
        row("a code of another scale", "'code':'72514-3'", "'code':'38208-5'", IssueCode::ElementRefused, check + "/code");
        row("30 February", "'effectiveDateTime':'2026-03-03'", "'effectiveDateTime':'2026-02-30'", IssueCode::ElementRefused,
            check + "/effectiveDateTime");
        row("a day in 2201", "'effectiveDateTime':'2026-03-03'", "'effectiveDateTime':'2201-01-01'", IssueCode::ElementRefused,
            check + "/effectiveDateTime");
        row("an instant without a zone", "'issued':'2026-03-03T07:00:00+01:00'", "'issued':'2026-03-03T07:00:00'",
            IssueCode::ElementRefused, check + "/issued");
        row("somebody else's check",
            "'code':'stage'}]},'subject':{'reference':'urn:uuid:", "'code':'stage'}]},'subject':{'reference':'urn:uuid:0",
            IssueCode::AnotherPerson, "/entry");
        row("no subject", "'code':'stage'}]},'subject':{'reference'", "'code':'stage'}]},'subject':{'display'", IssueCode::ElementRefused,
            stage + "/subject");
        row("negative reps", "'value':15,'unit':'{repetitions}'", "'value':-1,'unit':'{repetitions}'", IssueCode::ValueRefused, "");
        row("a component of nobody's", "'code':'load'", "'code':'speed'", IssueCode::ElementRefused, set + "/component/0/code");
        row("a field of a newer program", "'url':'slot'", "'url':'side-of-bed'", IssueCode::OfNewerProgram, "");
        row("a kind of a newer program", "CodeSystem/kind','code':'session'", "CodeSystem/kind','code':'dream'", IssueCode::OfNewerProgram,
            session);
        row("no extension of ours", "StructureDefinition/entry", "StructureDefinition/other", IssueCode::ElementMissing, "");
        row("an author that cannot say it", "'valueCode':'patient'", "'valueCode':'clinic'", IssueCode::AuthorRefused, "");
        row("nobody's words", "'valueCode':'patient'", "'valueCode':'neighbour'", IssueCode::ElementMissing, "");
        row("a pause that ends before it starts", "'valueDate':'2026-03-09'", "'valueDate':'2026-03-01'", IssueCode::PauseEndsBeforeStart,
            pause);
        row("an unknown item", "'valueString':'raise'},{'url':'stage'", "'valueString':'squat'},{'url':'stage'", IssueCode::UnknownItem,
            "");
        row("a unit of no outcome", "'code':'{count}'", "'code':'m'", IssueCode::ElementRefused, outcome + "/valueQuantity/code");
        row("a control character in a text", "since noon", "since\\u0007noon", IssueCode::ValueRefused, flag + "/note");
        row("half a surrogate in a text", "since noon", "since\\ud800noon", IssueCode::NotJson, flag + "/note/0/text");
        row("an empty text", "since noon", "", IssueCode::ValueRefused, flag + "/note");
        row("a note without words", "'payload':[{'contentString':'how fast?'}]", "'payload':[]", IssueCode::ElementRefused,
            note + "/payload");
        row("bar for a visit in psi", "'code':'bar'", "'code':'[psi]'", IssueCode::UnitRefused, "");
        row("a visit without a day", "'performedDateTime':'2026-03-04',", "", IssueCode::ElementMissing, visit + "/performedDateTime");
        row("a plan that is a proposal", "'intent':'plan'", "'intent':'proposal'", IssueCode::ElementRefused, plan + "/intent");
        row("an item that ends before it starts", "'boundsPeriod':{'start':'2026-03-02'",
            "'boundsPeriod':{'start':'2026-03-02','end':'2026-03-01'", IssueCode::ElementRefused, "");
        row("a rhythm of nobody's", "'periodUnit':'d'", "'periodUnit':'mo'", IssueCode::ElementRefused,
            plan + "/activity/0/detail/scheduledTiming/repeat");
        row("a correction of nothing", "'what':{'reference':'urn:uuid:", "'what':{'reference':'urn:uuid:0", IssueCode::ElementRefused,
            correction);
        row("a second person", "{'fullUrl':'urn:uuid:",
            "{'fullUrl':'x','resource':{'resourceType':'Patient','identifier':[{'system':'https://morrow.invalid/fhir/"
            "person','value':'y'}]}},"
            "{'fullUrl':'urn:uuid:",
            IssueCode::ElementRefused, "/entry/0/resource");
        row("no person", "https://morrow.invalid/fhir/person", "https://example.invalid/person", IssueCode::ElementMissing, "/entry");
        row("an id with a space", "'value':'s1'", "'value':'s 1'", IssueCode::ElementRefused, set + "/identifier");
        row("a url that is not the id's", "'value':'s1'", "'value':'s2'", IssueCode::ElementRefused,
            set.substr(0, set.rfind('/')) + "/fullUrl");
        row("another number of reps", "'value':15,'unit':'{repetitions}'", "'value':51,'unit':'{repetitions}'", IssueCode::SumDiffers,
            "/identifier");
        row("a stage change too far", "'raise'},{'url':'stage','valueInteger':2", "'raise'},{'url':'stage','valueInteger':9",
            IssueCode::UnknownStage, stage);
        row("a name that is no text", "'identifier':[{'system':'https://morrow.invalid/fhir/person'",
            "'name':[{'given':['x']}],'identifier':[{'system':'https://morrow.invalid/fhir/person'", IssueCode::ElementRefused,
            patient + "/name");
    }

    void aBreakIsNamedAndPlaced()
    {
        QFETCH(QString, from);
        QFETCH(QString, to);
        QFETCH(QString, problem);
        const std::string broken = replaced(goodBundle(), from.toStdString(), to.toStdString());
        QVERIFY2(!broken.empty(), "the bundle has no such text");

        const std::string found = problemOf(broken);

        // Where the first of several places is broken, the place is the resource's business.
        const std::string wanted = problem.toStdString();
        if (wanted.ends_with(' '))
            QVERIFY2(found.starts_with(wanted), found.c_str());
        else
            QCOMPARE(found, wanted);
    }

    void nothingIsReadFromAFileThatIsCutAnywhere()
    {
        const std::string &bundle = goodBundle();
        for (std::size_t size = 0; size < bundle.size(); size += 97)
            QVERIFY2(!readFhir(std::string_view(bundle).substr(0, size)), std::to_string(size).c_str());
    }

    void aFlippedBitIsRefusedOrChangesNoEntry()
    {
        const std::string &bundle = goodBundle();
        const auto whole = readFhir(bundle);
        QVERIFY(whole);
        int refused = 0;
        int harmless = 0;
        for (std::size_t at = 0; at < bundle.size(); ++at) {
            std::string flipped = bundle;
            flipped[at] = static_cast<char>(flipped[at] ^ (1 << (at % 7)));

            const auto read = readFhir(flipped);

            if (read) {
                QVERIFY2(read->entries == whole->entries && read->person == whole->person, std::to_string(at).c_str());
                ++harmless;
            } else {
                ++refused;
            }
        }
        QVERIFY(refused > 5000);
        QVERIFY(harmless > 100); // narrative, displays, what nobody reads
    }

    void aFileMayBeWrittenInAnotherOrderAndWithSpaces()
    {
        std::string spaced;
        bool isInText = false;
        for (const char c : goodBundle()) {
            isInText ^= c == '"' && !spaced.ends_with('\\');
            spaced += c;
            if (!isInText && (c == ',' || c == ':' || c == '['))
                spaced += "\r\n\t ";
        }

        const auto read = readFhir(spaced);

        QVERIFY(read);
        QVERIFY(read->entries == readFhir(goodBundle())->entries);
    }

    void extraResourcesAndExtensionsAreCountedAndLeftAlone()
    {
        std::string extra = replaced(goodBundle(), json("{'fullUrl':'urn:uuid:"),
            json("{'fullUrl':'urn:uuid:00000000-0000-4000-8000-000000000000','resource':{'resourceType':'Device','x':[1,{'y':null}]}},"
                 "{'fullUrl':'urn:uuid:"));
        extra = replaced(extra, json("'extension':[{'url':'https://morrow.invalid/fhir/StructureDefinition/entry'"),
            json("'extension':[{'url':'https://example.invalid/mood','valueCode':'good'},"
                 "{'url':'https://morrow.invalid/fhir/StructureDefinition/entry'"));

        const auto read = readFhir(extra);

        QVERIFY(read);
        QCOMPARE(read->unknownResources, 1);
        QCOMPARE(read->unknownExtensions, 1);
        QVERIFY(read->entries == readFhir(goodBundle())->entries);
    }

    void nestingBeyondSixtyFourLevelsIsRefused()
    {
        const auto nested = [](int levels) {
            return replaced(goodBundle(), json("'type':'document'"),
                json("'x':") + std::string(static_cast<std::size_t>(levels), '[') + std::string(static_cast<std::size_t>(levels), ']')
                    + json(",'type':'document'"));
        };

        QCOMPARE(problemOf(nested(63)), std::string());
        QVERIFY(problemOf(nested(64)).starts_with(expected(IssueCode::TooDeep, "/x")));
        QVERIFY(problemOf(nested(100'000)).starts_with(std::to_string(static_cast<int>(IssueCode::TooDeep)))
            || problemOf(nested(100'000)).starts_with(std::to_string(static_cast<int>(IssueCode::NotJson))));
    }

    void moreThanAMillionValuesInAResourceAreRefused()
    {
        std::string wide = json("'x':[0");
        for (int i = 0; i < 1'000'000; ++i)
            wide += ",0";
        const std::string bundle = replaced(goodBundle(), json("'type':'document'"), wide + json("],'type':'document'"));

        QVERIFY(problemOf(bundle).starts_with(std::to_string(static_cast<int>(IssueCode::TooManyValues))));
    }

    void aByteOrderMarkIsRefused() { QCOMPARE(problemOf("\xef\xbb\xbf" + goodBundle()), expected(IssueCode::NotJson, "")); }

    void bytesThatAreNoTextAreRefused()
    {
        QVERIFY(problemOf(replaced(goodBundle(), "since noon", "since\xc0\x80noon"))
                    .starts_with(std::to_string(static_cast<int>(IssueCode::NotUtf8))));
    }

    void aCircleOfCorrectionsIsRefused()
    {
        // The two checks correct each other: a second Provenance turns the first one round.
        const std::string &bundle = goodBundle();
        const std::size_t at = bundle.find("{\"fullUrl\"", bundle.find("Provenance") - 120);
        std::string turned = bundle.substr(at, bundle.size() - at - 2);
        const std::size_t target = turned.find("urn:uuid:", turned.find("target"));
        const std::size_t what = turned.find("urn:uuid:", turned.find("what"));
        for (std::size_t i = 0; i < 45; ++i)
            std::swap(turned[target + i], turned[what + i]);

        const std::string found = problemOf(bundle.substr(0, bundle.size() - 2) + "," + turned + "]}");

        QVERIFY2(found.starts_with(std::to_string(static_cast<int>(IssueCode::ReplacesLoop))), found.c_str());
    }
};

MORROW_SUITE(tst_fhir_refused)

#include "tst_fhir_refused.moc"
