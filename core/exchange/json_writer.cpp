#include "core/exchange/json_writer.h"

#include <cmath>

namespace coilbook {

namespace {

/// RFC 8259, section 7: quotation mark, reverse solidus and the controls must be escaped.
QByteArray quoted(const QString& text) {
    QByteArray result("\"");
    for (const char c : text.toUtf8()) {
        switch (c) {
        case '"':
            result += "\\\"";
            break;
        case '\\':
            result += "\\\\";
            break;
        case '\n':
            result += "\\n";
            break;
        case '\r':
            result += "\\r";
            break;
        case '\t':
            result += "\\t";
            break;
        default:
            if (static_cast<unsigned char>(c) < 0x20U) {
                result += "\\u" + QByteArray::number(c, 16).rightJustified(4, '0');
            } else {
                result += c;
            }
        }
    }
    return result + '"';
}

} // namespace

void JsonWriter::begin(char bracket, Layout layout) {
    startValue();
    put(QByteArray(1, bracket));
    const bool isInsideOneLine = !m_levels.empty() && m_levels.back().isOneLine;
    m_levels.push_back({isInsideOneLine || layout == Layout::OneLine, true});
}

void JsonWriter::end(char bracket) {
    const Level level = m_levels.back();
    m_levels.pop_back();
    if (!level.isEmpty && !level.isOneLine) {
        put('\n' + QByteArray(2 * static_cast<qsizetype>(m_levels.size()), ' '));
    }
    put(QByteArray(1, bracket));
}

/// What stands between the items of a container.
void JsonWriter::startItem() {
    Level& level = m_levels.back();
    QByteArray before = level.isEmpty ? "" : ",";
    if (!level.isOneLine) {
        before += '\n' + QByteArray(2 * static_cast<qsizetype>(m_levels.size()), ' ');
    } else if (!level.isEmpty) {
        before += ' ';
    }
    level.isEmpty = false;
    put(before);
}

void JsonWriter::startValue() {
    if (!m_afterKey && !m_levels.empty()) {
        startItem();
    }
    m_afterKey = false;
}

void JsonWriter::key(const char* name) {
    startItem();
    put(quoted(QString::fromLatin1(name)) + ": ");
    m_afterKey = true;
}

void JsonWriter::string(const QString& text) {
    startValue();
    put(quoted(text));
}

void JsonWriter::integer(qint64 number) {
    startValue();
    put(QByteArray::number(number));
}

void JsonWriter::decimal(double number, int decimals) {
    startValue();
    if (!std::isfinite(number)) {
        put("null");
        return;
    }
    QByteArray text = QByteArray::number(number, 'f', decimals);
    const bool isZero = text.toDouble() == 0.0;
    put(isZero && text.startsWith('-') ? text.mid(1) : text);
}

void JsonWriter::digits(const QString& number) {
    startValue();
    put(number.toLatin1());
}

void JsonWriter::boolean(bool value) {
    startValue();
    put(value ? "true" : "false");
}

void JsonWriter::null() {
    startValue();
    put("null");
}

void JsonWriter::finish() {
    put("\n");
}

} // namespace coilbook
