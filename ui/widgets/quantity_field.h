#pragma once

#include "core/units/typed_force.h"

#include <QLineEdit>

#include <optional>

namespace coilbook {

/// A line for one force, with its unit shown at the right end. Takes `.` or `,` as the decimal mark
/// whatever the locale. What was set comes back exactly as it was, to the last hidden digit, until
/// somebody types something else.
class QuantityField : public QLineEdit {
    Q_OBJECT
public:
    explicit QuantityField(ForceUnit unit, QWidget* parent = nullptr);

    /// Shows a force as it was written; one written in the other unit is shown converted.
    void setTyped(const std::optional<TypedForce>& value);

    /// Shows a force that was computed or stored as a quantity, with at most `decimals` decimals
    /// and no trailing zeros.
    void setForce(Force value, int decimals = 2);

    /// Nothing there but perhaps white space.
    [[nodiscard]] bool isBlank() const;

    /// Something is there that is not a force within the bounds of a reading.
    [[nodiscard]] bool isFault() const;

    /// The force as written; what was set, if that was not edited; empty if blank or at fault.
    [[nodiscard]] std::optional<TypedForce> typed() const;

    /// The same as a quantity.
    [[nodiscard]] std::optional<Force> force() const;

protected:
    void paintEvent(QPaintEvent* event) override;
    void changeEvent(QEvent* event) override;

private:
    void show(const QString& text);
    void makeRoomForUnit();
    [[nodiscard]] bool isEdited() const;
    [[nodiscard]] QString unitName() const;

    ForceUnit m_unit;
    QString m_shown;                   ///< text as set
    std::optional<TypedForce> m_typed; ///< as set by setTyped
    std::optional<Force> m_quantity;   ///< as set by either
};

} // namespace coilbook
