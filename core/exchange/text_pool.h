#pragma once

#include <QString>

#include <cstdint>
#include <deque>
#include <string>
#include <string_view>
#include <unordered_map>

namespace coilbook {

/// A text of a TextPool by number; equal texts have equal numbers.
enum class TextId : std::uint32_t {};

/// The empty text: a cell that was left out.
constexpr TextId kNoText{0};

/// Every different text of an import once, as the logbook keeps it (trimmed, NFC), so that a row
/// holds numbers and rows compare by numbers.
class TextPool {
public:
    TextPool();

    /// The text of a cell of an exchange file: formula guard taken away, trimmed, in NFC.
    [[nodiscard]] TextId fromCell(std::string_view cell);

    [[nodiscard]] TextId fromText(const QString& text);

    [[nodiscard]] const std::string& utf8(TextId id) const {
        return m_texts[static_cast<std::size_t>(id)];
    }

    [[nodiscard]] QString text(TextId id) const { return QString::fromStdString(utf8(id)); }

private:
    [[nodiscard]] TextId intern(std::string_view utf8);

    std::deque<std::string> m_texts; ///< a deque, since the maps look into it
    std::unordered_map<std::string_view, TextId> m_byText;
    std::deque<std::string> m_oddCells;
    std::unordered_map<std::string_view, TextId> m_byOddCell; ///< cells that had to be normalised
};

} // namespace coilbook
