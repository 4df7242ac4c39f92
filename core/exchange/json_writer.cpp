#include "core/exchange/json_writer.h"

#include <algorithm>
#include <cmath>

namespace coilbook {

namespace {

constexpr qsizetype kBufferSize = 1 << 16;

bool isPlain(QChar c) {
    return c.unicode() >= 0x20 && c.unicode() < 0x7f && c != QLatin1Char('"') &&
           c != QLatin1Char('\\');
}

/// RFC 8259, section 7: quotation mark, reverse solidus and the controls must be escaped.
void appendEscaped(QByteArray& bytes, char c) {
    switch (c) {
    case '"':
        bytes += "\\\"";
        break;
    case '\\':
        bytes += "\\\\";
        break;
    case '\n':
        bytes += "\\n";
        break;
    case '\r':
        bytes += "\\r";
        break;
    case '\t':
        bytes += "\\t";
        break;
    default:
        if (static_cast<unsigned char>(c) < 0x20U) {
            bytes += "\\u" + QByteArray::number(c, 16).rightJustified(4, '0');
        } else {
            bytes += c;
        }
    }
}

} // namespace

void JsonWriter::putQuoted(const QString& text) {
    m_buffer += '"';
    if (std::all_of(text.begin(), text.end(), isPlain)) {
        for (const QChar c : text) {
            m_buffer += c.toLatin1();
        }
    } else {
        for (const char c : text.toUtf8()) {
            appendEscaped(m_buffer, c);
        }
    }
    m_buffer += '"';
}

void JsonWriter::newLine() {
    m_buffer += '\n';
    m_buffer.append(2 * static_cast<qsizetype>(m_levels.size()), ' ');
}

void JsonWriter::begin(char bracket, Layout layout) {
    startValue();
    m_buffer += bracket;
    const bool isInsideOneLine = !m_levels.empty() && m_levels.back().isOneLine;
    m_levels.push_back({isInsideOneLine || layout == Layout::OneLine, true});
}

void JsonWriter::end(char bracket) {
    const Level level = m_levels.back();
    m_levels.pop_back();
    if (!level.isEmpty && !level.isOneLine) {
        newLine();
    }
    m_buffer += bracket;
    if (m_buffer.size() >= kBufferSize) {
        m_sink(m_buffer);
        m_buffer.resize(0);
    }
}

/// What stands between the items of a container.
void JsonWriter::startItem() {
    Level& level = m_levels.back();
    if (!level.isEmpty) {
        m_buffer += ',';
    }
    if (!level.isOneLine) {
        newLine();
    } else if (!level.isEmpty) {
        m_buffer += ' ';
    }
    level.isEmpty = false;
}

void JsonWriter::startValue() {
    if (!m_afterKey && !m_levels.empty()) {
        startItem();
    }
    m_afterKey = false;
}

void JsonWriter::key(const char* name) {
    startItem();
    m_buffer += '"';
    m_buffer += name;
    m_buffer += "\": ";
    m_afterKey = true;
}

void JsonWriter::string(const QString& text) {
    startValue();
    putQuoted(text);
}

void JsonWriter::integer(qint64 number) {
    startValue();
    m_buffer += QByteArray::number(number);
}

void JsonWriter::decimal(double number, int decimals) {
    startValue();
    if (!std::isfinite(number)) {
        m_buffer += "null";
        return;
    }
    const QByteArray text = QByteArray::number(number, 'f', decimals);
    const bool isZero = text.toDouble() == 0.0;
    m_buffer += isZero && text.startsWith('-') ? text.mid(1) : text;
}

void JsonWriter::digits(const QString& number) {
    startValue();
    m_buffer += number.toLatin1();
}

void JsonWriter::boolean(bool value) {
    startValue();
    m_buffer += value ? "true" : "false";
}

void JsonWriter::null() {
    startValue();
    m_buffer += "null";
}

void JsonWriter::finish() {
    m_buffer += '\n';
    m_sink(m_buffer);
    m_buffer.clear();
}

} // namespace coilbook
