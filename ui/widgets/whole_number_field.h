#pragma once

#include <QLineEdit>

#include <optional>

namespace coilbook {

/// A line for a whole number that may be left blank, such as laps or peak rpm.
class WholeNumberField : public QLineEdit {
    Q_OBJECT
public:
    WholeNumberField(int least, int most, QWidget* parent = nullptr);

    void setValue(const std::optional<int>& value);

    [[nodiscard]] bool isBlank() const { return text().trimmed().isEmpty(); }

    /// Something is there that is not a whole number from least to most.
    [[nodiscard]] bool isFault() const { return !isBlank() && !value(); }

    /// Empty when blank or at fault.
    [[nodiscard]] std::optional<int> value() const;

    [[nodiscard]] int least() const { return m_least; }

    [[nodiscard]] int most() const { return m_most; }

private:
    int m_least;
    int m_most;
};

} // namespace coilbook
