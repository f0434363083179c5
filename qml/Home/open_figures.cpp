// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "Home/open_figures.h"

namespace morrow {

void OpenFigures::show(const QString &subject, std::vector<WordRow> rows)
{
    m_subject = subject;
    m_rows.set(std::move(rows));
    m_isShown = true;
    Q_EMIT changed();
}

void OpenFigures::close()
{
    if (!m_isShown)
        return;
    m_isShown = false;
    m_rows.set({});
    Q_EMIT changed();
}

} // namespace morrow
