#pragma once

#include <QByteArray>
#include <QString>

#include <functional>
#include <vector>

namespace coilbook {

/// Writes JSON (RFC 8259) piece by piece: keys in the order given, numbers as plain decimals.
/// Containers are spread over lines, or kept on one line where so asked.
class JsonWriter {
public:
    enum class Layout { Spread, OneLine };

    using Sink = std::function<void(const QByteArray&)>;

    /// `sink` takes the text in pieces.
    explicit JsonWriter(Sink sink)
        : m_sink(std::move(sink)) {}

    void beginObject(Layout layout = Layout::Spread) { begin('{', layout); }

    void endObject() { end('}'); }

    void beginArray(Layout layout = Layout::Spread) { begin('[', layout); }

    void endArray() { end(']'); }

    /// `name` needs no escapes.
    void key(const char* name);

    void string(const QString& text);
    void integer(qint64 number);
    /// With a fixed number of decimals; NaN and infinities become null, −0 becomes 0.
    void decimal(double number, int decimals);
    /// A number in the form it has: `121.50`.
    void digits(const QString& number);
    void boolean(bool value);
    void null();

    /// A line break behind the outermost value; then everything is with the sink.
    void finish();

private:
    struct Level {
        bool isOneLine;
        bool isEmpty;
    };

    void begin(char bracket, Layout layout);
    void end(char bracket);
    void startValue();
    void startItem();

    void newLine();
    void putQuoted(const QString& text);

    Sink m_sink;
    QByteArray m_buffer;
    std::vector<Level> m_levels;
    bool m_afterKey = false;
};

} // namespace coilbook
