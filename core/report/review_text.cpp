// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "report/figures.h"
#include "report/plain_text.h"
#include "report/review.h"

namespace morrow {

namespace {

constexpr std::size_t kLabel = 15; ///< the longest title and two spaces
constexpr std::size_t kIndent = 2;
constexpr std::size_t kLeastBeside = 24; ///< in less a text stands below its label

/// `label  text`, wrapped; without room beside the label the text goes below it.
class Lines
{
public:
    explicit Lines(std::size_t width)
        : m_width(width)
    {
    }

    void add(std::string_view label, std::string_view text)
    {
        std::size_t indent = kLabel;
        std::string before(label);
        if (m_width < kLabel + kLeastBeside) {
            if (!label.empty())
                put(label, 0);
            indent = m_width > kLeastBeside ? kIndent : 0;
            before.clear();
        }
        before.resize(indent, ' ');
        for (const std::string &part : wrapped(text, m_width - indent)) {
            m_text += before + part + "\n";
            before.assign(indent, ' ');
        }
    }

    [[nodiscard]] std::string take() { return std::move(m_text); }

private:
    void put(std::string_view text, std::size_t indent)
    {
        for (const std::string &part : wrapped(text, m_width - indent))
            m_text += std::string(indent, ' ') + part + "\n";
    }

    std::size_t m_width;
    std::string m_text;
};

std::string questionText(const QuestionLine &question)
{
    std::string text = dated(question.day) + ": ";
    if (!question.exercise.empty())
        text += question.exercise + ": ";
    text += question.text.empty() ? "not sure how" : "'" + visible(question.text) + "'";
    if (question.reply)
        text += " Answered: '" + visible(question.replyText) + "'";
    return text;
}

} // namespace

std::string reviewText(const Review &review, std::size_t width)
{
    Lines lines(width);
    const auto block = [&lines](std::string_view label, const auto &all, const auto &text) {
        for (const auto &one : all) {
            lines.add(label, text(one));
            label = {};
        }
    };
    lines.add("", review.visit.text());
    block("Exceptions", review.exceptions, [](const ExceptionLine &line) { return line.sentence.text(); });
    std::optional<ReviewPart> part;
    for (const ReviewLine &line : review.lines) {
        lines.add(line.part == part ? std::string_view() : title(line.part), line.text());
        part = line.part;
    }
    lines.add("Entries", joined(review.quality).text());
    for (const RuleLine &rule : review.rules) {
        lines.add("Rule", rule.exercise + ": " + joined(rule.sentences).text());
        const auto condition = [](const ConditionLine &line) { return (line.isMet ? "holds: " : "open: ") + line.sentence.text(); };
        block("", rule.because, [](const ConditionLine &line) { return "because: " + line.sentence.text(); });
        block("", rule.conditions, condition);
    }
    block("Asked", review.questions, questionText);
    return lines.take();
}

} // namespace morrow
