#include "core/exchange/text_pool.h"

#include "core/exchange/formula_guard.h"
#include "core/support/text.h"

#include <algorithm>

namespace coilbook {

namespace {

/// Whether a cell is kept as it stands: ASCII is in NFC, and nothing is there to be trimmed.
bool isPlain(std::string_view cell) {
    const auto isOrdinary = [](char c) {
        return c > ' ' && c < '\x7F';
    };
    return isOrdinary(cell.front()) && cell.front() != '\'' && isOrdinary(cell.back()) &&
           std::all_of(cell.begin(), cell.end(), [](char c) { return c > 0; });
}

} // namespace

TextPool::TextPool() {
    m_texts.emplace_back();
}

TextId TextPool::fromCell(std::string_view cell) {
    if (cell.empty()) {
        return kNoText;
    }
    if (isPlain(cell)) {
        return intern(cell);
    }
    const auto known = m_byOddCell.find(cell);
    if (known != m_byOddCell.end()) {
        return known->second;
    }
    const QString text = QString::fromUtf8(cell.data(), static_cast<qsizetype>(cell.size()));
    const TextId id = fromText(normalised(unguarded(text.trimmed())));
    m_byOddCell.emplace(m_oddCells.emplace_back(cell), id);
    return id;
}

TextId TextPool::fromText(const QString& text) {
    return text.isEmpty() ? kNoText : intern(text.toStdString());
}

TextId TextPool::intern(std::string_view utf8) {
    const auto known = m_byText.find(utf8);
    if (known != m_byText.end()) {
        return known->second;
    }
    const TextId id{static_cast<std::uint32_t>(m_texts.size())};
    m_byText.emplace(m_texts.emplace_back(utf8), id);
    return id;
}

} // namespace coilbook
