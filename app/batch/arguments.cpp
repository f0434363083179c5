// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "batch/arguments.h"

#include "batch/words.h"

#include <algorithm>
#include <iterator>

namespace morrow::batch {

Result<Arguments, std::string> Arguments::parse(std::span<const std::string> words, std::span<const OptionRule> rules)
{
    Arguments arguments;
    bool operandsOnly = false;
    for (std::size_t i = 0; i < words.size(); ++i) {
        const std::string &word = words[i];
        if (operandsOnly || word.size() < 2 || word[0] != '-') {
            arguments.m_operands.push_back(word);
            continue;
        }
        if (word == "--") {
            operandsOnly = true;
            continue;
        }
        const std::size_t equals = word.find('=');
        const std::string name = word.substr(0, equals);
        const auto rule = std::find_if(rules.begin(), rules.end(), [&](const OptionRule &known) { return known.name == name; });
        if (rule == rules.end())
            return failure("There is no option " + shown(name) + " here.");
        std::string value;
        if (rule->value.empty()) {
            if (equals != std::string::npos)
                return failure("The option " + name + " takes no value.");
        } else if (equals != std::string::npos) {
            value = word.substr(equals + 1);
        } else if (i + 1 < words.size() && !words[i + 1].starts_with("--")) {
            value = words[++i];
        }
        if (value.empty() != rule->value.empty())
            return failure("The option " + name + " needs a value: " + std::string(rule->value) + ".");
        if (!rule->isRepeated && arguments.has(name))
            return failure("The option " + name + " is given twice.");
        arguments.m_options.emplace(name, std::move(value));
    }
    return arguments;
}

std::optional<std::string> Arguments::value(std::string_view option) const
{
    const auto found = m_options.find(option);
    return found == m_options.end() ? std::nullopt : std::optional(found->second);
}

std::vector<std::string> Arguments::values(std::string_view option) const
{
    std::vector<std::string> all;
    const auto [first, end] = m_options.equal_range(option);
    std::transform(first, end, std::back_inserter(all), [](const auto &one) { return one.second; });
    return all;
}

Result<std::optional<CivilDay>, std::string> Arguments::day(std::string_view option) const
{
    const auto text = value(option);
    if (!text)
        return std::optional<CivilDay>();
    const auto day = CivilDay::parse(*text);
    if (!day)
        return failure("The option " + std::string(option) + " needs a day such as 2026-04-27, and " + shown(*text) + " is none.");
    return day;
}

} // namespace morrow::batch
