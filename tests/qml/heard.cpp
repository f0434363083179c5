// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "qml/heard.h"

namespace morrow::test {

namespace {

/// Everything below \a node that a screen reader walks through.
void collect(QAccessibleInterface *node, std::vector<QAccessibleInterface *> &nodes)
{
    if (node->state().invisible)
        return;
    nodes.push_back(node);
    for (int index = 0; index < node->childCount(); ++index) {
        if (QAccessibleInterface *child = node->child(index))
            collect(child, nodes);
    }
}

} // namespace

QAccessibleInterface *heard(const Stage &stage, const QString &objectName)
{
    return QAccessible::queryAccessibleInterface(stage.find(objectName));
}

std::vector<QAccessibleInterface *> walk(QObject *from)
{
    std::vector<QAccessibleInterface *> nodes;
    if (QAccessibleInterface *root = QAccessible::queryAccessibleInterface(from))
        collect(root, nodes);
    return nodes;
}

std::vector<QAccessibleInterface *> withRole(const std::vector<QAccessibleInterface *> &nodes, QAccessible::Role role)
{
    std::vector<QAccessibleInterface *> found;
    for (QAccessibleInterface *node : nodes) {
        if (node->role() == role)
            found.push_back(node);
    }
    return found;
}

QStringList unnamed(QObject *from, int &acting)
{
    QStringList found;
    acting = 0;
    for (QAccessibleInterface *node : walk(from)) {
        const QAccessible::Role role = node->role();
        const QString name = node->text(QAccessible::Name);
        const QString what = name.isEmpty() ? QString::fromLatin1(node->object()->metaObject()->className()) : name;
        if (role == QAccessible::EditableText && name.isEmpty())
            found << what;
        if (role != QAccessible::Button && role != QAccessible::CheckBox && role != QAccessible::RadioButton
            && role != QAccessible::ListItem)
            continue;
        ++acting;
        if (name.isEmpty() || node->actionInterface() == nullptr) {
            found << what;
            continue;
        }
        const QStringList actions = node->actionInterface()->actionNames();
        if (!actions.contains(QAccessibleActionInterface::pressAction()) && !actions.contains(QAccessibleActionInterface::toggleAction()))
            found << what;
    }
    return found;
}

QStringList heardTexts(QObject *from)
{
    QStringList texts;
    for (QAccessibleInterface *node : walk(from)) {
        if (node->role() == QAccessible::StaticText || node->role() == QAccessible::AlertMessage || node->role() == QAccessible::Heading)
            texts << node->text(QAccessible::Name);
    }
    return texts;
}

} // namespace morrow::test
