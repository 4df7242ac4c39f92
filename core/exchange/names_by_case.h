#pragma once

#include "core/exchange/text_pool.h"
#include "core/support/text.h"

#include <optional>
#include <unordered_map>
#include <unordered_set>
#include <vector>

namespace coilbook {

/// The names met so far, to find one that differs from another only in case.
class NamesByCase {
public:
    explicit NamesByCase(const std::vector<QString>& stored) {
        for (const QString& name : stored) {
            m_names.emplace(caseKey(name), name);
        }
    }

    /// The other name, if there is one; told once for each name.
    [[nodiscard]] std::optional<QString> rivalOf(TextId id, const TextPool& texts) {
        if (id == kNoText || id == m_latest) {
            return std::nullopt;
        }
        m_latest = id;
        if (!m_seen.insert(id).second) {
            return std::nullopt;
        }
        const QString name = texts.text(id);
        const auto [there, isFirst] = m_names.emplace(caseKey(name), name);
        return isFirst || there->second == name ? std::nullopt : std::optional(there->second);
    }

private:
    std::unordered_map<QString, QString> m_names;
    std::unordered_set<TextId> m_seen;
    TextId m_latest = kNoText; ///< most rows repeat the row before
};

} // namespace coilbook
