// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "support/suite.h" // Qt first: moc cannot read some standard headers

#include "model/rules.h"

#include <QFile>
#include <QJsonArray>
#include <QJsonDocument>
#include <QJsonObject>

using namespace morrow;

namespace {

QString text(std::string_view utf8)
{
    return QString::fromUtf8(utf8.data(), static_cast<qsizetype>(utf8.size()));
}

/// assets/plan.schema.json says of a plan's body what the rules say.
void compareWithRules(const QJsonObject &schema, std::span<const FieldRule> rules)
{
    const QJsonObject properties = schema.value(QStringLiteral("properties")).toObject();
    QSet<QString> named;
    QSet<QString> needed;
    for (const FieldRule &rule : rules) {
        if (rule.field == Field::Withdrawn)
            continue;
        const QString name = text(morrow::name(rule.field));
        named.insert(name);
        if (rule.required)
            needed.insert(name);
        const QJsonObject property = properties.value(name).toObject();
        QVERIFY2(!property.isEmpty(), qPrintable(name));
        const bool isNumber = rule.form == Form::Whole || rule.form == Form::Number;
        QCOMPARE(property.contains(QStringLiteral("minimum")), isNumber);
        if (isNumber) {
            QCOMPARE(property.value(QStringLiteral("type")).toString(),
                rule.form == Form::Whole ? QStringLiteral("integer") : QStringLiteral("number"));
            QCOMPARE(property.value(QStringLiteral("minimum")).toDouble(), rule.least.toDouble());
            QCOMPARE(property.value(QStringLiteral("maximum")).toDouble(), rule.most.toDouble());
        }
        QJsonArray choices;
        for (const std::string_view choice : rule.choices)
            choices.append(text(choice));
        QCOMPARE(property.value(QStringLiteral("enum")).toArray(), choices);
    }
    const QStringList keys = properties.keys();
    QCOMPARE(QSet<QString>(keys.begin(), keys.end()), named);
    QSet<QString> required;
    for (const QJsonValue &name : schema.value(QStringLiteral("required")).toArray())
        required.insert(name.toString());
    QCOMPARE(required, needed);
    QCOMPARE(schema.value(QStringLiteral("additionalProperties")), QJsonValue(false));
}

} // namespace

class tst_plan_schema : public QObject
{
    Q_OBJECT

private Q_SLOTS:
    void init()
    {
        QTest::failOnWarning(QRegularExpression(QStringLiteral(".?")));
        QFile file(QStringLiteral(MORROW_ASSETS "/plan.schema.json"));
        QVERIFY(file.open(QIODevice::ReadOnly));
        m_schema = QJsonDocument::fromJson(file.readAll()).object();
    }

    void aPlanIsWhatTheRulesSay() { compareWithRules(m_schema, ruleOf(Kind::Plan).fields); }
    void anItemIsWhatTheRulesSay() { compareWithRules(part(QStringLiteral("item")), itemRules()); }
    void aStageIsWhatTheRulesSay() { compareWithRules(part(QStringLiteral("stage")), stageRules()); }

private:
    [[nodiscard]] QJsonObject part(const QString &name) const
    {
        return m_schema.value(QStringLiteral("$defs")).toObject().value(name).toObject();
    }

    QJsonObject m_schema;
};

MORROW_SUITE(tst_plan_schema)

#include "tst_plan_schema.moc"
